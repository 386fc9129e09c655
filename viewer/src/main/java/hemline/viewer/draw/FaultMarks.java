package hemline.viewer.draw;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.OutlineChecks;
import hemline.shared.geometry.ThinParts;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.viewer.edit.Parts;
import hemline.viewer.picture.Sheet;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import hemline.viewer.picture.TextWidth;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Mistakes of a drawing where they are, with their cure. */
public final class FaultMarks {
  private static final String CROSSING = "edges cross: drag a corner clear";
  private static final double LETTERS = 12;

  private FaultMarks() {}

  /** Edges that cross in red, parts too thin to print in orange. */
  public static void paint(
      Sheet sheet, BoardView view, Palette ink, LipDrawing drawing, LipFindings findings) {
    if (!findings.problems().isEmpty()) {
      for (int part = 0; part < Parts.count(drawing); part++) {
        crossings(sheet, view, ink, Parts.of(drawing, part));
      }
    }
    ring(sheet, view, ink, findings.thinWalls(), "too thin to print: widen");
    ring(sheet, view, ink, findings.narrowSlots(), "may close in print: widen");
  }

  private static void crossings(Sheet sheet, BoardView view, Palette ink, DrawnOutline outline) {
    List<Rectangle2D> written = new ArrayList<>();
    for (OutlineChecks.Meeting m : OutlineChecks.meetings(outline)) {
      for (int edge : new int[] {m.edge(), m.other()}) {
        sheet.stroke(edge(view, outline, edge), new Pen(ink.marks().wrong(), 1, 3.2));
      }
      double x = view.px(m.x());
      double y = view.py(m.y());
      sheet.stroke(
          new Ellipse2D.Double(x - 8, y - 8, 16, 16), new Pen(ink.marks().wrong(), 1, 2.2));
      double width = TextWidth.of(CROSSING, LETTERS);
      Rectangle2D place = new Rectangle2D.Double(x - 0.5 * width, y - 26, width, 16);
      if (written.stream().noneMatch(place::intersects)) {
        written.add(place);
        sheet.text(
            x,
            y - 14,
            CROSSING,
            Lettering.of(LETTERS, ink.marks().wrong()).heavy().lifted().at(Anchor.MIDDLE));
      }
    }
  }

  private static Path2D edge(BoardView view, DrawnOutline outline, int edge) {
    Vertex a = outline.at(edge);
    Vertex b = outline.at(edge + 1);
    Path2D path = new Path2D.Double();
    path.moveTo(view.px(a.x()), view.py(a.y()));
    for (double[] p : Edges.points(a, b)) {
      path.lineTo(view.px(p[0]), view.py(p[1]));
    }
    return path;
  }

  private static void ring(
      Sheet sheet, BoardView view, Palette ink, List<ThinParts.Part> parts, String cure) {
    for (ThinParts.Part part : parts) {
      double r = Math.max(9, 0.5 * part.length() * view.scale() + 4);
      double x = view.px(part.x());
      double y = view.py(part.y());
      sheet.stroke(
          new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r), new Pen(ink.marks().caution(), 1, 2));
      sheet.text(x + r + 6, y + 4, cure, Lettering.of(12, ink.marks().caution()).heavy().lifted());
    }
  }
}
