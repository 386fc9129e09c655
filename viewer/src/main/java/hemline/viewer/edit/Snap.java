package hemline.viewer.edit;

import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import java.util.Collection;

/**
 * Draws a point to vertices, to their heights and widths, and to a grid.
 *
 * @param step of the grid, m; 0 for none
 * @param vertices true to draw to other vertices and in line with them
 * @param reach how near a point must be, m
 */
public record Snap(double step, boolean vertices, double reach) {

  /**
   * A point after snapping.
   *
   * @param x m
   * @param y m
   * @param onX true when x was drawn to that of a vertex
   * @param onY true when y was drawn to that of a vertex
   */
  public record Point(double x, double y, boolean onX, boolean onY) {}

  /**
   * Snaps a point.
   *
   * @param moving corners that do not attract
   */
  public Point of(LipDrawing drawing, Collection<Corner> moving, double x, double y) {
    double bestX = reach;
    double bestY = reach;
    double best = reach;
    double toX = Double.NaN;
    double toY = Double.NaN;
    Point at = null;
    if (vertices) {
      for (Corner corner : Parts.corners(drawing)) {
        if (moving.contains(corner)) {
          continue;
        }
        Vertex v = Parts.vertex(drawing, corner);
        double distance = Math.hypot(v.x() - x, v.y() - y);
        if (distance < best) {
          best = distance;
          at = new Point(v.x(), v.y(), true, true);
        }
        if (Math.abs(v.x() - x) < bestX) {
          bestX = Math.abs(v.x() - x);
          toX = v.x();
        }
        if (Math.abs(v.y() - y) < bestY) {
          bestY = Math.abs(v.y() - y);
          toY = v.y();
        }
      }
    }
    if (at != null && moving.isEmpty()) {
      return at;
    }
    boolean onX = !Double.isNaN(toX);
    boolean onY = !Double.isNaN(toY);
    return new Point(onX ? toX : grid(x), onY ? toY : grid(y), onX, onY);
  }

  /** Nearest multiple of the step. */
  public double grid(double value) {
    // dividing by the count of steps in a metre keeps decimal fractions exact, and adding zero
    // turns a negative zero into a plain one
    double steps = Math.rint(value / step);
    double whole = Math.rint(1 / step);
    boolean decimal = Math.abs(whole * step - 1) < 1e-9;
    return step > 0 ? (decimal ? steps / whole : steps * step) + 0.0 : value;
  }
}
