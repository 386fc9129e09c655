package hemline.validation.exact;

/**
 * Poiseuille flow in a channel of height 1 and mean speed 1 that rises at an angle; its axis passes
 * through the origin. Textbook.
 *
 * @param angle against the x axis, radians
 * @param viscosity kinematic, m²/s
 */
public record SlantedChannel(double angle, double viscosity) implements PlaneFlow {

  /** Distance from the axis, positive to the left of the flow, m. */
  public double across(double x, double y) {
    return y * Math.cos(angle) - x * Math.sin(angle);
  }

  /** Distance along the axis, m. */
  public double along(double x, double y) {
    return x * Math.cos(angle) + y * Math.sin(angle);
  }

  private double speed(double x, double y) {
    double n = across(x, y);
    return 1.5 * (1 - 4 * n * n);
  }

  @Override
  public double u(double x, double y) {
    return speed(x, y) * Math.cos(angle);
  }

  @Override
  public double v(double x, double y) {
    return speed(x, y) * Math.sin(angle);
  }

  @Override
  public double streamfunction(double x, double y) {
    double n = across(x, y);
    return 1.5 * n - 2 * n * n * n;
  }

  @Override
  public double pressure(double x, double y) {
    return -12 * viscosity * along(x, y);
  }
}
