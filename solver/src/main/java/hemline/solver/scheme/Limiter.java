package hemline.solver.scheme;

/** Second-order reconstruction at a face. */
public final class Limiter {
  private Limiter() {}

  /**
   * Twice the step from the upwind value to the face value on an even grid, bounded.
   *
   * <p>With a = C - U (upwind cell minus the cell behind it), b = D - C (downwind minus upwind) and
   * r = a / b the face value is C + ½ ψ b, ψ = max(0, min(2 r, (2 + r) / 3, 2)): third order in
   * smooth flow, total-variation diminishing. Source: Koren 1993, Notes on Numerical Fluid
   * Mechanics 45, 117–138.
   */
  public static double step(double a, double b) {
    if (!(a * b > 0)) {
      return 0;
    }
    double smooth = (2 * Math.abs(b) + Math.abs(a)) / 3;
    double size = Math.min(2 * Math.abs(a), Math.min(smooth, 2 * Math.abs(b)));
    return b > 0 ? size : -size;
  }

  /** The same without bound: third order on an even grid wherever the flow is smooth. */
  public static double unbounded(double a, double b) {
    return (2 * b + a) / 3;
  }
}
