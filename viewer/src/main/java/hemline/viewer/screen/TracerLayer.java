package hemline.viewer.screen;

import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.Tracers;
import java.util.function.Supplier;
import javafx.animation.AnimationTimer;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import org.jspecify.annotations.Nullable;

/** A canvas with particles that drift with the air. */
final class TracerLayer {
  /** A longer break is not made up for, s. */
  private static final double LONGEST_STEP = 0.05;

  private final Canvas canvas = new Canvas();
  private final Supplier<@Nullable BoardView> view;
  private final Supplier<Palette> ink;
  private @Nullable FlowPicture flow;
  private @Nullable Tracers tracers;
  private long last;
  private final AnimationTimer timer =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          double seconds = last == 0 ? 0 : 1e-9 * (now - last);
          last = now;
          paint(Math.min(LONGEST_STEP, seconds));
        }
      };

  TracerLayer(Supplier<@Nullable BoardView> view, Supplier<Palette> ink) {
    this.view = view;
    this.ink = ink;
    canvas.setMouseTransparent(true);
  }

  Canvas canvas() {
    return canvas;
  }

  /** Drifts with a flow, or rests for null. */
  void follow(@Nullable FlowPicture other) {
    if (other == flow) {
      return;
    }
    flow = other;
    tracers = other == null ? null : new Tracers(other.shown(), other.through());
    last = 0;
    if (other == null) {
      timer.stop();
      canvas.getGraphicsContext2D().clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    } else {
      timer.start();
    }
  }

  private void paint(double seconds) {
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    BoardView at = view.get();
    Tracers moving = tracers;
    FlowPicture of = flow;
    if (at == null || moving == null || of == null) {
      return;
    }
    moving.step(seconds);
    for (int k = 0; k < moving.count(); k++) {
      double x = at.px(of.originX() + moving.x(k));
      double y = at.py(of.originY() + moving.y(k));
      double r = 1.6 + 1.4 * moving.speed(k);
      pen.setFill(FxSheet.colour(ink.get().paper(), 0.9 * moving.opacity(k)));
      pen.fillOval(x - r - 0.8, y - r - 0.8, 2 * r + 1.6, 2 * r + 1.6);
      pen.setFill(FxSheet.colour(ink.get().lines().leak(), moving.opacity(k)));
      pen.fillOval(x - r, y - r, 2 * r, 2 * r);
    }
  }
}
