package hemline.shared.vehicle;

/**
 * How far the inputs of a machine may be off, either way.
 *
 * @param friction share of the tyres' friction
 * @param fanPressure share of the fan's pressure
 * @param mass share of the mass
 * @param gap of all static gaps, m
 */
public record Tolerances(double friction, double fanPressure, double mass, double gap) {
  /** None: the inputs are taken as exact. */
  public static final Tolerances NONE = new Tolerances(0, 0, 0, 0);

  /** True when every input is taken as exact. */
  public boolean none() {
    return friction == 0 && fanPressure == 0 && mass == 0 && gap == 0;
  }
}
