package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import hemline.shared.result.SectionResult;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
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

  private final SectionScene scene;
  private final Projection view;
  private final PressureScale scale;
  private final GridField shown;

  private SectionPicture(SectionScene scene) {
    this.scene = scene;
    SectionWindow window = scene.window();
    double perMetre = Math.min(WIDEST / window.width(), TALLEST / window.height());
    double left = MARGIN + RULER + 0.5 * (WIDEST - window.width() * perMetre);
    this.view = new Projection(window, left, HEADING + window.height() * perMetre, perMetre);
    this.shown = scene.field().around(window);
    double[] range = shown.pressureRange();
    this.scale = PressureScale.over(range[0], range[1]);
  }

  /** Picture of a solved lip section. */
  public static SectionPicture of(SealSection section, SectionResult result, FlowField field) {
    return new SectionPicture(SectionScene.of(section, result, GridField.of(field)));
  }

  /** Picture of a solved duct section. */
  public static SectionPicture of(DuctSection duct, SectionResult result, FlowField field) {
    return new SectionPicture(SectionScene.of(duct, result, GridField.of(field)));
  }

  static SectionPicture of(SectionScene scene) {
    return new SectionPicture(scene);
  }

  /** Where section coordinates lie on the sheet. */
  Projection view() {
    return view;
  }

  @Override
  double width() {
    return MARGIN + RULER + WIDEST + MARGIN;
  }

  @Override
  double height() {
    return view.base() + BELOW + GROUND + MARGIN;
  }

  @Override
  void paint(Sheet sheet) {
    SectionCaption.heading(sheet, scene, MARGIN, width() - MARGIN);
    sheet.clip(view.frame());
    paintPressure(sheet);
    Streamlines lines =
        new Streamlines(shown, scene.through(), scene.result().gap() * view.scale());
    lines.paint(sheet, view);
    paintSolids(sheet);
    VortexLabels.paint(sheet, view, scene.result());
    sheet.unclip();
    paintGround(sheet);
    Rulers.paint(sheet, view, scene, GROUND);
    sheet.stroke(view.frame(), Ink.AXIS);
    SectionCaption.keys(sheet, scale, lines, MARGIN, width() - MARGIN, view.base() + GROUND + 58);
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

  /** Strip under y = 0: hatched ground with an arrow for its motion. */
  private void paintGround(Sheet sheet) {
    Rectangle2D strip = new Rectangle2D.Double(view.left(), view.base(), view.width(), GROUND);
    sheet.fill(strip, Ink.WALL, 1);
    sheet.stroke(Hatching.of(strip, strip, HATCH), new Pen(Ink.WALL_HATCH, 1, 0.9));
    sheet.stroke(
        new Line2D.Double(view.left(), view.base(), view.left() + view.width(), view.base()),
        new Pen(Ink.TEXT, 1, 1.8));
    GroundArrow.paint(sheet, scene.motion(), strip);
  }
}
