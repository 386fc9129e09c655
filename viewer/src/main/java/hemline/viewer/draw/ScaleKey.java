package hemline.viewer.draw;

import hemline.viewer.format.Digits;
import hemline.viewer.picture.ColourCurve;
import hemline.viewer.picture.PressureScale;
import hemline.viewer.picture.Sheet;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import hemline.viewer.picture.TextWidth;
import hemline.viewer.picture.Ticks;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;

/** The meaning of the colours, on a plate in the upper right corner of the board. */
final class ScaleKey {
  private static final double WIDTH = 270;

  /** Narrower there is no room for it. */
  private static final double LEAST = 120;

  private static final double HEIGHT = 56;
  private static final double TOP = 30;

  private ScaleKey() {}

  /** The part of the board that the key takes. */
  static Rectangle2D area(BoardView view) {
    double width = Math.min(WIDTH, view.width() - 76);
    return new Rectangle2D.Double(view.width() - width - 12, TOP, width, HEIGHT);
  }

  static void paint(
      Sheet sheet,
      BoardView view,
      PressureScale scale,
      ColourCurve colours,
      String name,
      Palette ink) {
    double x = area(view).getX();
    double width = area(view).getWidth();
    if (width < LEAST) {
      return;
    }
    double y = TOP;
    sheet.fill(new RoundRectangle2D.Double(x, y, width, HEIGHT, 8, 8), ink.paper(), 0.9);
    sheet.text(
        x + 12, y + 16, TextWidth.fitted(name, 12, width - 20), Lettering.of(12, ink.text()));
    double left = x + 16;
    double bar = width - 32;
    double each = bar / scale.count();
    for (int band = 0; band < scale.count(); band++) {
      sheet.fill(
          new Rectangle2D.Double(left + band * each, y + 22, each + 0.4, 10),
          colours.at(scale.share(band)),
          1);
    }
    sheet.stroke(new Rectangle2D.Double(left, y + 22, bar, 10), new Pen(ink.quiet(), 1, 0.8));
    double low = scale.edge(0);
    double high = scale.edge(scale.count());
    Ticks ticks = Ticks.within(low, high, width < 200 ? 2 : 4);
    Path2D marks = new Path2D.Double();
    for (double t : ticks.values()) {
      double tx = left + bar * (t - low) / (high - low);
      marks.append(new Line2D.Double(tx, y + 32, tx, y + 36), false);
      sheet.text(
          tx,
          y + 48,
          Digits.fixed(t, ticks.decimals()),
          Lettering.of(11, ink.text()).at(Anchor.MIDDLE));
    }
    sheet.stroke(marks, new Pen(ink.quiet(), 1, 0.8));
  }
}
