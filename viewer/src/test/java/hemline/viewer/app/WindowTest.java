package hemline.viewer.app;

import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.viewer.draw.BoardLook.ColourMap;
import hemline.viewer.draw.BoardView;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import hemline.viewer.screen.SectionBoard;
import hemline.viewer.screen.StarterPanel;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.stage.Stage;
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
  private final ScreenPictures screen = new ScreenPictures();
  private Workbench bench;
  private HemlineWindow window;

  @Override
  public void start(Stage stage) {
    Examples examples = Examples.of(Path.of("../profiles"));
    bench = new Workbench(examples.first(), new FamilySolver(), Platform::runLater);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1));
    window = new HemlineWindow(bench, examples);
    stage.setScene(window.createScene());
    ScreenPictures.fill(stage);
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

  private void picture(String name) {
    screen.picture(name);
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
    clickOn("#set-as-B");
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
    interact(() -> window.benchScreen().begin(StarterPanel::pockets));
    picture("6-starter");
  }
}
