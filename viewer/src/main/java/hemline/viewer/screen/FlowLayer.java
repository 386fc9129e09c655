package hemline.viewer.screen;

import hemline.viewer.draw.BoardLook;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.MapRaster;
import hemline.viewer.draw.Palette;
import hemline.viewer.model.Shown;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import org.jspecify.annotations.Nullable;

/** A canvas with a flow; lines are traced in the background, the newest flow only. */
final class FlowLayer {
  private final Canvas canvas = new Canvas();
  private final ExecutorService tracer =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "hemline-trace");
            thread.setDaemon(true);
            return thread;
          });
  private final AtomicReference<@Nullable Wanted> wanted = new AtomicReference<>();
  private final Runnable ready;
  private final MapRaster raster = new MapRaster();
  private @Nullable FlowPicture picture;
  private @Nullable BoardView painted;

  private record Wanted(Shown shown, BoardLook look) {}

  /**
   * An empty layer.
   *
   * @param ready called on the screen's thread when a flow can be painted
   */
  FlowLayer(Runnable ready) {
    this.ready = ready;
    canvas.setMouseTransparent(true);
  }

  Canvas canvas() {
    return canvas;
  }

  @Nullable FlowPicture picture() {
    return picture;
  }

  /** Traces a flow and shows it when done; null clears the layer at once. */
  void show(@Nullable Shown shown, BoardLook look) {
    if (shown == null) {
      wanted.set(null);
      picture = null;
      ready.run();
      return;
    }
    wanted.set(new Wanted(shown, look));
    tracer.execute(
        () -> {
          Wanted next = wanted.getAndSet(null);
          if (next != null) {
            FlowPicture traced = new FlowPicture(next.shown(), next.look());
            Platform.runLater(
                () -> {
                  picture = traced;
                  ready.run();
                });
          }
        });
  }

  /**
   * Paints the flow as seen in a view; what was shifted is put right.
   *
   * @param beside the flow beside it, which shares its scale; null for none
   */
  void paint(BoardView view, BoardLook look, Palette ink, @Nullable FlowPicture beside) {
    painted = view;
    canvas.setTranslateX(0);
    canvas.setTranslateY(0);
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    FlowPicture now = picture;
    if (now != null) {
      Scene scene = canvas.getScene();
      double density =
          scene == null || scene.getWindow() == null ? 1 : scene.getWindow().getOutputScaleX();
      now.paint(pen, raster, density, view, look, ink, beside);
    }
  }

  /**
   * Shows another view of the same scale by shifting what is painted.
   *
   * @return false when only painting anew can show it
   */
  boolean shift(BoardView view) {
    BoardView from = painted;
    if (from == null || from.scale() != view.scale()) {
      return false;
    }
    double dx = (from.left() - view.left()) * view.scale();
    double dy = (view.bottom() - from.bottom()) * view.scale();
    canvas.setTranslateX(dx);
    canvas.setTranslateY(dy);
    return true;
  }
}
