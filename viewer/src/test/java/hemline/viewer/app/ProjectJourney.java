package hemline.viewer.app;

import hemline.shared.profile.Starter;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.control.TextField;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** A window on a project in an empty folder; the solver on coarse grids. */
abstract class ProjectJourney extends ApplicationTest {
  @TempDir static Path shared;

  Path dir = shared;
  final SetAnswer ask = new SetAnswer();
  Workbench bench;
  Project project;
  HemlineWindow window;
  Stage stage;

  @Override
  public void start(Stage first) throws IOException {
    stage = first;
    dir = Files.createTempDirectory(shared, "project");
    open(RescueStore::new);
  }

  final void open(java.util.function.Function<Path, RescueStore> rescues) {
    FamilySolver solver = new FamilySolver();
    bench = new Workbench(new Starter.Flat(4e-3, 6e-3).drawing(), solver, Platform::runLater);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 2));
    Examples examples = Examples.of(Path.of("../profiles"));
    RecentPlaces recent = new RecentPlaces(dir.resolve("settings/recent.json"));
    project =
        new Project(
            bench, examples, solver, dir, recent, rescues, ResultStore.none(), () -> "this build");
    window = new HemlineWindow(project, examples, ask);
    stage.setScene(window.createScene());
    window.pages().lookAfter(stage);
    stage.show();
  }

  @BeforeEach
  void settle() {
    WaitForAsyncUtils.waitForFxEvents();
  }

  final void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(60, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  final void put(String field, String text) {
    interact(() -> lookup("#" + field).<TextField>query().setText(text));
  }
}
