package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.viewer.edit.Starter;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** What a user does at the bench, with the real controls and the real solver on coarse grids. */
final class BenchJourneyTest extends ApplicationTest {
  private Workbench bench;
  private HemlineWindow window;

  @Override
  public void start(Stage stage) {
    bench =
        new Workbench(
            new Starter.Flat(8e-3, 10e-3).drawing(), new FamilySolver(), Platform::runLater);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1));
    window = new HemlineWindow(bench, Examples.of(Path.of("../profiles")));
    stage.setScene(window.createScene());
    stage.show();
  }

  @BeforeEach
  void settle() {
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(40, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private boolean solvedInFull() {
    Shown shown = bench.shown().get();
    return shown != null && !shown.preview() && !bench.running().get() && !bench.stale().get();
  }

  @Test
  void oneClickLeadsToStreamlines() throws Exception {
    clickOn("#run");
    until(this::solvedInFull);
    assertThat(lookup("#figure-leakFlow").queryLabeled().getText()).contains("\u00b1");
    assertThat(window.benchScreen().board().picture().get()).isNotNull();
  }
}
