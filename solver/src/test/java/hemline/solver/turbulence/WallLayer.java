package hemline.solver.turbulence;

/**
 * The constant-stress layer over a smooth wall, solved anew with the k-ω SST closure.
 *
 * <p>In wall units, with ' = d/dy and ν_t the eddy viscosity over the molecular one:
 *
 * <pre>
 * (1 + ν_t) u' = 1
 * ((1 + σ_k ν_t) k')' + min(ν_t u'², 10 β* k ω) − β* k ω = 0
 * ((1 + σ_ω ν_t) ω')' + γ min(u'², 10 β* ω max(ω, u' F₂ / a₁)) − β ω² + 2 (1 − F₁) σ_ω2 k' ω' / ω = 0
 * ν_t = a₁ k / max(a₁ ω, u' F₂)
 * </pre>
 *
 * <p>Source: Menter, Kuntz & Langtry 2003, Turbulence, Heat and Mass Transfer 4, 625–632. k = 0 at
 * the wall; up to y = 2.5 ω is held at the sublayer's 6 / (β₁ y²) (Wilcox, Turbulence Modeling for
 * CFD, from memory); no flux of k and ω at y = 5000 (both places moved to a middle between two
 * points of the table). Values stand on nodes of even steps in ln y from 0.001 on, finite volumes
 * between the middles of the nodes.
 */
final class WallLayer {
  private static final double BETA_STAR = 0.09;
  private static final double A1 = 0.31;
  private static final double FIRST = 0.5;
  private static final double RANGE = 2000;

  /** Intervals of the table. */
  private static final int INTERVALS = 40;

  private static final double TOP = FIRST * Math.pow(RANGE, 48.5 / INTERVALS);
  private static final double HELD = FIRST * Math.pow(RANGE, 8.5 / INTERVALS);
  private static final double ROUND_OFF = 1 + 1e-9;

  final double[] y;
  final double[] u;
  final double[] k;
  final double[] omega;

  /** Integrals from the wall of production and destruction of k. */
  private final double[] produced;

  private final double[] destroyed;
  private final int below;
  private final int perPoint;
  private final double[] eddy;
  private final double[] slope;
  private final double[] f1;
  private final double[] f2;
  private final double[] cross;

  /**
   * Solves.
   *
   * @param steps nodes for each interval of the table, even
   */
  WallLayer(int steps) {
    double ratio = Math.pow(RANGE, 1.0 / (INTERVALS * steps));
    below = (int) (Math.log(FIRST / 1e-3) / Math.log(ratio));
    perPoint = steps;
    int n = below + 1 + (int) (ROUND_OFF * Math.log(TOP / FIRST) / Math.log(ratio));
    y = new double[n];
    u = new double[n];
    k = new double[n];
    omega = new double[n];
    eddy = new double[n];
    slope = new double[n];
    f1 = new double[n];
    f2 = new double[n];
    cross = new double[n];
    produced = new double[n];
    destroyed = new double[n];
    for (int i = 0; i < n; i++) {
      y[i] = FIRST * Math.pow(ratio, i - below);
      omega[i] = 80 / (y[i] * y[i]) + 1 / (0.3 * 0.41 * y[i]);
      k[i] = Math.min(3.3, 0.05 * y[i] * y[i]);
      eddy[i] = k[i] / omega[i];
    }
    double change = 1;
    for (int pass = 0; change > 1e-11; pass++) {
      if (pass > 2000) {
        throw new IllegalStateException("the wall layer does not settle, last change " + change);
      }
      change = pass();
    }
    integrate();
  }

  private double pass() {
    int n = y.length;
    for (int i = 0; i < n; i++) {
      slope[i] = 1 / (1 + eddy[i]);
      cross[i] = 2 * 0.856 / omega[i] * gradient(k, i) * gradient(omega, i);
      double y2 = y[i] * y[i];
      double turbulent = Math.sqrt(k[i]) / (BETA_STAR * omega[i] * y[i]);
      double viscous = 500 / (y2 * omega[i]);
      double arg =
          Math.min(
              Math.max(turbulent, viscous), 4 * 0.856 * k[i] / (Math.max(cross[i], 1e-10) * y2));
      f1[i] = Math.tanh(Math.pow(arg, 4));
      f2[i] = Math.tanh(Math.pow(Math.max(2 * turbulent, viscous), 2));
    }
    double[] newOmega = omega();
    double[] newK = k();
    double change = 0;
    for (int i = 0; i < n; i++) {
      change = Math.max(change, Math.abs(newOmega[i] / omega[i] - 1));
      change = Math.max(change, Math.abs(newK[i] / k[i] - 1));
      omega[i] += 0.5 * (newOmega[i] - omega[i]);
      k[i] += 0.5 * (newK[i] - k[i]);
      eddy[i] = A1 * k[i] / Math.max(A1 * omega[i], slope[i] * f2[i]);
    }
    return change;
  }

