package hemline.shared.geometry;

import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Approximates a smooth plane curve by circular arcs and straight edges within a tolerance.
 *
 * <p>A piece is taken as the arc through its ends and its middle where the curve stays within the
 * tolerance of it, and halved otherwise. A circular arc comes out as one exact edge.
 */
public final class ArcFit {
  private static final int SAMPLES = 15;
  private static final int DEEPEST = 12;
  private static final double STRAIGHT = 1e-6;

  private final DoubleFunction<double[]> curve;
  private final double tolerance;
  private final List<Vertex> out;

  private ArcFit(DoubleFunction<double[]> curve, double tolerance, List<Vertex> out) {
    this.curve = curve;
    this.tolerance = tolerance;
    this.out = out;
  }

  /**
   * Appends the start of each piece to a list of vertices; the end of the curve is not appended.
   *
   * @param curve point {x, y} at a parameter from 0 to 1
   * @param tolerance largest distance from the curve, at the samples
   * @param out takes the vertices
   */
  public static void append(DoubleFunction<double[]> curve, double tolerance, List<Vertex> out) {
    new ArcFit(curve, tolerance, out).fit(0, 1, 0);
  }

  private void fit(double from, double to, int depth) {
    double[] a = curve.apply(from);
    double[] b = curve.apply(to);
    double[] m = curve.apply(0.5 * (from + to));
    double ux = m[0] - a[0];
    double uy = m[1] - a[1];
    double vx = b[0] - m[0];
    double vy = b[1] - m[1];
    // the arc through a, m and b turns by twice the angle between its two chords
    double turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    double bulge = Math.tan(0.5 * turn);
    boolean straight = Math.abs(bulge) < STRAIGHT;
    Vertex start = new Vertex(a[0], a[1], straight ? 0 : bulge);
    boolean closed = Math.hypot(b[0] - a[0], b[1] - a[1]) <= 1e-3 * Math.hypot(ux, uy);
    if (depth >= DEEPEST || (!closed && fits(start, new Vertex(b[0], b[1]), from, to))) {
      out.add(start);
      return;
    }
    double middle = 0.5 * (from + to);
    fit(from, middle, depth + 1);
    fit(middle, to, depth + 1);
  }

  private boolean fits(Vertex a, Vertex b, double from, double to) {
    double length = Math.hypot(b.x() - a.x(), b.y() - a.y());
    Arc arc = a.bulge() == 0 ? null : Arc.of(a, b);
    for (int k = 1; k <= SAMPLES; k++) {
      double[] p = curve.apply(from + (to - from) * k / (SAMPLES + 1));
      double off =
          arc == null
              ? ((p[0] - a.x()) * (b.y() - a.y()) - (p[1] - a.y()) * (b.x() - a.x())) / length
              : Math.hypot(p[0] - arc.xc(), p[1] - arc.yc()) - arc.radius();
      if (!(Math.abs(off) <= tolerance)) {
        return false;
      }
    }
    return true;
  }
}
