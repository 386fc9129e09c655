package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import hemline.shared.result.SectionResult;
import hemline.shared.section.DuctSection;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.Section;
import hemline.solver.flow.FlowField;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * A section at true scale: pressure as colour, the leak and the trapped vortices as streamlines,
 * lip, skirt and ground, rulers in millimetres.
 */
public final class SectionPicture extends Picture {
  private static final double WIDEST = 940;
  private static final double TALLEST = 620;
  private static final double MARGIN = 26;
  private static final double RULER = 54;
  private static final double HEADING = 96;
  private static final double GROUND = 22;
  private static final double BELOW = 112;
  private static final double HATCH = 7;
  private static final Pen WALL_LINE = new Pen(Ink.TEXT, 1, 1.8);
  private static final double CORNER_SHARE = 0.002;

  private final SectionScene scene;
  private final Projection view;
  private final PressureScale scale;
  private final GridField shown;

  private SectionPicture(SectionScene scene, Projection view) {
    super(MARGIN + RULER + WIDEST + MARGIN, view.base() + BELOW + GROUND + MARGIN);
    this.scene = scene;
    this.view = view;
    this.shown = scene.field().around(scene.window());
    // a duct's pressure may be unbounded in a corner; a lip's lowest pressure is a result
    double[] range = shown.pressureRange(scene.duct() == null ? 0 : CORNER_SHARE);
    this.scale = PressureScale.over(range[0], range[1]);
  }

  /** Picture of a solved section. */
  public static SectionPicture of(Section section, SectionResult result, FlowField field) {
    return of(SectionScene.of(section, result, GridField.of(field)));
  }

  static SectionPicture of(SectionScene scene) {
    SectionWindow window = scene.window();
    double perMetre = Math.min(WIDEST / window.width(), TALLEST / window.height());
    double top = HEADING + (scene.ceilingShown() ? GROUND : 0);
    double left = MARGIN + RULER + 0.5 * (WIDEST - window.width() * perMetre);
    double base = top + window.height() * perMetre;
    return new SectionPicture(scene, new Projection(window, left, base, perMetre));
  }

  /** Where section coordinates lie on the sheet. */
  Projection view() {
    return view;
  }

  @Override
  public void paint(Sheet sheet) {
    SectionCaption.heading(sheet, scene, MARGIN, width() - MARGIN);
    sheet.clip(view.frame());
    paintPressure(sheet);
    Streamlines lines =
        new Streamlines(shown, scene.through(), scene.result().conditions().gap() * view.scale());
    lines.paint(sheet, view);
    paintSolids(sheet);
    VortexLabels.paint(sheet, view, scene.result());
    sheet.unclip();
    paintWalls(sheet);
    Rulers.paint(sheet, view, scene, GROUND);
    sheet.stroke(view.frame(), Ink.AXIS);
    SectionCaption.keys(
        sheet, scene, scale, lines, MARGIN, width() - MARGIN, view.base() + GROUND + 58);
  }

  private void paintPressure(Sheet sheet) {
    sheet.fill(view.frame(), scale.colour(0), 1);
    Contours contours = new Contours(shown.px(), shown.py(), shown.pressure());
    for (int band = 1; band < scale.count(); band++) {
      Path2D region = new Path2D.Double();
      for (Contours.Line line : contours.region(scale.edge(band))) {
        view.append(region, line);
      }
      sheet.fill(region, scale.colour(band), 1);
    }
  }

  private void paintSolids(Sheet sheet) {
    for (Ring wall : scene.walls()) {
      paintSolid(sheet, view.path(wall), Ink.WALL, Ink.WALL_HATCH, Ink.QUIET);
    }
    for (Ring part : scene.lip()) {
      paintSolid(sheet, view.path(part), Ink.LIP, Ink.LIP_HATCH, Ink.LIP_EDGE);
    }
  }

  private void paintSolid(Sheet sheet, Shape shape, int fill, int hatch, int edge) {
    sheet.fill(shape, fill, 1);
    sheet.stroke(Hatching.of(shape, view.frame(), HATCH), new Pen(hatch, 1, 0.9));
    sheet.stroke(shape, new Pen(edge, 1, 1.6));
  }

  /** Hatched strips for ground and ceiling with arrows for their motion; lines for side walls. */
  private void paintWalls(Sheet sheet) {
    Rectangle2D frame = view.frame();
    strip(sheet, frame.getMaxY(), frame.getMaxY(), "ground", scene.motion());
    DuctSection duct = scene.duct();
    if (duct != null && scene.ceilingShown()) {
      GroundMotion motion =
          new GroundMotion(duct.walls().upper().speed(), duct.walls().upper().spanwiseSpeed());
      strip(sheet, frame.getMinY() - GROUND, frame.getMinY(), "ceiling", motion);
    }
    if (scene.closed()) {
      for (double x : new double[] {frame.getMinX(), frame.getMaxX()}) {
        sheet.stroke(new Line2D.Double(x, frame.getMinY(), x, frame.getMaxY()), WALL_LINE);
      }
    }
  }

  /** A strip from a height on the sheet downwards, with the wall's surface at another. */
  private void strip(Sheet sheet, double top, double surface, String name, GroundMotion motion) {
    Rectangle2D strip = new Rectangle2D.Double(view.left(), top, view.width(), GROUND);
    sheet.fill(strip, Ink.WALL, 1);
    sheet.stroke(Hatching.of(strip, strip, HATCH), new Pen(Ink.WALL_HATCH, 1, 0.9));
    double right = view.left() + view.width();
    sheet.stroke(new Line2D.Double(view.left(), surface, right, surface), WALL_LINE);
    GroundArrow.paint(sheet, name, motion, strip);
  }
}
