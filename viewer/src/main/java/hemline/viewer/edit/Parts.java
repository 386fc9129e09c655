package hemline.viewer.edit;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** The outlines of a lip drawing by number: the body first, then the detached parts. */
public final class Parts {
  private Parts() {}

  /** Number of outlines. */
  public static int count(LipDrawing drawing) {
    return 1 + drawing.detached().size();
  }

  /** One outline. */
  public static DrawnOutline of(LipDrawing drawing, int part) {
    return part == 0 ? drawing.body() : drawing.detached().get(part - 1);
  }

  /** The vertex of a corner; its index may run over the end. */
  public static Vertex vertex(LipDrawing drawing, Corner corner) {
    return of(drawing, corner.part()).at(corner.index());
  }

  /** Corner after another one on the same outline. */
  public static Corner next(LipDrawing drawing, Corner corner) {
    return step(drawing, corner, 1);
  }

  /** Corner before another one on the same outline. */
  public static Corner previous(LipDrawing drawing, Corner corner) {
    return step(drawing, corner, -1);
  }

  private static Corner step(LipDrawing drawing, Corner corner, int by) {
    int n = of(drawing, corner.part()).vertices().size();
    return new Corner(corner.part(), Math.floorMod(corner.index() + by, n));
  }

  /** All corners, outline by outline. */
  public static List<Corner> corners(LipDrawing drawing) {
    List<Corner> corners = new ArrayList<>();
    for (int part = 0; part < count(drawing); part++) {
      for (int i = 0; i < of(drawing, part).vertices().size(); i++) {
        corners.add(new Corner(part, i));
      }
    }
    return corners;
  }

  /** True when the drawing has that corner. */
  public static boolean has(LipDrawing drawing, Corner corner) {
    return corner.part() < count(drawing)
        && corner.index() < of(drawing, corner.part()).vertices().size();
  }

  static LipDrawing with(LipDrawing d, int part, DrawnOutline outline) {
    if (part == 0) {
      return with(d, outline, d.mountEdge(), d.detached());
    }
    List<DrawnOutline> detached = new ArrayList<>(d.detached());
    detached.set(part - 1, outline);
    return with(d, d.body(), d.mountEdge(), detached);
  }

  static LipDrawing with(
      LipDrawing d, DrawnOutline body, int mountEdge, List<DrawnOutline> detached) {
    return new LipDrawing(
        d.name(), d.family(), d.notes(), d.invented(), d.source(), body, mountEdge, detached);
  }

  static LipDrawing mapped(LipDrawing d, UnaryOperator<DrawnOutline> change) {
    return with(
        d, change.apply(d.body()), d.mountEdge(), d.detached().stream().map(change).toList());
  }
}