  /** Second-order derivative on uneven nodes; one-sided at the ends. */
  private double gradient(double[] a, int i) {
    if (i == 0 || i == y.length - 1) {
      int j = i == 0 ? 1 : i;
      return (a[j] - a[j - 1]) / (y[j] - y[j - 1]);
    }
    double left = y[i] - y[i - 1];
    double right = y[i + 1] - y[i];
    return ((a[i + 1] - a[i]) / right * left + (a[i] - a[i - 1]) / left * right) / (left + right);
  }

  private double[] omega() {
    int n = y.length;
    double[] source = new double[n];
    double[] sink = new double[n];
    for (int i = 0; i < n; i++) {
      double s2 = slope[i] * slope[i];
      double gamma = mixed(i, 5.0 / 9, 0.44);
      double limit = 10 * BETA_STAR * omega[i] * Math.max(omega[i], slope[i] * f2[i] / A1);
      double c = (1 - f1[i]) * cross[i];
      source[i] = gamma * Math.min(s2, limit) + Math.max(c, 0);
      sink[i] = mixed(i, 0.075, 0.0828) * omega[i] + Math.max(-c, 0) / omega[i];
    }
    return balance(source, sink, 0.5, 0.856, true);
  }

  private double[] k() {
    int n = y.length;
    double[] source = new double[n];
    double[] sink = new double[n];
    for (int i = 0; i < n; i++) {
      source[i] = production(i);
      sink[i] = BETA_STAR * omega[i];
    }
    return balance(source, sink, 0.85, 1, false);
  }

  private double production(int i) {
    return Math.min(eddy[i] * slope[i] * slope[i], 10 * BETA_STAR * k[i] * omega[i]);
  }

  private double mixed(int i, double inner, double outer) {
    return f1[i] * inner + (1 - f1[i]) * outer;
  }

  /** Solves −(D x')' + sink x = source by elimination along the tridiagonal system. */
  private double[] balance(
      double[] source, double[] sink, double inner, double outer, boolean held) {
    int n = y.length;
    double[] upper = new double[n];
    double[] x = new double[n];
    double before = 0;
    for (int i = 0; i < n; i++) {
      double low = i == 0 ? 0 : 0.5 * (y[i - 1] + y[i]);
      double high = i == n - 1 ? y[i] : 0.5 * (y[i] + y[i + 1]);
      double left = i == 0 ? 1 / y[0] : before;
      double right = 0;
      if (i < n - 1) {
        double sigma = 0.5 * (mixed(i, inner, outer) + mixed(i + 1, inner, outer));
        right = (1 + sigma * 0.5 * (eddy[i] + eddy[i + 1])) / (y[i + 1] - y[i]);
      }
      before = right;
      if (held && y[i] < HELD * ROUND_OFF) {
        x[i] = 80 / (y[i] * y[i]);
        continue;
      }
      double diagonal = (high - low) * sink[i] + left + right;
      double rhs = (high - low) * source[i];
      if (i > 0) {
        diagonal -= left * upper[i - 1];
        rhs += left * x[i - 1];
      }
      upper[i] = right / diagonal;
      x[i] = rhs / diagonal;
    }
    for (int i = n - 2; i >= 0; i--) {
      x[i] += upper[i] * x[i + 1];
    }
    return x;
  }

  private void integrate() {
    u[0] = y[0];
    for (int i = 1; i < y.length; i++) {
      double step = 0.5 * (y[i] - y[i - 1]);
      u[i] = u[i - 1] + step * (slope[i] + slope[i - 1]);
      produced[i] = produced[i - 1] + step * (production(i) + production(i - 1));
      destroyed[i] = destroyed[i - 1] + step * (destruction(i) + destruction(i - 1));
    }
  }

  private double destruction(int i) {
    return BETA_STAR * k[i] * omega[i];
  }

  /** The node of a point of the table. */
  int node(int point) {
    return below + perPoint * point;
  }

  /**
   * What a wall cell with its centre at a node must be given: mean production less mean destruction
   * up to twice the distance, plus the destruction at the centre; up to y = 2 the mean production.
   */
  double cellProduction(int i) {
    double twice = 2 * y[i];
    double production = mean(produced, twice);
    return y[i] < 2 ? production : production - mean(destroyed, twice) + destruction(i);
  }

  private double mean(double[] integral, double to) {
    int i = 0;
    while (y[i + 1] < to) {
      i++;
    }
    double t = (to - y[i]) / (y[i + 1] - y[i]);
    return ((1 - t) * integral[i] + t * integral[i + 1]) / to;
  }
}
