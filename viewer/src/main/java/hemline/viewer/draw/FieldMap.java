package hemline.viewer.draw;

import hemline.viewer.picture.ColourCurve;
import hemline.viewer.picture.GridField;
import hemline.viewer.picture.PressureScale;
import hemline.viewer.picture.Projection;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * A quantity as bands of colour.
 *
 * <p>Bands are the same steps as in saved pictures; on screen they are looked up pixel by pixel,
 * which costs a tenth of filling thirty outlines.
 */
public final class FieldMap {
  private final GridField field;
  private final double low;
  private final double high;

  /**
   * A map.
   *
   * @param field with the quantity in the place of pressure. Not modified.
   * @param low lower end of what it shows
   * @param high upper end
   */
  public FieldMap(GridField field, double low, double high) {
    this.field = field;
    this.low = low;
    this.high = high;
  }

  /**
   * Steps of a scale that holds this map and others beside it, so that one colour means the same in
   * all.
   */
  public PressureScale scale(List<FieldMap> beside) {
    double least = low;
    double most = high;
    for (FieldMap other : beside) {
      least = Math.min(least, other.low);
      most = Math.max(most, other.high);
    }
    return PressureScale.over(least, most);
  }

  /**
   * Colours of a frame, 0xAARRGGBB, row by row from the top.
   *
   * @param frame on the board; the map must cover it
   * @param w pixels across
   * @param h pixels down
   * @param pixels takes them
   * @param first where the first one goes
   * @param stride pixels from one row to the next
   */
  void fill(
      Projection to,
      Rectangle2D frame,
      PressureScale scale,
      ColourCurve colours,
      int w,
      int h,
      int[] pixels,
      int first,
      int stride) {
    double[] px = field.px();
    double[] py = field.py();
    double[] values = field.pressure();
    int[] colour = new int[scale.count()];
    for (int band = 0; band < colour.length; band++) {
      colour[band] = 0xFF000000 | colours.at(scale.share(band));
    }
    int[] column = new int[w];
    double[] across = new double[w];
    double stepX = frame.getWidth() / w / to.scale();
    double left = to.window().left() + (frame.getMinX() - to.left()) / to.scale();
    locate(px, left + 0.5 * stepX, stepX, column, across);
    int[] line = new int[h];
    double[] up = new double[h];
    double stepY = -frame.getHeight() / h / to.scale();
    double top = to.window().bottom() + (to.base() - frame.getMinY()) / to.scale();
    locate(py, top + 0.5 * stepY, stepY, line, up);
    double[] row = new double[px.length];
    double from = scale.edge(0);
    double perBand = 1 / scale.step();
    for (int r = 0; r < h; r++) {
      int below = line[r] * px.length;
      for (int i = 0; i < row.length; i++) {
        double a = values[below + i];
        row[i] = (a + up[r] * (values[below + px.length + i] - a) - from) * perBand;
      }
      int at = first + r * stride;
      for (int c = 0; c < w; c++) {
        double v = row[column[c]] + across[c] * (row[column[c] + 1] - row[column[c]]);
        pixels[at + c] = colour[Math.max(0, Math.min(colour.length - 1, (int) v))];
      }
    }
  }

  /** Interval of the nodes, and place in it, of equally spaced points. */
  private static void locate(
      double[] nodes, double first, double step, int[] interval, double[] share) {
    int k = step > 0 ? 0 : nodes.length - 2;
    for (int n = 0; n < interval.length; n++) {
      double at = first + n * step;
      while (k < nodes.length - 2 && nodes[k + 1] < at) {
        k++;
      }
      while (k > 0 && nodes[k] > at) {
        k--;
      }
      interval[n] = k;
      double width = nodes[k + 1] - nodes[k];
      share[n] = width > 0 ? Math.max(0, Math.min(1, (at - nodes[k]) / width)) : 0;
    }
  }
}
