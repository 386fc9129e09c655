package hemline.viewer.draw;

import hemline.shared.result.SectionResult;
import hemline.viewer.model.Shown;
import hemline.viewer.picture.Contours;
import hemline.viewer.picture.GridField;
import hemline.viewer.picture.PressureScale;
import hemline.viewer.picture.Projection;
import hemline.viewer.picture.SectionScene;
import hemline.viewer.picture.SectionWindow;
import hemline.viewer.picture.Sheet;
import hemline.viewer.picture.Streamlines;
import hemline.viewer.picture.VortexLabels;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** A flow made ready to paint at any place and scale: lines are traced once. */
public final class FlowPicture {
  private final Shown shown;
  private final GridField field;
  private final PressureScale scale;
  private final List<List<Contours.Line>> bands = new ArrayList<>();
  private final Streamlines lines;

  public FlowPicture(Shown shown) {
    this.shown = shown;
    field = GridField.of(shown.field());
    double[] range = field.pressureRange(0);
    scale = PressureScale.over(range[0], range[1]);
    Contours contours = new Contours(field.px(), field.py(), field.pressure());
    for (int band = 1; band < scale.count(); band++) {
      bands.add(contours.region(scale.edge(band)));
    }
    SectionScene scene = SectionScene.of(shown.section(), shown.result(), field);
    lines = new Streamlines(field, scene.through(), 100);
  }

  public Shown shown() {
    return shown;
  }

  public PressureScale scale() {
    return scale;
  }

  public Streamlines streamlines() {
    return lines;
  }

  public SectionResult result() {
    return shown.result();
  }

  /** Where the flow's frame has its origin in the drawing. */
  public Projection projection(BoardView view) {
    return view.projection(
        shown.placement().left(), shown.placement().low() - shown.section().gap());
  }

  /** Paints pressure and streamlines. */
  public void paint(Sheet sheet, BoardView view) {
    Projection to = projection(view);
    Rectangle2D frame = frame(to);
    sheet.clip(frame);
    sheet.fill(frame, scale.colour(0), 1);
    for (int band = 1; band < scale.count(); band++) {
      Path2D region = new Path2D.Double();
      for (Contours.Line line : bands.get(band - 1)) {
        to.append(region, line);
      }
      sheet.fill(region, scale.colour(band), 1);
    }
    lines.paint(sheet, to);
    sheet.unclip();
  }

  /** Writes the strengths of the trapped vortices; after the solids are painted. */
  public void paintLabels(Sheet sheet, BoardView view) {
    VortexLabels.paint(sheet, projection(view), shown.result());
  }

  /** The part of the board that the flow covers. */
  private Rectangle2D frame(Projection to) {
    SectionWindow w = to.window();
    double left = Math.max(to.x(field.sx()[0]), to.x(w.left()));
    double right = Math.min(to.x(field.sx()[field.sx().length - 1]), to.x(w.right()));
    double top = Math.max(to.y(field.sy()[field.sy().length - 1]), to.y(w.top()));
    double bottom = Math.min(to.y(0), to.y(w.bottom()));
    return new Rectangle2D.Double(left, top, Math.max(0, right - left), Math.max(0, bottom - top));
  }
}
