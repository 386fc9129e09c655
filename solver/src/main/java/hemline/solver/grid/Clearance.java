package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import org.jspecify.annotations.Nullable;

/** Free distances between the solids and sides of a domain. */
final class Clearance {
  private static final int DIRECTIONS = 64;

  private final GridDesign.Domain domain;

  Clearance(GridDesign.Domain domain) {
    this.domain = domain;
  }

  boolean inFluid(double x, double y) {
    if (x <= domain.xMin() || x >= domain.xMax() || y <= domain.yMin() || y >= domain.yMax()) {
      return false;
    }
    return domain.solids().stream().noneMatch(ring -> inside(ring, x, y));
  }

  private static boolean inside(Ring ring, double x, double y) {
    boolean in = false;
    int n = ring.size();
    for (int k = 0; k < n; k++) {
      double ay = ring.y()[k];
      double by = ring.y()[(k + 1) % n];
      if (ay > y != by > y) {
        double ax = ring.x()[k];
        double bx = ring.x()[(k + 1) % n];
        in ^= x < ax + (y - ay) / (by - ay) * (bx - ax);
      }
    }
    return in;
  }

  /** An edge of a solid, from vertex {@code edge} to the next. */
  record Wall(Ring ring, int edge) {
    boolean isOrTouches(Ring other, int k) {
      int n = ring.size();
      int apart = Math.floorMod(k - edge, n);
      return other == ring && (apart <= 1 || apart == n - 1);
    }
  }

  /**
   * Free distance from a point in the fluid along y; the domain's side ends it.
   *
   * @param from wall on which the point lies; it and the edges beside it are looked through, so
   *     that an acute corner is no narrow gap
   */
  double vertical(double x, double y, boolean up, @Nullable Wall from) {
    double free = up ? domain.yMax() - y : y - domain.yMin();
    for (Ring ring : domain.solids()) {
      free = Math.min(free, first(ring, ring.x(), ring.y(), x, y, up, from));
    }
    return free;
  }

  /** The same along x. */
  double horizontal(double x, double y, boolean right, @Nullable Wall from) {
    double free = right ? domain.xMax() - x : x - domain.xMin();
    for (Ring ring : domain.solids()) {
      free = Math.min(free, first(ring, ring.y(), ring.x(), y, x, right, from));
    }
    return free;
  }

  /** Distance along q from (p, q) to the first edge, whatever the axes are called. */
  private static double first(
      Ring ring,
      double[] ps,
      double[] qs,
      double p,
      double q,
      boolean forward,
      @Nullable Wall from) {
    double least = Double.POSITIVE_INFINITY;
    int n = ps.length;
    for (int k = 0; k < n; k++) {
      int m = (k + 1) % n;
      if (ps[k] > p != ps[m] > p && (from == null || !from.isOrTouches(ring, k))) {
        double hit = qs[k] + (p - ps[k]) / (ps[m] - ps[k]) * (qs[m] - qs[k]);
        double d = forward ? hit - q : q - hit;
        if (d >= 0) {
          least = Math.min(least, d);
        }
      }
    }
    return least;
  }

  /** True when a vertex lies on the surface of the fluid, false when it is buried. */
  boolean touchesFluid(double x, double y, double step) {
    for (int k = 0; k < DIRECTIONS; k++) {
      double angle = 2 * Math.PI * (k + 0.5) / DIRECTIONS;
      if (inFluid(x + step * Math.cos(angle), y + step * Math.sin(angle))) {
        return true;
      }
    }
    return false;
  }

  /**
   * Least free distance along y at a vertex, over the directions that lead into the fluid; a
   * direction along the solid's own side does not count. Infinite when there is none.
   *
   * @param step small distance off the vertex, m
   */
  double atVertex(double x, double y, double step) {
    // much closer to the vertical through the vertex than to the vertex's height, so that a slanted
    // edge of the vertex itself is behind
    double aside = 1e-3 * step;
    double least = Double.POSITIVE_INFINITY;
    for (int sign = -1; sign <= 1; sign += 2) {
      double py = y + sign * step;
      if (inFluid(x - aside, py) && inFluid(x + aside, py)) {
        double left = vertical(x - aside, py, sign > 0, null);
        double right = vertical(x + aside, py, sign > 0, null);
        least = Math.min(least, Math.min(left, right) + step);
      }
    }
    return least;
  }
}
