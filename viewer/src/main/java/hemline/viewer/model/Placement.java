package hemline.viewer.model;

import hemline.shared.geometry.CornerResolver;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a lip lies in the frame of its drawing.
 *
 * @param left x of its ambient edge, m
 * @param right x of its plenum edge, m
 * @param low y of its lowest point, m
 * @param high y of its top, m
 */
public record Placement(double left, double right, double low, double high) {

  /** Placement of a drawing, with its roundings where they can be made. */
  public static Placement of(LipDrawing drawing) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Outline outline : outlines(drawing)) {
      List<double[]> points = new ArrayList<>();
      if (outline.vertices().size() < 3) {
        for (Vertex v : outline.vertices()) {
          points.add(new double[] {v.x(), v.y()});
        }
      } else {
        Ring ring = outline.flatten();
        for (int k = 0; k < ring.size(); k++) {
          points.add(new double[] {ring.x()[k], ring.y()[k]});
        }
      }
      for (double[] p : points) {
        left = Math.min(left, p[0]);
        right = Math.max(right, p[0]);
        low = Math.min(low, p[1]);
        high = Math.max(high, p[1]);
      }
    }
    return new Placement(left, right, low, high);
  }

  /** The outlines of a drawing, body first, with roundings where they can be made. */
  public static List<Outline> outlines(LipDrawing drawing) {
    List<Outline> outlines = new ArrayList<>();
    outlines.add(resolved(drawing.body()));
    drawing.detached().forEach(d -> outlines.add(resolved(d)));
    return outlines;
  }

  private static Outline resolved(DrawnOutline drawn) {
    if (!drawn.roundings().isEmpty()) {
      CornerResolver.Resolved resolved =
          CornerResolver.resolve(drawn, "outline", new ArrayList<>());
      if (resolved != null) {
        return resolved.outline();
      }
    }
    return new Outline(drawn.vertices());
  }
}
