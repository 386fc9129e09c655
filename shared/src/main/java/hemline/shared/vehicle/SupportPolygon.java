package hemline.shared.vehicle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Convex hull of the places where the wheels stand: the machine tips when the resultant of what
 * presses it to the ground leaves it.
 *
 * <p>Monotone chain of A. M. Andrew, "Another efficient algorithm for convex hulls in two
 * dimensions", Inf. Process. Lett. 9 (1979).
 */
public final class SupportPolygon {
  private final List<Edge> edges = new ArrayList<>();

  /**
   * A line about which the machine can tip.
   *
   * @param outX unit vector away from the machine, forwards part
   * @param outY part to the left
   * @param reach largest out · r of the wheels, m
   */
  public record Edge(double outX, double outY, double reach) {}

  public SupportPolygon(List<Axle> axles) {
    List<double[]> points = new ArrayList<>();
    for (WheelLoads.Wheel w : WheelLoads.wheels(axles)) {
      points.add(new double[] {w.x(), w.y()});
    }
    points.sort(Comparator.<double[]>comparingDouble(p -> p[0]).thenComparingDouble(p -> p[1]));
    List<double[]> hull = half(points);
    Collections.reverse(points);
    hull.addAll(half(points));
    for (int i = 0; i < hull.size(); i++) {
      double[] p = hull.get(i);
      double[] q = hull.get((i + 1) % hull.size());
      double length = Math.hypot(q[0] - p[0], q[1] - p[1]);
      if (length > 0) {
        double nx = (q[1] - p[1]) / length;
        double ny = (p[0] - q[0]) / length;
        edges.add(new Edge(nx, ny, nx * p[0] + ny * p[1]));
      }
    }
  }

  /** Lower half of the hull of sorted points, without its last point. */
  private static List<double[]> half(List<double[]> points) {
    List<double[]> chain = new ArrayList<>();
    for (double[] p : points) {
      while (chain.size() > 1
          && cross(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0) {
        chain.remove(chain.size() - 1);
      }
      chain.add(p);
    }
    chain.remove(chain.size() - 1);
    return chain;
  }

  private static double cross(double[] o, double[] a, double[] b) {
    return (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
  }

  /**
   * How far the resultant of a load lies within the wheels, as a moment: the smallest over the
   * edges of N reach − out · (Σ N x, Σ N y); negative when the machine tips or is pulled off.
   *
   * @param load {N, Σ N x, Σ N y} towards the ground
   */
  public double restoring(double... load) {
    double least = Double.POSITIVE_INFINITY;
    for (Edge e : edges) {
      least = Math.min(least, load[0] * e.reach() - e.outX() * load[1] - e.outY() * load[2]);
    }
    return load[0] < 0 ? Math.min(load[0], least) : least;
  }

  /** Tipping lines, counter-clockwise. */
  public List<Edge> edges() {
    return List.copyOf(edges);
  }
}
