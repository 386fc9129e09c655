package hemline.viewer.draw;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.List;

/** Edges of an outline as points. */
public final class Edges {
  private static final int PIECES = 24;

  private Edges() {}

  /** Points of an edge after its start, up to and with its end. */
  public static List<double[]> points(Vertex a, Vertex b) {
    List<double[]> points = new ArrayList<>();
    boolean arc = a.bulge() != 0 && (a.x() != b.x() || a.y() != b.y());
    if (arc) {
      Arc on = Arc.of(a, b);
      for (int k = 1; k < PIECES; k++) {
        double t = on.start() + on.sweep() * k / PIECES;
        points.add(
            new double[] {
              on.xc() + on.radius() * Math.cos(t), on.yc() + on.radius() * Math.sin(t)
            });
      }
    }
    points.add(new double[] {b.x(), b.y()});
    return points;
  }

  /** Middle of an edge, on the arc if it is one. */
  public static double[] middle(Vertex a, Vertex b) {
    double half = 0.5 * a.bulge();
    return new double[] {
      0.5 * (a.x() + b.x()) + half * (b.y() - a.y()), 0.5 * (a.y() + b.y()) - half * (b.x() - a.x())
    };
  }

  /** Point of a straight edge nearest to a place. */
  public static double[] foot(Vertex a, Vertex b, double x, double y) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double square = dx * dx + dy * dy;
    double t = square == 0 ? 0 : ((x - a.x()) * dx + (y - a.y()) * dy) / square;
    double along = Math.max(0, Math.min(1, t));
    return new double[] {a.x() + along * dx, a.y() + along * dy};
  }

  /** Distance of a place from an edge, m. */
  public static double distance(Vertex a, Vertex b, double x, double y) {
    if (a.bulge() != 0 && (a.x() != b.x() || a.y() != b.y())) {
      Arc arc = Arc.of(a, b);
      return arc.passes(Math.atan2(y - arc.yc(), x - arc.xc()))
          ? Math.abs(Math.hypot(x - arc.xc(), y - arc.yc()) - arc.radius())
          : Double.POSITIVE_INFINITY;
    }
    double[] foot = foot(a, b, x, y);
    return Math.hypot(x - foot[0], y - foot[1]);
  }
}
