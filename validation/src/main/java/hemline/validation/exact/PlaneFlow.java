package hemline.validation.exact;

/** An exact plane flow; density 1. */
public interface PlaneFlow {

  /** Velocity along x, m/s. */
  double u(double x, double y);

  /** Velocity along y, m/s. */
  double v(double x, double y);

  /** Streamfunction, m²/s: u = ∂ψ/∂y, v = −∂ψ/∂x. */
  double streamfunction(double x, double y);

  /** Pressure, Pa, up to a constant; not a number where it is not given. */
  default double pressure(double x, double y) {
    return Double.NaN;
  }
}
