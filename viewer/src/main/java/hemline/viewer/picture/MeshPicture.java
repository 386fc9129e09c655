package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import hemline.shared.result.SectionResult;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
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

  private MeshPicture(SectionScene scene, int cells) {
    this.scene = scene;
    this.cells = cells;
    SectionWindow window = scene.window();
    double perMetre = Math.min(WIDEST / window.width(), TALLEST / window.height());
    this.view = new Projection(window, MARGIN, HEADING + window.height() * perMetre, perMetre);
  }

  /** Mesh of a solved lip section. */
  public static MeshPicture of(SealSection section, SectionResult result, FlowField field) {
    return new MeshPicture(SectionScene.of(section, result, GridField.of(field)), field.u().length);
  }

  /** Mesh of a solved duct section. */
  public static MeshPicture of(DuctSection duct, SectionResult result, FlowField field) {
    return new MeshPicture(SectionScene.of(duct, result, GridField.of(field)), field.u().length);
  }

  @Override
  public double width() {
    return WIDEST + 2 * MARGIN;
  }

  @Override
  public double height() {
    return view.base() + MARGIN;
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
