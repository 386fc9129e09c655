package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.viewer.draw.BoardLook.ColourMap;
import hemline.viewer.draw.BoardView;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import hemline.viewer.screen.SectionBoard;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.geometry.Rectangle2D;
import javafx.scene.image.WritableImage;
import javafx.scene.robot.Robot;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/**
 * The bench in a real window as large as the screen; what the screen shows is kept as pictures in
 * {@code viewer/target/screenshots}.
 */
@Tag("window")
final class WindowTest extends ApplicationTest {
  private static final Path PICTURES = Path.of("target", "screenshots");
  private static final int FEWEST_COLOURS = 40;
  private Workbench bench;
  private HemlineWindow window;
  private String size = "";

  @Override
  public void start(Stage stage) {
    Examples examples = Examples.of(Path.of("../profiles"));
    bench = new Workbench(examples.first(), new FamilySolver(), Platform::runLater);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1));
    window = new HemlineWindow(bench, examples);
    stage.setScene(window.createScene());
    Rectangle2D screen = Screen.getPrimary().getBounds();
    double scale = Screen.getPrimary().getOutputScaleX();
    size = Math.round(screen.getWidth() * scale) + "x" + Math.round(screen.getHeight() * scale);
    stage.setX(0);
    stage.setY(0);
    stage.setWidth(screen.getWidth());
    stage.setHeight(screen.getHeight());
    stage.show();
  }

  private void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(120, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private boolean solvedInFull() {
    Shown shown = bench.shown().get();
    return shown != null && !shown.preview() && !bench.running().get() && !bench.stale().get();
  }

  private Point2D pixel(double x, double y) {
    SectionBoard board = window.benchScreen().board();
    BoardView view = board.view();
    return board.localToScreen(view.px(x), view.py(y));
  }

  /**
   * Takes a picture of the screen; one that is nearly of one colour shows that nothing is drawn.
   */
  private void picture(String name) {
    WaitForAsyncUtils.waitForFxEvents(8);
    WaitForAsyncUtils.sleep(1500, TimeUnit.MILLISECONDS);
    interact(
        () -> {
          WritableImage seen =
              new Robot().getScreenCapture(null, Screen.getPrimary().getBounds(), false);
          int w = (int) seen.getWidth();
          int h = (int) seen.getHeight();
          BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
          Set<Integer> colours = new HashSet<>();
          for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
              int rgb = seen.getPixelReader().getArgb(x, y);
              colours.add(rgb);
              image.setRGB(x, y, rgb);
            }
          }
          assertThat(colours).as("colours of %s", name).hasSizeGreaterThan(FEWEST_COLOURS);
          try {
            Files.createDirectories(PICTURES);
            ImageIO.write(image, "png", PICTURES.resolve(name + "-" + size + ".png").toFile());
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  @Test
  void theBenchIsDrawnOnARealScreen() throws Exception {
    picture("1-start");
    clickOn("#run");
    until(this::solvedInFull);
    until(() -> window.benchScreen().board().picture().get() != null);
    moveTo(pixel(8e-3, 3e-3));
    picture("2-streamlines");
    interact(() -> window.setDark(true));
    picture("3-dark");
    interact(() -> window.setDark(false));
    clickOn("#keep");
    WaitForAsyncUtils.waitForFxEvents(8);
    drag(pixel(1e-3, 0)).moveTo(pixel(1.5e-3, -0.2e-3)).moveTo(pixel(2e-3, -0.5e-3));
    until(() -> bench.shown().get().preview() && !bench.stale().get());
    picture("4-drag-beside-kept");
    drop();
    until(this::solvedInFull);
    interact(
        () -> {
          bench.dropKept();
          SectionBoard board = window.benchScreen().board();
          board.look().set(board.look().get().withMap(ColourMap.SPEED).withTracers(true));
          bench.set(bench.setting().get().withGroundSpeed(2).withSpanwiseSpeed(1));
          window.setDark(true);
        });
    until(this::solvedInFull);
    picture("5-speed-tracers-dark");
    interact(() -> window.setDark(false));
    clickOn("#board");
    interact(() -> window.benchScreen().starters().pockets());
    picture("6-starter");
  }
}
