package hemline.validation.exact;

/**
 * Creeping flow round a resting cylinder over a plane y = 0 that moves with speed 1.
 *
 * <p>With s² = d² − r², K₁ = x² + (s + y)², K₂ = x² + (s − y)²: ψ = y − (A + F y) ln(K₁/K₂) − B y
 * (s + y)/K₁ − C y (s − y)/K₂. No slip on the plane asks for 4A + B + C = 0, no slip on the
 * cylinder gives the rest; the coefficients are found here by least squares over the cylinder,
 * which leaves no residual. Force on the cylinder: 4π μ U / arcosh(d/r).
 *
 * <p>Source: G. H. Wannier 1950, "A contribution to the hydrodynamics of lubrication", Quart. Appl.
 * Math. 8, 1–32 (form of the solution from memory, boundary values checked by the test); force: D.
 * J. Jeffrey and Y. Onishi 1981, Quart. J. Mech. Appl. Math. 34, 129–137.
 */
public final class Wannier implements PlaneFlow {
  private static final int POINTS = 64;

  private final double r;
  private final double d;
  private final double s;
  private final double[] coefficients;

  /**
   * Finds the coefficients.
   *
   * @param r radius of the cylinder, m
   * @param d height of its axis over the plane, m, more than r
   */
  public Wannier(double r, double d) {
    this.r = r;
    this.d = d;
    s = Math.sqrt(d * d - r * r);
    coefficients = fit();
  }

  /** Force of the fluid on the cylinder along x over viscosity, plane speed 1. */
  public double force() {
    double q = d / r;
    return 4 * Math.PI / Math.log(q + Math.sqrt(q * q - 1));
  }

  /** Velocity of the terms A, F, B, C; u first, then v. */
  private double[][] terms(double x, double y) {
    double k1 = x * x + (s + y) * (s + y);
    double k2 = x * x + (s - y) * (s - y);
    double a = -2 * ((s + y) / k1 + (s - y) / k2);
    double b = 2 * x * (k2 - k1) / (k1 * k2);
    return new double[][] {
      {
        a,
        y * a - Math.log(k1 / k2),
        -(s + 2 * y - 2 * y * (s + y) * (s + y) / k1) / k1,
        -(s - 2 * y + 2 * y * (s - y) * (s - y) / k2) / k2
      },
      {b, y * b, -2 * x * y * (s + y) / (k1 * k1), -2 * x * y * (s - y) / (k2 * k2)}
    };
  }

  /** Least squares for A, F, B with C = −4A − B. */
  private double[] fit() {
    double[][] m = new double[3][4];
    for (int k = 0; k < POINTS; k++) {
      double angle = 2 * Math.PI * k / POINTS;
      double[][] t = terms(r * Math.cos(angle), d + r * Math.sin(angle));
      for (int c = 0; c < 2; c++) {
        double[] row = {t[c][0] - 4 * t[c][3], t[c][1], t[c][2] - t[c][3], c == 0 ? -1 : 0};
        for (int i = 0; i < 3; i++) {
          for (int j = 0; j < 4; j++) {
            m[i][j] += row[i] * row[j];
          }
        }
      }
    }
    for (int i = 0; i < 3; i++) {
      for (int k = i + 1; k < 3; k++) {
        double factor = m[k][i] / m[i][i];
        for (int j = i; j < 4; j++) {
          m[k][j] -= factor * m[i][j];
        }
      }
    }
    double[] x = new double[3];
    for (int i = 2; i >= 0; i--) {
      double sum = m[i][3];
      for (int j = i + 1; j < 3; j++) {
        sum -= m[i][j] * x[j];
      }
      x[i] = sum / m[i][i];
    }
    return new double[] {x[0], x[1], x[2], -4 * x[0] - x[2]};
  }

  private double velocity(double x, double y, int component) {
    double[] t = terms(x, y)[component];
    double sum = component == 0 ? 1 : 0;
    for (int i = 0; i < t.length; i++) {
      sum += coefficients[i] * t[i];
    }
    return sum;
  }

  @Override
  public double u(double x, double y) {
    return velocity(x, y, 0);
  }

  @Override
  public double v(double x, double y) {
    return velocity(x, y, 1);
  }

  @Override
  public double streamfunction(double x, double y) {
    double k1 = x * x + (s + y) * (s + y);
    double k2 = x * x + (s - y) * (s - y);
    return y
        - (coefficients[0] + coefficients[1] * y) * Math.log(k1 / k2)
        - coefficients[2] * y * (s + y) / k1
        - coefficients[3] * y * (s - y) / k2;
  }
}
