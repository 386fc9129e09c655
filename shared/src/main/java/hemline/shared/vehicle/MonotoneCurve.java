package hemline.shared.vehicle;

import java.util.Arrays;

/**
 * A smooth curve through points that never overshoots them.
 *
 * <p>Piecewise cubics with slopes of F. N. Fritsch and J. Butland, "A method for constructing local
 * monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984): where neighbouring
 * secants differ in sign the slope is zero, else it is their weighted harmonic mean, so that each
 * piece runs the way its two points do. Beyond its ends the curve goes on level.
 */
public final class MonotoneCurve {
  private final double[] x;
  private final double[] y;
  private final double[] slope;

  /**
   * Curve through points.
   *
   * @param x increasing, at least one; not modified
   * @param y same count; not modified
   */
  public MonotoneCurve(double[] x, double[] y) {
    if (x.length == 0 || x.length != y.length) {
      throw new IllegalArgumentException("a curve needs as many x as y and at least one point");
    }
    for (int i = 1; i < x.length; i++) {
      if (!(x[i] > x[i - 1])) {
        throw new IllegalArgumentException("x must increase, got " + x[i - 1] + " before " + x[i]);
      }
    }
    this.x = x.clone();
    this.y = y.clone();
    this.slope = slopes(x, y);
  }

  private static double[] slopes(double[] x, double[] y) {
    int n = x.length;
    double[] d = new double[n];
    if (n == 1) {
      return d;
    }
    double[] secant = new double[n - 1];
    for (int i = 0; i + 1 < n; i++) {
      secant[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }
    for (int i = 1; i + 1 < n; i++) {
      double a = secant[i - 1];
      double b = secant[i];
      if (a * b > 0) {
        double before = x[i] - x[i - 1];
        double after = x[i + 1] - x[i];
        double w = 2 * after + before;
        double v = after + 2 * before;
        d[i] = (w + v) / (w / a + v / b);
      }
    }
    d[0] = n == 2 ? secant[0] : end(x[1] - x[0], x[2] - x[1], secant[0], secant[1]);
    d[n - 1] =
        n == 2
            ? secant[0]
            : end(x[n - 1] - x[n - 2], x[n - 2] - x[n - 3], secant[n - 2], secant[n - 3]);
    return d;
  }

  /** Three-point slope at an end, held back where it would overshoot. */
  private static double end(double first, double second, double a, double b) {
    double d = ((2 * first + second) * a - first * b) / (first + second);
    if (d * a <= 0) {
      return 0;
    }
    return a * b <= 0 && Math.abs(d) > 3 * Math.abs(a) ? 3 * a : d;
  }

  /** Last x. */
  public double to() {
    return x[x.length - 1];
  }

  /** Value at a place. */
  public double at(double place) {
    if (!inside(place)) {
      return end(place);
    }
    int i = piece(place);
    double h = x[i + 1] - x[i];
    double t = (place - x[i]) / h;
    double s = 1 - t;
    return s * s * (1 + 2 * t) * y[i]
        + t * t * (3 - 2 * t) * y[i + 1]
        + h * t * s * (s * slope[i] - t * slope[i + 1]);
  }

  /** Slope at a place; at the ends the one-sided slope, beyond them 0. */
  public double slopeAt(double place) {
    int n = x.length;
    if (n == 1 || place < x[0] || place > x[n - 1]) {
      return 0;
    }
    int i = piece(place);
    double h = x[i + 1] - x[i];
    double t = (place - x[i]) / h;
    return 6 * t * (1 - t) * (y[i + 1] - y[i]) / h
        + (1 - t) * (1 - 3 * t) * slope[i]
        + t * (3 * t - 2) * slope[i + 1];
  }

  /** Value at a place on the straight lines between the points. */
  public double straightAt(double place) {
    if (!inside(place)) {
      return end(place);
    }
    int i = piece(place);
    return y[i] + (y[i + 1] - y[i]) * (place - x[i]) / (x[i + 1] - x[i]);
  }

  private boolean inside(double place) {
    return place > x[0] && place < to();
  }

  private double end(double place) {
    return place > x[0] ? y[y.length - 1] : y[0];
  }

  private int piece(double place) {
    int found = Arrays.binarySearch(x, place);
    int i = found >= 0 ? found : -found - 2;
    return Math.max(0, Math.min(x.length - 2, i));
  }
}
