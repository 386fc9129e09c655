package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.model.Workbench;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** Every page in a real window, light and dark, kept as pictures. */
@Tag("window")
final class PagesWindowTest extends ApplicationTest {
  @TempDir static Path dir;
  private final ScreenPictures screen = new ScreenPictures();
  private Workbench bench;
  private Project project;
  private HemlineWindow window;

  private static final FileAsk NO_ANSWER =
      new FileAsk() {
        @Override
        public @Nullable Path lip(Path folder) {
          return null;
        }

        @Override
        public @Nullable Path target(Path suggestion, String kind, String ending) {
          return dir.resolve("picture" + ending);
        }

        @Override
        public @Nullable Path folder(Path suggestion) {
          return null;
        }

        @Override
        public @Nullable Path machine(Path folder) {
          return null;
        }
      };

  @Override
  public void start(Stage stage) {
    FamilySolver solver = new FamilySolver();
    Examples examples = Examples.of(Path.of("../profiles"));
    bench = new Workbench(examples.first(), solver, Platform::runLater);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 2));
    RecentPlaces recent = new RecentPlaces(dir.resolve("settings/recent.json"));
    project =
        new Project(
            bench,
            examples,
            solver,
            dir,
            recent,
            RescueStore::new,
            InventedStudies.LEAKS,
            () -> "build");
    window = new HemlineWindow(project, examples, NO_ANSWER);
    stage.setScene(window.createScene());
    window.pages().lookAfter(stage);
    ScreenPictures.fill(stage);
    stage.show();
  }

  private void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(240, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void put(String field, String text) {
    interact(() -> lookup("#" + field).<TextField>query().setText(text));
  }

  private void both(String name) {
    screen.picture(name);
    interact(() -> window.setDark(true));
    screen.picture(name + "-dark");
    interact(() -> window.setDark(false));
  }

  private void study() throws Exception {
    interact(() -> lookup("#study-mesh").<ComboBox<MeshLevel>>query().setValue(MeshLevel.COARSE));
    clickOn("#study-start");
    until(
        () -> !project.studies().work().running().get() && project.studies().shown().get() != null);
  }

  @Test
  void everyPageIsDrawnOnARealScreen() throws Exception {
    interact(() -> bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), 0.2e-3, 0)));
    interact(() -> window.benchScreen().open(project.bench().drawing().get()));
    assertThat(lookup("#strip-text").queryLabeled().getText()).contains("not saved");
    clickOn("#board").push(KeyCode.PERIOD);
    both("11-strip-and-corner");
    clickOn("#strip-go-on-editing");
    clickOn("#tab-studies");
    until(() -> lookup("#study-lip").<ComboBox<?>>query().getValue() != null);
    both("12-studies-empty");
    put("study-points", "3");
    study();
    both("13-gap-curve");
    clickOn("#over-suction");
    put("study-points", "3");
    study();
    both("14-suction-curve");
    clickOn("#over-ground");
    put("study-points", "3");
    study();
    screen.picture("15-ground-curve");
    clickOn("#ranking");
    put("study-points", "2");
    study();
    both("16-ranking");
    clickOn("#tab-improve");
    until(() -> lookup("#improve-start-lip").<ComboBox<?>>query().getValue() != null);
    screen.picture("22-improve-empty");
    interact(() -> lookup("#improve-family").<ComboBox<String>>query().setValue("flat"));
    put("improve-evaluations", "2");
    clickOn("#improve-start");
    until(
        () -> {
          var found = window.pages().searches().state().get();
          return found != null && found.found() != null;
        });
    both("22-improve");
    clickOn("#tab-machine");
    until(() -> lookup("#try-knife-fin").tryQuery().isPresent());
    until(() -> lookup("#value-fan-speed").tryQuery().isPresent());
    both("17-machine");
    clickOn("#machine-start");
    until(() -> window.pages().machines().shown().get() != null);
    both("17-machine-balanced");
    clickOn("#tab-rig");
    both("21-rig");
    clickOn("#rig-start");
    assertThat(lookup("#rig-fault").queryLabeled().getText()).contains("Choose a rig file");
    clickOn("#tab-guide");
    both("18-guide");
    clickOn("#tab-bench");
    clickOn("#menu-file");
    screen.picture("19-file-menu");
    push(KeyCode.ESCAPE);
    clickOn("#menu-lips");
    screen.picture("20-lips-menu");
  }
}
