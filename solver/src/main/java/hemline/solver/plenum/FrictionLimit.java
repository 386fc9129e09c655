package hemline.solver.plenum;

import org.jspecify.annotations.Nullable;

/**
 * How much friction a machine standing on wheels has, over what it needs against a push along the
 * ground and a turning moment.
 *
 * <p>A wheel that is held bears any tangential force up to μ N, one that rolls only a force across
 * its rolling direction, one whose brake yields at a force B no more than B along it: a disc of
 * radius μ N between two lines at ± B. The largest factor λ by which the load may grow is that of
 * plane limit analysis: for each way to slide v + ω × r, normalised to unit work of the load, the
 * friction dissipates Σ μ N |v_i| (a rolling wheel: its sideways part alone; in general the support
 * function of what the wheel bears), and λ is the least of these (upper bound theorem; Goyal, Ruina
 * and Papadopoulos, "Planar sliding with dry friction", Wear 143 (1991), from memory). The least of
 * the convex function is found by Newton's method on √(v² + ε²) with falling ε; its gradient is a
 * set of wheel forces within their limits that carries the load, so the λ told is also a lower
 * bound.
 */
final class FrictionLimit {
  private static final double FIRST_ROUNDING = 0.3;
  private static final double LAST_ROUNDING = 1e-8;
  private static final double FALL = 0.05;
  private static final int MOST_STEPS = 40;
  private static final double FLAT = 1e-11;

  private final double[] x;
  private final double[] y;
  private final double[] holding;
  private final double centreX;
  private final double centreY;
  private final double size;

