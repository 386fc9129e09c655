package hemline.viewer.screen;

import hemline.viewer.draw.BoardLook;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.model.Shown;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Platform;
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
  private @Nullable FlowPicture picture;

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

  void paint(BoardView view, BoardLook look, Palette ink) {
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    FlowPicture now = picture;
    if (now != null) {
      now.paint(new FxSheet(pen, ink.paper()), view, look, ink);
    }
  }
}
