package hemline.viewer.edit;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.PlainText;
import hemline.shared.profile.LipDrawing;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Changes of a lip drawing as a whole: mirrored, shifted, scaled, named anew, copied. */
public final class LipShape {
  private LipShape() {}

  /** Exchanges the ambient and the plenum side; the lip stays where it is. */
  public static LipDrawing mirror(LipDrawing drawing) {
    double[] box = box(drawing);
    return moved(drawing, v -> new Vertex(box[0] + box[1] - v.x(), v.y(), flipped(v.bulge())));
  }

  private static double flipped(double bulge) {
    return bulge == 0 ? 0 : -bulge;
  }

  /** Moves the whole drawing, m. */
  public static LipDrawing shift(LipDrawing drawing, double dx, double dy) {
    return moved(drawing, v -> new Vertex(v.x() + dx, v.y() + dy, v.bulge()));
  }

  private static LipDrawing moved(LipDrawing drawing, UnaryOperator<Vertex> to) {
    return Parts.mapped(
        drawing, o -> new DrawnOutline(o.vertices().stream().map(to).toList(), o.roundings()));
  }

  /** Scales the whole drawing about its lower left corner, roundings too. */
  public static LipDrawing scale(LipDrawing drawing, double factor) {
    double[] box = box(drawing);
    return Parts.mapped(
        drawing,
        o ->
            new DrawnOutline(
                o.vertices().stream()
                    .map(
                        v ->
                            new Vertex(
                                box[0] + factor * (v.x() - box[0]),
                                box[2] + factor * (v.y() - box[2]),
                                v.bulge()))
                    .toList(),
                o.roundings().stream()
                    .map(r -> new Rounding(r.vertex(), r.kind(), factor * r.size()))
                    .toList()));
  }

  /** The same lip under another name. */
  public static LipDrawing named(LipDrawing d, String name) {
    return d.named(PlainText.asName(name));
  }

  /** The lip as a new one whose name counts up: "flat", "flat variant 2", "flat variant 3". */
  public static LipDrawing variant(LipDrawing drawing, List<String> taken) {
    String stem = drawing.name().replaceAll(" variant \\d+$", "");
    stem = stem.substring(0, Math.min(stem.length(), PlainText.LONGEST_NAME - 20));
    int number = 2;
    while (taken.contains(stem + " variant " + number)
        || drawing.name().equals(stem + " variant " + number)) {
      number++;
    }
    return named(drawing, stem + " variant " + number);
  }

  /** Smallest and largest x, smallest and largest y of all vertices, m. */
  public static double[] box(LipDrawing drawing) {
    double[] box = {
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY,
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY
    };
    List<DrawnOutline> all = new ArrayList<>(drawing.detached());
    all.add(drawing.body());
    for (DrawnOutline o : all) {
      for (Vertex v : o.vertices()) {
        box[0] = Math.min(box[0], v.x());
        box[1] = Math.max(box[1], v.x());
        box[2] = Math.min(box[2], v.y());
        box[3] = Math.max(box[3], v.y());
      }
    }
    return box;
  }
}
