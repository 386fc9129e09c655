package hemline.viewer.picture;

import java.awt.Shape;
import java.awt.geom.Rectangle2D;

/** Something to paint on; x to the right, y downwards, in sheet units (1/96 inch at full size). */
public interface Sheet {

  /** Fills a shape by the even-odd rule. */
  void fill(Shape shape, int rgb, double opacity);

  /** Draws a line along a shape. */
  void stroke(Shape shape, Pen pen);

  /** Writes one line of text; an underscore lowers the small letters after it when asked for. */
  void text(double x, double y, String text, Lettering lettering);

  /** Paints only inside the shape until {@link #unclip}. Clips do not nest. */
  void clip(Shape shape);

  void unclip();

  /** Tells what stands at a place, for a reader who points at it. */
  default void mark(Rectangle2D where, String words) {}

  /**
   * How a line is drawn; ends and corners are round.
   *
   * @param rgb colour
   * @param opacity 0 to 1
   * @param width sheet units
   * @param dash lengths of dash and space in turn; empty for a full line
   */
  record Pen(int rgb, double opacity, double width, double... dash) {}

  /** Side of the text that stands at the given point. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /**
   * How text is set.
   *
   * @param size height of the letters' box, sheet units
   * @param bold true for heavy letters
   * @param anchor which part of the text stands at the point
   * @param rgb colour
   * @param angle turned counter-clockwise about the point, degrees
   * @param halo true for a light rim that lifts the text off what lies below
   * @param subscripts true when an underscore lowers the small letters after it
   */
  record Lettering(
      double size,
      boolean bold,
      Anchor anchor,
      int rgb,
      double angle,
      boolean halo,
      boolean subscripts) {

    public static Lettering of(double size, int rgb) {
      return new Lettering(size, false, Anchor.START, rgb, 0, false, false);
    }

    public Lettering heavy() {
      return new Lettering(size, true, anchor, rgb, angle, halo, subscripts);
    }

    public Lettering at(Anchor newAnchor) {
      return new Lettering(size, bold, newAnchor, rgb, angle, halo, subscripts);
    }

    public Lettering turned(double newAngle) {
      return new Lettering(size, bold, anchor, rgb, newAngle, halo, subscripts);
    }

    public Lettering lifted() {
      return new Lettering(size, bold, anchor, rgb, angle, true, subscripts);
    }

    public Lettering symbols() {
      return new Lettering(size, bold, anchor, rgb, angle, halo, true);
    }
  }
}
