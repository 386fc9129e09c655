package hemline.validation.exact;

/**
 * Flow in a wedge from or to its apex at the origin: radial velocity F f(η)/r with η the angle over
 * the half-angle α, and f''' + 2 α Re f f' + 4 α² f' = 0, f(0) = 1, f'(0) = 0, f(±1) = 0.
 *
 * <p>Pressure: p = 2 ν F f/r² − K/(2 r²), K = ν F f''(1)/α². Source: G. B. Jeffery 1915, Phil. Mag.
 * 29, 455–465; G. Hamel 1916, Jahresber. DMV 25, 34–60.
 */
public final class JefferyHamel implements PlaneFlow {
  private static final int STEPS = 4000;

  private final double alpha;
  private final double reynolds;
  private final double strength;
  private final double viscosity;
  private final double[] f = new double[STEPS + 1];
  private final double[] integral = new double[STEPS + 1];
  private final double curvatureAtWall;

  /**
   * Integrates the profile from the axis to the wall (Runge and Kutta, fourth order).
   *
   * @param alpha half-angle, radians
   * @param reynolds u r α/ν on the axis; negative towards the apex
   * @param curvature f''(0) that makes f vanish on the wall
   */
  public JefferyHamel(double alpha, double reynolds, double curvature) {
    this.alpha = alpha;
    this.reynolds = reynolds;
    strength = Math.signum(reynolds);
    viscosity = alpha / Math.abs(reynolds);
    double[] y = {1, 0, curvature, 0};
    f[0] = 1;
    for (int k = 1; k <= STEPS; k++) {
      y = step(y, 1.0 / STEPS);
      f[k] = y[0];
      integral[k] = y[3];
    }
    curvatureAtWall = y[2];
  }

  /** Kinematic viscosity, m²/s, where the speed on the axis is 1 m/s at r = 1 m. */
  public double viscosity() {
    return viscosity;
  }

  /** What is left of f on the wall. */
  public double missOnWall() {
    return f[STEPS];
  }

  private double[] rate(double[] y) {
    return new double[] {
      y[1], y[2], -2 * alpha * reynolds * y[0] * y[1] - 4 * alpha * alpha * y[1], y[0]
    };
  }

  private double[] step(double[] y, double h) {
    double[] a = rate(y);
    double[] b = rate(plus(y, a, 0.5 * h));
    double[] c = rate(plus(y, b, 0.5 * h));
    double[] d = rate(plus(y, c, h));
    double[] next = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      next[i] = y[i] + h / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
    }
    return next;
  }

  private static double[] plus(double[] y, double[] rate, double h) {
    double[] sum = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      sum[i] = y[i] + h * rate[i];
    }
    return sum;
  }

  private static double read(double[] table, double eta) {
    double t = Math.min(1, Math.abs(eta)) * STEPS;
    int k = Math.max(1, Math.min(STEPS - 1, (int) Math.rint(t)));
    double s = t - k;
    return table[k]
        + 0.5 * s * (table[k + 1] - table[k - 1])
        + 0.5 * s * s * (table[k + 1] - 2 * table[k] + table[k - 1]);
  }

  private double profile(double x, double y) {
    return read(f, Math.atan2(y, x) / alpha);
  }

  @Override
  public double u(double x, double y) {
    return strength * profile(x, y) * x / (x * x + y * y);
  }

  @Override
  public double v(double x, double y) {
    return strength * profile(x, y) * y / (x * x + y * y);
  }

  @Override
  public double streamfunction(double x, double y) {
    double eta = Math.atan2(y, x) / alpha;
    return strength * alpha * Math.signum(eta) * read(integral, eta);
  }

  @Override
  public double pressure(double x, double y) {
    double k = viscosity * strength * curvatureAtWall / (alpha * alpha);
    return (2 * viscosity * strength * profile(x, y) - 0.5 * k) / (x * x + y * y);
  }
}
