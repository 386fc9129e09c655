package hemline.viewer.draw;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.Parts;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.picture.FreeSpot;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.TextWidth;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Lengths of the edges of a lip, and radii of its arcs, written beside them. */
public final class SizeMarks {
  private static final double LETTERS = 11.5;

  /** Edges shorter than this, in pixels, are not named: zoom in. */
  private static final double SHORTEST = 14;

  private SizeMarks() {}

  /** Writes them where there is room. */
  public static void paint(FxSheet sheet, BoardView view, Palette ink, LipDrawing drawing) {
    FreeSpot room = new FreeSpot(new Rectangle2D.Double(64, 24, view.width() - 64, view.height()));
    for (Corner edge : Parts.corners(drawing)) {
      Vertex a = Parts.vertex(drawing, edge);
      Vertex b = Parts.vertex(drawing, Parts.next(drawing, edge));
      room.avoid(new Line2D.Double(view.px(a.x()), view.py(a.y()), view.px(b.x()), view.py(b.y())));
    }
    Lettering letters = Lettering.of(LETTERS, ink.text()).lifted();
    for (Corner edge : Parts.corners(drawing)) {
      Vertex a = Parts.vertex(drawing, edge);
      Vertex b = Parts.vertex(drawing, Parts.next(drawing, edge));
      double length = Math.hypot(b.x() - a.x(), b.y() - a.y());
      if (length * view.scale() < SHORTEST) {
        continue;
      }
      String text =
          a.bulge() == 0
              ? LengthUnit.bare(length, 4)
              : "r " + LengthUnit.bare(Arc.of(a, b).radius(), 3);
      double[] m = Edges.middle(a, b);
      Rectangle2D spot =
          room.take(view.px(m[0]), view.py(m[1]), TextWidth.of(text, LETTERS), LETTERS);
      sheet.text(spot.getMinX(), spot.getMaxY() - 2, text, letters);
    }
  }
}
