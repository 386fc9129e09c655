package hemline.viewer.draw;

import hemline.viewer.model.Placement;
import hemline.viewer.picture.Projection;
import hemline.viewer.picture.SectionWindow;

/**
 * Part of the drawing that the board shows, the same scale both ways.
 *
 * @param left x at the board's left side, in the frame of the drawing, m
 * @param bottom y at the board's lower side, m
 * @param scale pixels per metre
 * @param width of the board, pixels
 * @param height of the board, pixels
 */
public record BoardView(double left, double bottom, double scale, double width, double height) {
  private static final double SMALLEST_SCALE = 500;
  private static final double LARGEST_SCALE = 5e6;

  /** View of a lip with its surroundings at a gap, m. */
  public static BoardView around(Placement lip, double gap, double width, double height) {
    double lipWidth = lip.right() - lip.left();
    double from = lip.left() - Math.max(5 * gap, 0.45 * lipWidth);
    double to = lip.right() + Math.max(7 * gap, 0.7 * lipWidth);
    double low = lip.low() - gap;
    double high = lip.high() + 0.15 * (lip.high() - lip.low());
    double below = 34;
    double scale = limited(Math.min(width / (to - from), (height - below - 24) / (high - low)));
    double spare = width / scale - (to - from);
    return new BoardView(from - 0.5 * spare, low - below / scale, scale, width, height);
  }

  private static double limited(double scale) {
    return Math.max(SMALLEST_SCALE, Math.min(LARGEST_SCALE, scale));
  }

  /** The same place on a board of another size; the lower left corner stays. */
  public BoardView resized(double newWidth, double newHeight) {
    return new BoardView(left, bottom, scale, newWidth, newHeight);
  }

  /** The same scale with a strip more on all four sides, pixels. */
  public BoardView widened(double margin) {
    return new BoardView(
        left - margin / scale,
        bottom - margin / scale,
        scale,
        width + 2 * margin,
        height + 2 * margin);
  }

  /** True when this view, at the same scale, shows all of another one. */
  public boolean covers(BoardView other) {
    double dust = 0.01 / scale;
    return scale == other.scale
        && left <= other.left + dust
        && bottom <= other.bottom + dust
        && x(width) >= other.x(other.width) - dust
        && y(0) >= other.y(0) - dust;
  }

  /** Nearer or farther by a factor, with the point under a pixel kept there. */
  public BoardView zoomed(double factor, double px, double py) {
    double s = limited(scale * factor);
    return new BoardView(x(px) - px / s, y(py) - (height - py) / s, s, width, height);
  }

  /** Moved by pixels: what was at a pixel is then that far right and down. */
  public BoardView panned(double right, double down) {
    return new BoardView(left - right / scale, bottom + down / scale, scale, width, height);
  }

  /** x in the drawing, m, of a pixel. */
  public double x(double px) {
    return left + px / scale;
  }

  /** y in the drawing, m, of a pixel. */
  public double y(double py) {
    return bottom + (height - py) / scale;
  }

  /** Pixel of an x in the drawing. */
  public double px(double x) {
    return (x - left) * scale;
  }

  /** Pixel of a y in the drawing. */
  public double py(double y) {
    return height - (y - bottom) * scale;
  }

  /**
   * Projection for things in another frame.
   *
   * @param dx x of that frame's origin in the drawing, m
   * @param dy y of that frame's origin in the drawing, m
   */
  public Projection projection(double dx, double dy) {
    SectionWindow window =
        new SectionWindow(
            left - dx, left - dx + width / scale, bottom - dy, bottom - dy + height / scale);
    return new Projection(window, 0, height, scale);
  }
}
