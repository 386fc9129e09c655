package hemline.viewer.screen;

import hemline.shared.section.GroundMotion;
import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.Tracers;
import hemline.viewer.model.Setting;
import java.awt.geom.Rectangle2D;
import javafx.animation.AnimationTimer;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;

/**
 * The ground: a canvas with its upper part, whose hatch moves as the ground does, slowed down like
 * the tracers, and below it plain colour, which costs the renderer far less.
 */
final class GroundLayer {
  private static final double LONGEST_STEP = 0.05;

  /** Half the thickness of the ground line and more, pixels. */
  private static final double RIM = 3;

  private final Canvas canvas = new Canvas();
  private final Rectangle below = new Rectangle();
  private final Pane node = new Pane(below, canvas);
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
   * @param pace of the hatch, pixels a second
   */
  private record Ground(
      BoardView view, Palette ink, double height, GroundMotion motion, double pace) {}

  GroundLayer() {
    node.setMouseTransparent(true);
    canvas.setManaged(false);
    below.setManaged(false);
    below.setSmooth(false);
  }

  Node node() {
    return node;
  }

  /** Shows the ground at a height of the drawing, m, under a lip of a width, m. */
  void show(BoardView view, Palette ink, double height, double width, Setting setting) {
    GroundMotion motion = setting.ground();
    double pace =
        motion.speed() == 0
            ? 0
            : motion.speed()
                * Tracers.slowing(setting.gap(), setting.suction(), motion, setting.air(), width);
    Ground next = new Ground(view, ink, height, motion, pace * view.scale());
    if (next.equals(ground)) {
      return;
    }
    ground = next;
    if (next.pace() == 0) {
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
      travel += seconds * now.pace();
      paint();
    }
  }

  private void paint() {
    Ground now = ground;
    if (now == null) {
      return;
    }
    BoardView view = now.view();
    double top = Math.floor(Math.max(0, view.py(now.height()) - RIM));
    double bottom = top + RIM + BoardPainter.GROUND;
    if (!now.motion().equals(GroundMotion.STILL)) {
      // the arrows stay in view where the ground does not
      Rectangle2D arrows = BoardPainter.motionStrip(view, now.height());
      top = Math.floor(Math.min(top, arrows.getMinY()));
      bottom = Math.max(bottom, arrows.getMaxY());
    }
    double seen = Math.min(bottom, view.height()) - top;
    node.setVisible(seen > 0);
    if (seen <= 0) {
      return;
    }
    canvas.setWidth(view.width());
    canvas.setHeight(seen);
    canvas.setLayoutY(top);
    below.setFill(FxSheet.colour(now.ink().wall().fill(), 1));
    below.setY(top + seen);
    below.setWidth(view.width());
    below.setHeight(view.height() - below.getY());
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), seen);
    pen.save();
    pen.translate(0, -top);
    BoardPainter painter = new BoardPainter(new FxSheet(pen, now.ink().paper()), now.ink(), view);
    painter.ground(now.height(), travel);
    painter.motion(now.height(), now.motion());
    pen.restore();
  }
}
