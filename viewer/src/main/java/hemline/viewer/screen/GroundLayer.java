package hemline.viewer.screen;

import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.Tracers;
import hemline.viewer.model.Setting;
import javafx.animation.AnimationTimer;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import org.jspecify.annotations.Nullable;

/** A canvas with the ground, whose hatch moves as the ground does, slowed down like the tracers. */
final class GroundLayer {
  private static final double LONGEST_STEP = 0.05;

  /** Half the thickness of the ground line and more, pixels. */
  private static final double RIM = 3;

  private final Canvas canvas = new Canvas();
  private @Nullable Ground ground;
  private double travel;
  private long last;
  private final AnimationTimer timer =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          move(last == 0 ? 0 : Math.min(LONGEST_STEP, 1e-9 * (now - last)));
          last = now;
        }
      };

  /**
   * What is painted.
   *
   * @param height of the ground in the drawing, m
   * @param width of the lip, m
   */
  private record Ground(
      BoardView view, Palette ink, double height, double width, Setting setting) {}

  GroundLayer() {
    canvas.setMouseTransparent(true);
  }

  Canvas canvas() {
    return canvas;
  }

  /** Shows the ground at a height of the drawing, m, under a lip of a width, m. */
  void show(BoardView view, Palette ink, double height, double width, Setting setting) {
    ground = new Ground(view, ink, height, width, setting);
    if (setting.groundSpeed() == 0) {
      timer.stop();
      last = 0;
    } else {
      timer.start();
    }
    paint();
  }

  private void move(double seconds) {
    Ground now = ground;
    if (now != null) {
      double slowing = Tracers.slowing(now.setting(), now.width());
      travel += seconds * slowing * now.setting().groundSpeed() * now.view().scale();
      paint();
    }
  }

  private void paint() {
    Ground now = ground;
    if (now == null) {
      return;
    }
    // only as high as the ground is seen, since every frame costs by its pixels
    double top = Math.floor(Math.max(0, now.view().py(now.height()) - RIM));
    double seen = Math.max(1, now.view().height() - top);
    canvas.setWidth(now.view().width());
    canvas.setHeight(seen);
    canvas.setLayoutY(top);
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), seen);
    pen.save();
    pen.translate(0, -top);
    BoardPainter painter =
        new BoardPainter(new FxSheet(pen, now.ink().paper()), now.ink(), now.view());
    painter.ground(now.height(), travel);
    painter.motion(now.height(), now.setting());
    pen.restore();
  }
}
