package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import hemline.shared.result.SectionResult;
import hemline.shared.section.Section;
import hemline.solver.flow.FlowField;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Lines of the finest grid around the lip, with the solids that cut its cells. */
public final class MeshPicture extends Picture {
  private static final double WIDEST = 860;
  private static final double TALLEST = 460;
  private static final double MARGIN = 20;
  private static final double HEADING = 44;
  private static final double HATCH = 7;
  private static final Pen LINE = new Pen(Ink.SERIES, 0.55, 0.5);

  private final SectionScene scene;
  private final Projection view;
  private final int cells;

  private MeshPicture(SectionScene scene, Projection view, int cells) {
    super(WIDEST + 2 * MARGIN, view.base() + MARGIN);
    this.scene = scene;
    this.view = view;
    this.cells = cells;
  }

  private static MeshPicture of(SectionScene scene, FlowField field) {
    SectionWindow window = scene.window();
    double perMetre = Math.min(WIDEST / window.width(), TALLEST / window.height());
    double base = HEADING + window.height() * perMetre;
    Projection view = new Projection(window, MARGIN, base, perMetre);
    return new MeshPicture(scene, view, field.u().length);
  }

  /** Mesh of a solved section. */
  public static MeshPicture of(Section section, SectionResult result, FlowField field) {
    return of(SectionScene.of(section, result, GridField.of(field)), field);
  }

  @Override
  public void paint(Sheet sheet) {
    sheet.text(
        MARGIN,
        28,
        "finest grid, " + cells + " cells in all; lines close up where the flow turns sharply",
        Lettering.of(13, Ink.TEXT).heavy());
    Rectangle2D frame = view.frame();
    sheet.clip(frame);
    Path2D lines = new Path2D.Double();
    for (double x : scene.field().sx()) {
      double at = view.x(x);
      if (at >= frame.getMinX() && at <= frame.getMaxX()) {
        lines.append(new Line2D.Double(at, frame.getMinY(), at, frame.getMaxY()), false);
      }
    }
    for (double y : scene.field().sy()) {
      double at = view.y(y);
      if (at >= frame.getMinY() && at <= frame.getMaxY()) {
        lines.append(new Line2D.Double(frame.getMinX(), at, frame.getMaxX(), at), false);
      }
    }
    sheet.stroke(lines, LINE);
    for (Ring wall : scene.walls()) {
      solid(sheet, view.path(wall), Ink.WALL, Ink.WALL_HATCH, Ink.QUIET);
    }
    for (Ring part : scene.lip()) {
      solid(sheet, view.path(part), Ink.LIP, Ink.LIP_HATCH, Ink.LIP_EDGE);
    }
    sheet.unclip();
    sheet.stroke(frame, Ink.AXIS);
  }

  private void solid(Sheet sheet, Shape shape, int fill, int hatch, int edge) {
    sheet.fill(shape, fill, 1);
    sheet.stroke(Hatching.of(shape, view.frame(), HATCH), new Pen(hatch, 1, 0.9));
    sheet.stroke(shape, new Pen(edge, 1, 1.6));
  }
}
