package hemline.viewer.picture;

import hemline.shared.section.GroundMotion;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;

/** Marks on the strip of a wall that moves along the leak or along the seal. */
public final class GroundArrow {
  private static final double SIZE = 11.5;
  private static final double SHAFT = 34;
  private static final Pen LINE = new Pen(Ink.TEXT, 1, 1.6);

  private GroundArrow() {}

  public static void paint(Sheet sheet, String wall, GroundMotion motion, Rectangle2D strip) {
    double x = strip.getMinX() + 14;
    double y = strip.getCenterY();
    if (motion.speed() != 0) {
      String text = wall + " " + Digits.plain(Math.abs(motion.speed()), 4) + " m/s";
      double width = SHAFT + 10 + TextWidth.of(text, SIZE);
      plate(sheet, x, y, width);
      boolean right = motion.speed() > 0;
      double tip = right ? x + SHAFT : x;
      double tail = right ? x : x + SHAFT;
      sheet.stroke(new Line2D.Double(tail, y, tip + (right ? -5 : 5), y), LINE);
      sheet.fill(Arrows.head(tip, y, right ? 1 : -1, 0, 9), Ink.TEXT, 1);
      sheet.text(x + SHAFT + 8, y + 4, text, Lettering.of(SIZE, Ink.TEXT));
      x += width + 30;
    }
    if (motion.spanwiseSpeed() != 0) {
      String text =
          (motion.spanwiseSpeed() > 0 ? "towards you " : "away from you ")
              + Digits.plain(Math.abs(motion.spanwiseSpeed()), 4)
              + " m/s";
      plate(sheet, x, y, 22 + TextWidth.of(text, SIZE));
      outOfPage(sheet, x + 6, y, motion.spanwiseSpeed() > 0);
      sheet.text(x + 18, y + 4, text, Lettering.of(SIZE, Ink.TEXT));
    }
  }

  private static void plate(Sheet sheet, double x, double y, double width) {
    sheet.fill(new RoundRectangle2D.Double(x - 8, y - 9, width + 16, 18, 9, 9), Ink.PAPER, 0.92);
  }

  /** The tip of an arrow seen from the front, or its feathers from behind. */
  private static void outOfPage(Sheet sheet, double x, double y, boolean towards) {
    sheet.stroke(new Ellipse2D.Double(x - 6, y - 6, 12, 12), LINE);
    if (towards) {
      sheet.fill(new Ellipse2D.Double(x - 2, y - 2, 4, 4), Ink.TEXT, 1);
    } else {
      Path2D cross = new Path2D.Double();
      cross.append(new Line2D.Double(x - 4, y - 4, x + 4, y + 4), false);
      cross.append(new Line2D.Double(x - 4, y + 4, x + 4, y - 4), false);
      sheet.stroke(cross, LINE);
    }
  }
}
