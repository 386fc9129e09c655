package hemline.viewer.screen;

import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.Edges;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.Parts;
import org.jspecify.annotations.Nullable;

/** What lies under a pixel of the board. */
final class BoardFind {
  private static final double NEAR = 9;
  private static final double NEAR_EDGE = 6;

  private BoardFind() {}

  /** Vertex under a pixel; null for none. */
  static @Nullable Corner corner(LipDrawing drawing, BoardView view, double px, double py) {
    Corner best = null;
    double nearest = NEAR;
    for (Corner corner : Parts.corners(drawing)) {
      Vertex v = Parts.vertex(drawing, corner);
      double d = Math.hypot(view.px(v.x()) - px, view.py(v.y()) - py);
      if (d < nearest) {
        nearest = d;
        best = corner;
      }
    }
    return best;
  }

  /** Edge under a pixel, by the corner it leaves; null for none. */
  static @Nullable Corner edge(LipDrawing drawing, BoardView view, double px, double py) {
    Corner best = null;
    double nearest = NEAR_EDGE / view.scale();
    for (Corner corner : Parts.corners(drawing)) {
      Vertex a = Parts.vertex(drawing, corner);
      Vertex b = Parts.vertex(drawing, Parts.next(drawing, corner));
      double d = Edges.distance(a, b, view.x(px), view.y(py));
      if (d < nearest) {
        nearest = d;
        best = corner;
      }
    }
    return best;
  }

  /** True when a pixel lies on the middle of an edge. */
  static boolean onMiddle(LipDrawing drawing, BoardView view, Corner edge, double px, double py) {
    double[] m = middle(drawing, edge);
    return Math.hypot(view.px(m[0]) - px, view.py(m[1]) - py) < NEAR;
  }

  /** Middle of an edge in the drawing. */
  static double[] middle(LipDrawing drawing, Corner edge) {
    return Edges.middle(
        Parts.vertex(drawing, edge), Parts.vertex(drawing, Parts.next(drawing, edge)));
  }
}
