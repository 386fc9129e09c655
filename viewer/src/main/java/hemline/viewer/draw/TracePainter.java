package hemline.viewer.draw;

import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import hemline.viewer.picture.Ticks;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;

/** Paints pressure over x below the board. */
public final class TracePainter {
  private static final double MARGIN = 18;

  /** Narrower strips have no room for the meaning of the lines. */
  private static final double ROOMY = 290;

  private final Sheet sheet;
  private final Palette ink;
  private final BoardView view;
  private final double height;

  /** Prepares a strip of a height, pixels, on the x-axis of a board. */
  public TracePainter(Sheet sheet, Palette ink, BoardView view, double height) {
    this.sheet = sheet;
    this.ink = ink;
    this.view = view;
    this.height = height;
  }

  /** Paper and title. */
  public void frame() {
    sheet.fill(new Rectangle2D.Double(0, 0, view.width(), height), ink.paper(), 1);
    sheet.stroke(new Line2D.Double(0, 0.5, view.width(), 0.5), new Pen(ink.quiet(), 0.6, 1));
  }

  /**
   * Both traces with their scale.
   *
   * @param originX x of the flow's origin in the drawing, m
   * @param beside traces of the flows on show, which share the scale
   */
  public void lines(PressureTrace trace, double originX, List<PressureTrace> beside) {
    double[] range = trace.range();
    double low = range[0];
    double high = range[1];
    for (PressureTrace other : beside) {
      low = Math.min(low, other.range()[0]);
      high = Math.max(high, other.range()[1]);
    }
    high = Math.max(high, low + 1e-6);
    Ticks ticks = Ticks.within(low, high, 3);
    Lettering digits = Lettering.of(11.5, ink.quiet()).lifted();
    for (double t : ticks.values()) {
      double y = y(t, low, high);
      sheet.stroke(new Line2D.Double(0, y, view.width(), y), new Pen(ink.quiet(), 0.35, 0.8));
    }
    stroke(trace.ground(), originX, low, high, new Pen(ink.lines().leak(), 1, 1.8));
    stroke(trace.lip(), originX, low, high, new Pen(ink.lines().vortex(), 1, 1.8, 6, 3));
    for (double t : ticks.values()) {
      double y = y(t, low, high);
      sheet.text(10, y - 3, Digits.fixed(t, ticks.decimals()) + " Pa", digits);
    }
    if (view.width() > ROOMY) {
      key();
    }
  }

  private void key() {
    double right = view.width() - 14;
    sheet.fill(new RoundRectangle2D.Double(right - 216, 4, 224, 40, 8, 8), ink.paper(), 0.9);
    Lettering words = Lettering.of(12, ink.text()).lifted().at(Anchor.END);
    sheet.text(right, 20, "pressure along the ground", words);
    sheet.stroke(
        new Line2D.Double(right - 206, 16, right - 178, 16), new Pen(ink.lines().leak(), 1, 1.8));
    sheet.text(right, 37, "pressure under the lip", words);
    sheet.stroke(
        new Line2D.Double(right - 206, 33, right - 178, 33),
        new Pen(ink.lines().vortex(), 1, 1.8, 6, 3));
  }

  private void stroke(List<double[]> points, double originX, double low, double high, Pen pen) {
    Path2D path = new Path2D.Double();
    boolean begun = false;
    for (double[] p : points) {
      double x = view.px(originX + p[0]);
      double y = y(p[1], low, high);
      if (begun) {
        path.lineTo(x, y);
      } else {
        path.moveTo(x, y);
        begun = true;
      }
    }
    sheet.stroke(path, pen);
  }

  private double y(double pressure, double low, double high) {
    return height - MARGIN - (height - 2 * MARGIN) * (pressure - low) / (high - low);
  }
}