  /**
   * Wheels on the ground.
   *
   * @param x places, m
   * @param y places, m
   * @param holding most force along the machine beside friction, N: 0 where a wheel rolls, infinite
   *     where it is held
   */
  FrictionLimit(double[] x, double[] y, double[] holding) {
    this.holding = holding.clone();
    double cx = 0;
    double cy = 0;
    for (int i = 0; i < x.length; i++) {
      cx += x[i] / x.length;
      cy += y[i] / y.length;
    }
    centreX = cx;
    centreY = cy;
    double most = 0;
    for (int i = 0; i < x.length; i++) {
      most = Math.max(most, Math.hypot(x[i] - cx, y[i] - cy));
    }
    size = most;
    this.x = new double[x.length];
    this.y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      this.x[i] = (x[i] - cx) / most;
      this.y[i] = (y[i] - cy) / most;
    }
  }

  /**
   * The factor.
   *
   * @param limit μ N by wheel, N
   * @param forceX push forwards, N
   * @param forceY push to the left, N
   * @param moment about the origin, counter-clockwise, N m
   * @return infinite when nothing pushes
   */
  double factor(double[] limit, double forceX, double forceY, double moment) {
    double[] load = {forceX, forceY, (moment - centreX * forceY + centreY * forceX) / size};
    double much = norm(load);
    double sum = 0;
    for (double c : limit) {
      sum += c;
    }
    if (!(much > 0)) {
      return Double.POSITIVE_INFINITY;
    }
    if (!(sum > 0)) {
      return 0;
    }
    double[] l = {load[0] / much, load[1] / much, load[2] / much};
    double[][] e = across(l);
    double[] at = {0, 0};
    double[] g = new double[3];
    for (double eps = FIRST_ROUNDING; eps > LAST_ROUNDING; eps *= FALL) {
      descend(limit, l, e, at, eps, sum, g);
    }
    return Math.max(0, g[0] * l[0] + g[1] * l[1] + g[2] * l[2]) / much;
  }

  /** Newton's method with halved steps at one rounding; leaves place and gradient. */
  private void descend(
      double[] limit, double[] l, double[][] e, double[] at, double eps, double sum, double[] g) {
    double[][] h = new double[3][3];
    for (int step = 0; step < MOST_STEPS; step++) {
      double now = dissipation(limit, twist(l, e, at), eps, g, h);
      double ga = dot(g, e[0]);
      double gb = dot(g, e[1]);
      if (Math.abs(ga) + Math.abs(gb) < FLAT * sum) {
        return;
      }
      double aa = quadratic(h, e[0], e[0]);
      double ab = quadratic(h, e[0], e[1]);
      double bb = quadratic(h, e[1], e[1]);
      double trace = 1e-9 * sum + 1e-12 * (aa + bb); // rolling wheels alone resist in one way only
      aa += trace;
      bb += trace;
      double det = aa * bb - ab * ab;
      double da = (ab * gb - bb * ga) / det;
      double db = (ab * ga - aa * gb) / det;
      double fall = ga * da + gb * db;
      double part = 1;
      double[] next = {at[0] + da, at[1] + db};
      while (part > 1e-9
          && dissipation(limit, twist(l, e, next), eps, g, null) > now + 1e-4 * part * fall) {
        part *= 0.5;
        next[0] = at[0] + part * da;
        next[1] = at[1] + part * db;
      }
      if (part <= 1e-9) {
        dissipation(limit, twist(l, e, at), eps, g, null);
        return;
      }
      at[0] = next[0];
      at[1] = next[1];
    }
  }

  /**
   * Σ of what the wheels dissipate with its gradient, and its second derivatives where asked: c
   * √(u² + v² + ε²), or b |u| + √(c² − b²) √(v² + ε²) where that asks for more than b along.
   */
  private double dissipation(
      double[] limit, double[] t, double eps, double[] g, double @Nullable [][] h) {
    double f = 0;
    g[0] = 0;
    g[1] = 0;
    g[2] = 0;
    if (h != null) {
      for (double[] row : h) {
        row[0] = 0;
        row[1] = 0;
        row[2] = 0;
      }
    }
    for (int i = 0; i < limit.length; i++) {
      double u = t[0] - t[2] * y[i];
      double v = t[1] + t[2] * x[i];
      double c = limit[i];
      double b = holding[i];
      double rest = v * v + eps * eps;
      boolean yields = b < c && c * c * u * u >= b * b * (u * u + rest);
      double sideways = yields ? Math.sqrt(c * c - b * b) : c;
      double r = Math.sqrt(yields ? rest : u * u + rest);
      f += yields ? b * Math.abs(u) + sideways * r : c * r;
      double gu = yields ? b * Math.signum(u) : c * u / r;
      double gv = sideways * v / r;
      double jw = -y[i];
      g[0] += gu;
      g[1] += gv;
      g[2] += gu * jw + gv * x[i];
      if (h != null) {
        double cube = r * r * r;
        double uu = yields ? 0 : c * (1 / r - u * u / cube);
        double uv = yields ? 0 : -c * u * v / cube;
        double vv = sideways * (1 / r - v * v / cube);
        h[0][0] += uu;
        h[0][1] += uv;
        h[1][1] += vv;
        h[0][2] += uu * jw + uv * x[i];
        h[1][2] += uv * jw + vv * x[i];
        h[2][2] += uu * jw * jw + 2 * uv * jw * x[i] + vv * x[i] * x[i];
      }
    }
    if (h != null) {
      h[1][0] = h[0][1];
      h[2][0] = h[0][2];
      h[2][1] = h[1][2];
    }
    return f;
  }

  private static double[] twist(double[] l, double[][] e, double[] at) {
    double[] t = new double[3];
    for (int i = 0; i < 3; i++) {
      t[i] = l[i] + at[0] * e[0][i] + at[1] * e[1][i];
    }
    return t;
  }

  /** Two unit vectors at right angles to one and to each other. */
  private static double[][] across(double[] l) {
    int least = Math.abs(l[0]) <= Math.abs(l[1]) ? 0 : 1;
    least = Math.abs(l[2]) < Math.abs(l[least]) ? 2 : least;
    double[] a = new double[3];
    a[least] = 1;
    double d = dot(a, l);
    for (int i = 0; i < 3; i++) {
      a[i] -= d * l[i];
    }
    double n = norm(a);
    for (int i = 0; i < 3; i++) {
      a[i] /= n;
    }
    double[] b = {l[1] * a[2] - l[2] * a[1], l[2] * a[0] - l[0] * a[2], l[0] * a[1] - l[1] * a[0]};
    return new double[][] {a, b};
  }

  private static double quadratic(double[][] h, double[] a, double[] b) {
    double s = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        s += a[i] * h[i][j] * b[j];
      }
    }
    return s;
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static double norm(double[] a) {
    return Math.sqrt(dot(a, a));
  }
}
