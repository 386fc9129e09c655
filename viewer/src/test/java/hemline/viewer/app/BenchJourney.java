package hemline.viewer.app;

import hemline.shared.profile.Starter;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.viewer.draw.BoardView;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import hemline.viewer.screen.SectionBoard;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeEach;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** A flat lip on the bench, with the real controls and the real solver on coarse grids. */
abstract class BenchJourney extends ApplicationTest {
  /** Answers what the window asks for files. */
  final SetAnswer ask = new SetAnswer();

  Workbench bench;
  HemlineWindow window;

  @Override
  public void start(Stage stage) {
    bench =
        new Workbench(
            new Starter.Flat(8e-3, 10e-3).drawing(), new FamilySolver(), Platform::runLater);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1));
    window = new HemlineWindow(bench, Examples.of(Path.of("../profiles")), ask);
    stage.setScene(window.createScene());
    stage.show();
  }

  @BeforeEach
  void settle() {
    WaitForAsyncUtils.waitForFxEvents();
  }

  final void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(40, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  final boolean solvedInFull() {
    Shown shown = bench.shown().get();
    return shown != null && !shown.preview() && !bench.running().get() && !bench.stale().get();
  }

  /** Place on the screen of a place in the drawing, m. */
  final Point2D pixel(double x, double y) {
    SectionBoard board = window.benchScreen().board();
    BoardView view = board.view();
    return board.localToScreen(view.px(x), view.py(y));
  }
}
