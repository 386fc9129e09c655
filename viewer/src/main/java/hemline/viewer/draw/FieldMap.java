package hemline.viewer.draw;

import hemline.viewer.picture.ColourCurve;
import hemline.viewer.picture.Contours;
import hemline.viewer.picture.GridField;
import hemline.viewer.picture.PressureScale;
import hemline.viewer.picture.Projection;
import hemline.viewer.picture.Sheet;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** A quantity as bands of colour, traced once and painted at any place and scale. */
public final class FieldMap {
  private final PressureScale scale;
  private final List<List<Contours.Line>> bands = new ArrayList<>();

  /**
   * Traces the bands.
   *
   * @param field with the quantity in the place of pressure
   * @param low lower end of the scale
   * @param high upper end
   */
  public FieldMap(GridField field, double low, double high) {
    scale = PressureScale.over(low, high);
    Contours contours = new Contours(field.px(), field.py(), field.pressure());
    for (int band = 1; band < scale.count(); band++) {
      bands.add(contours.region(scale.edge(band)));
    }
  }

  /** Steps of the scale. */
  public PressureScale scale() {
    return scale;
  }

  /** Fills a frame with the bands. */
  public void paint(Sheet sheet, Projection to, Rectangle2D frame, ColourCurve colours) {
    sheet.fill(frame, colours.at(scale.share(0)), 1);
    for (int band = 1; band < scale.count(); band++) {
      Path2D region = new Path2D.Double();
      for (Contours.Line line : bands.get(band - 1)) {
        to.append(region, line);
      }
      sheet.fill(region, colours.at(scale.share(band)), 1);
    }
  }
}
