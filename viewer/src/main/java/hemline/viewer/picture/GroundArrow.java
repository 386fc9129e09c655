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

  private final Sheet sheet;
  private final int text;
  private final int paper;
  private final Pen line;

  private GroundArrow(Sheet sheet, int text, int paper) {
    this.sheet = sheet;
    this.text = text;
    this.paper = paper;
    line = new Pen(text, 1, 1.6);
  }

  /** Paints in the usual colours. */
  public static void paint(Sheet sheet, String wall, GroundMotion motion, Rectangle2D strip) {
    paint(sheet, wall, motion, strip, Ink.TEXT, Ink.PAPER);
  }

  /**
   * Paints in given colours.
   *
   * @param textRgb letters and arrow
   * @param paperRgb plate below them
   */
  public static void paint(
      Sheet sheet, String wall, GroundMotion motion, Rectangle2D strip, int textRgb, int paperRgb) {
    new GroundArrow(sheet, textRgb, paperRgb).paint(wall, motion, strip);
  }

  private void paint(String wall, GroundMotion motion, Rectangle2D strip) {
    double x = strip.getMinX() + 14;
    double y = strip.getCenterY();
    if (motion.speed() != 0) {
      String name = wall + " " + Digits.plain(Math.abs(motion.speed()), 4) + " m/s";
      double width = SHAFT + 10 + TextWidth.of(name, SIZE);
      plate(x, y, width);
      boolean right = motion.speed() > 0;
      double tip = right ? x + SHAFT : x;
      double tail = right ? x : x + SHAFT;
      sheet.stroke(new Line2D.Double(tail, y, tip + (right ? -5 : 5), y), line);
      sheet.fill(Arrows.head(tip, y, right ? 1 : -1, 0, 9), text, 1);
      sheet.text(x + SHAFT + 8, y + 4, name, Lettering.of(SIZE, text));
      x += width + 30;
    }
    if (motion.spanwiseSpeed() != 0) {
      String name =
          (motion.spanwiseSpeed() > 0 ? "towards you " : "away from you ")
              + Digits.plain(Math.abs(motion.spanwiseSpeed()), 4)
              + " m/s";
      plate(x, y, 22 + TextWidth.of(name, SIZE));
      outOfPage(x + 6, y, motion.spanwiseSpeed() > 0);
      sheet.text(x + 18, y + 4, name, Lettering.of(SIZE, text));
    }
  }

  private void plate(double x, double y, double width) {
    sheet.fill(new RoundRectangle2D.Double(x - 8, y - 9, width + 16, 18, 9, 9), paper, 0.92);
  }

  /** The tip of an arrow seen from the front, or its feathers from behind. */
  private void outOfPage(double x, double y, boolean towards) {
    sheet.stroke(new Ellipse2D.Double(x - 6, y - 6, 12, 12), line);
    if (towards) {
      sheet.fill(new Ellipse2D.Double(x - 2, y - 2, 4, 4), text, 1);
    } else {
      Path2D cross = new Path2D.Double();
      cross.append(new Line2D.Double(x - 4, y - 4, x + 4, y + 4), false);
      cross.append(new Line2D.Double(x - 4, y + 4, x + 4, y - 4), false);
      sheet.stroke(cross, line);
    }
  }
}
