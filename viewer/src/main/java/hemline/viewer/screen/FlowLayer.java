package hemline.viewer.screen;

import hemline.viewer.draw.BoardLook;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.Palette;
import hemline.viewer.model.Shown;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;

/**
 * The flow as an image. Lines are traced and pixels painted in the background, the newest wish
 * only; the screen's thread but puts the image where it belongs. It is painted somewhat larger than
 * the board, so that a hand that moves the paper finds it there.
 */
final class FlowLayer {
  /** Strip painted beyond each side of the board, pixels. */
  private static final double MARGIN = 120;

  /** The strip is painted anew when less than this is left of it. */
  private static final double LEAST_MARGIN = 40;

  /** Images in use: on show, still read by the one who shows, being painted. */
  private static final int IMAGES = 3;

  private final ImageView image = new ImageView();
  private final Rectangle clip = new Rectangle();
  private final Pane node = new Pane(image);
  private final ExecutorService tracer = background("hemline-trace");
  private final ExecutorService painter = background("hemline-paint");
  private final AtomicReference<@Nullable Wanted> wanted = new AtomicReference<>();
  private final AtomicReference<@Nullable Job> job = new AtomicReference<>();
  private final Runnable ready;
  private final Deque<PixelImage> spare = new ArrayDeque<>();
  private @Nullable FlowPicture picture;
  private @Nullable BoardView view;
  private @Nullable Job asked;
  private @Nullable Job shown;

  private record Wanted(Shown shown, BoardLook look) {}

  /** What an image shows; records compare flows by identity, since they are large. */
  private record Job(
      FlowPicture picture,
      List<FlowPicture> beside,
      BoardView view,
      BoardLook look,
      Palette ink,
      double density) {

    /** True when the image of this job serves another one too, but for a shift. */
    boolean serves(Job other, BoardView part) {
      return picture == other.picture
          && beside.equals(other.beside)
          && look.equals(other.look)
          && ink.equals(other.ink)
          && density == other.density
          && view.covers(part);
    }
  }

  /**
   * An empty layer.
   *
   * @param ready called on the screen's thread when a flow can be painted
   */
  FlowLayer(Runnable ready) {
    this.ready = ready;
    node.setMouseTransparent(true);
    node.setClip(clip);
    image.setManaged(false);
    image.setVisible(false);
  }

  private static ExecutorService background(String name) {
    return Executors.newSingleThreadExecutor(
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  Node node() {
    return node;
  }

  /** How much the flow is seen, 0 to 1. */
  void fade(double opacity) {
    image.setOpacity(opacity);
  }

  void resize(double width, double height) {
    node.resize(width, height);
    clip.setWidth(width);
    clip.setHeight(height);
  }

  @Nullable FlowPicture picture() {
    return picture;
  }

  /** Traces a flow and shows it when done; null clears the layer at once. */
  void show(@Nullable Shown flow, BoardLook look) {
    if (flow == null) {
      wanted.set(null);
      job.set(null);
      picture = null;
      asked = null;
      image.setVisible(false);
      ready.run();
      return;
    }
    wanted.set(new Wanted(flow, look));
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
   * Shows the flow as seen in a view: at once with the pixels that are there, then with sharp ones.
   *
   * @param beside flows beside it, which share its scale
   */
  void paint(BoardView seen, BoardLook look, Palette ink, List<FlowPicture> beside) {
    view = seen;
    place();
    FlowPicture now = picture;
    if (now == null) {
      return;
    }
    Scene scene = node.getScene();
    double density =
        scene == null || scene.getWindow() == null ? 1 : scene.getWindow().getOutputScaleX();
    Job next = new Job(now, beside, seen.widened(MARGIN), look, ink, density);
    if (asked == null || !asked.serves(next, seen.widened(LEAST_MARGIN))) {
      asked = next;
      job.set(next);
      painter.execute(this::paintNewest);
    }
  }

  private void paintNewest() {
    Job next = job.getAndSet(null);
    if (next != null) {
      BoardView all = next.view();
      PixelImage pixels =
          cleared(
              (int) Math.ceil(all.width() * next.density()),
              (int) Math.ceil(all.height() * next.density()));
      next.picture()
          .paint(pixels.canvas(), next.density(), all, next.look(), next.ink(), next.beside());
      Platform.runLater(() -> put(next, pixels));
    }
  }

  private PixelImage cleared(int width, int height) {
    synchronized (spare) {
      // one image may still be read for the last frame
      while (spare.size() >= IMAGES - 1) {
        PixelImage old = spare.removeFirst();
        if (old.fits(width, height)) {
          old.clear();
          return old;
        }
      }
    }
    return new PixelImage(width, height);
  }

  private void put(Job done, PixelImage pixels) {
    synchronized (spare) {
      spare.addLast(pixels);
    }
    if (picture == null) {
      return;
    }
    shown = done;
    image.setImage(pixels.show());
    image.setVisible(true);
    place();
  }

  /** Puts the image where the view wants it, on whole pixels of the screen at its own scale. */
  private void place() {
    Job on = shown;
    BoardView to = view;
    if (on == null || to == null) {
      return;
    }
    BoardView from = on.view();
    double grown = to.scale() / from.scale();
    double x = (from.left() - to.left()) * to.scale();
    double y = to.py(from.y(0));
    if (grown == 1) {
      x = Math.rint(x * on.density()) / on.density();
      y = Math.rint(y * on.density()) / on.density();
    }
    image.setSmooth(grown != 1);
    image.setX(x);
    image.setY(y);
    image.setFitWidth(Math.ceil(from.width() * on.density()) / on.density() * grown);
    image.setFitHeight(Math.ceil(from.height() * on.density()) / on.density() * grown);
  }
}
