package hemline.viewer.screen;

import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import java.awt.geom.Rectangle2D;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import org.jspecify.annotations.Nullable;

/**
 * A part of a board with a canvas of its own, painted anew only when what it shows changes: the
 * renderer then has little to do in the frames between.
 */
final class Patch {
  /** Canvases grow by steps, so that their pixels are seldom allocated anew. */
  private static final double STEP = 64;

  private final Canvas canvas = new Canvas();
  private @Nullable Content shown;

  private record Content(BoardView view, Palette ink, Object what) {}

  Patch() {
    canvas.setManaged(false);
    canvas.setMouseTransparent(true);
    canvas.setVisible(false);
  }

  Node node() {
    return canvas;
  }

  /** Paints anew whatever comes next. */
  void forget() {
    shown = null;
  }

  /** Shows nothing. */
  void hide() {
    shown = null;
    canvas.setVisible(false);
  }

  /**
   * Shows a painting.
   *
   * @param area that it needs, pixels of the board; what lies beyond the board is cut off
   * @param what is painted; when it equals that of the last time nothing is painted again
   */
  void show(
      BoardView view, Palette ink, Rectangle2D area, Object what, Consumer<BoardPainter> painting) {
    // whole pixels of the screen, at scales such as 1.5 too
    double left = 2 * Math.floor(0.5 * Math.max(0, area.getMinX()));
    double top = 2 * Math.floor(0.5 * Math.max(0, area.getMinY()));
    double width = Math.min(view.width() - left, stepped(area.getMaxX() - left));
    double height = Math.min(view.height() - top, stepped(area.getMaxY() - top));
    if (width <= 0 || height <= 0) {
      hide();
      return;
    }
    Content content = new Content(view, ink, what);
    if (content.equals(shown)) {
      return;
    }
    shown = content;
    canvas.setWidth(width);
    canvas.setHeight(height);
    canvas.relocate(left, top);
    canvas.setVisible(true);
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, width, height);
    pen.save();
    pen.translate(-left, -top);
    painting.accept(new BoardPainter(new FxSheet(pen, ink.paper()), ink, view));
    pen.restore();
  }

  private static double stepped(double length) {
    return STEP * Math.ceil(length / STEP);
  }
}
