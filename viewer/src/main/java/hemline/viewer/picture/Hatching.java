package hemline.viewer.picture;

import java.awt.Shape;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Parallel lines at 45 degrees inside a shape, the mark of solid matter in drawings. */
public final class Hatching {
  private static final double FLATNESS = 0.1;

  private Hatching() {}

  /**
   * Lines inside a shape.
   *
   * @param bounds only lines that meet this rectangle are made
   * @param spacing distance between lines, sheet units
   */
  public static Path2D of(Shape shape, Rectangle2D bounds, double spacing) {
    List<double[]> edges = edges(shape);
    Path2D path = new Path2D.Double();
    double pitch = spacing * Math.sqrt(2);
    double last = bounds.getMaxX() + bounds.getMaxY();
    for (double c = Math.ceil((bounds.getMinX() + bounds.getMinY()) / pitch) * pitch;
        c < last;
        c += pitch) {
      // x where the line x + y = c crosses the outline; inside between each pair
      List<Double> crossings = new ArrayList<>();
      for (double[] e : edges) {
        double from = e[0] + e[1] - c;
        double to = e[2] + e[3] - c;
        if (from < 0 != to < 0) {
          crossings.add(e[0] + (e[2] - e[0]) * from / (from - to));
        }
      }
      Collections.sort(crossings);
      for (int k = 0; k + 1 < crossings.size(); k += 2) {
        path.moveTo(crossings.get(k), c - crossings.get(k));
        path.lineTo(crossings.get(k + 1), c - crossings.get(k + 1));
      }
    }
    return path;
  }

  private static List<double[]> edges(Shape shape) {
    List<double[]> edges = new ArrayList<>();
    double[] c = new double[6];
    double startX = 0;
    double startY = 0;
    double x = 0;
    double y = 0;
    PathIterator it = new FlatteningPathIterator(shape.getPathIterator(null), FLATNESS);
    for (; !it.isDone(); it.next()) {
      int kind = it.currentSegment(c);
      if (kind == PathIterator.SEG_MOVETO) {
        startX = c[0];
        startY = c[1];
      } else {
        boolean close = kind == PathIterator.SEG_CLOSE;
        edges.add(new double[] {x, y, close ? startX : c[0], close ? startY : c[1]});
      }
      x = kind == PathIterator.SEG_CLOSE ? startX : c[0];
      y = kind == PathIterator.SEG_CLOSE ? startY : c[1];
    }
    return edges;
  }
}
