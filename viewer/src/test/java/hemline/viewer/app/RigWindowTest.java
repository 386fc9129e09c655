package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.model.RigDesk;
import hemline.viewer.model.Shelf;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.screen.RigScreen;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** The page of a rig in a window of its own, with two points of the invented rig. */
@Tag("window")
final class RigWindowTest extends ApplicationTest {
  @TempDir static Path dir;
  private final ScreenPictures pictures = new ScreenPictures();
  private RigDesk desk;

  @Override
  public void start(Stage stage) throws Exception {
    List<String> lines = Files.readAllLines(Path.of("../profiles/rigs/silo-wall-crawler.csv"));
    Path rig = dir.resolve("rig.csv");
    Files.write(
        rig, lines.stream().filter(l -> !l.startsWith("lip,") || l.startsWith("lip,2,")).toList());
    desk = new RigDesk(new FamilySolver(), Platform::runLater, Clock.systemUTC());
    Workbench bench =
        new Workbench(
            LipFile.read(Path.of("../profiles/plain-flat-8.json")),
            new FamilySolver(),
            Platform::runLater);
    Shelf shelf = new Shelf(bench, List::of, Reading::beside);
    RigScreen page = new RigScreen(desk, shelf, () -> rig, this::project, 2);
    stage.setScene(new Scene(page.createContent(), 1280, 800));
    page.shown();
    ScreenPictures.fill(stage);
    stage.show();
  }

  private ProjectFolder project() {
    return new ProjectFolder(dir);
  }

  @Test
  void readingsAreComparedSavedAndKept() throws Exception {
    WaitForAsyncUtils.waitFor(
        20, TimeUnit.SECONDS, () -> lookup("#rig-lip").queryComboBox().getValue() != null);
    clickOn("#rig-start");
    assertThat(lookup("#rig-fault").queryLabeled().getText()).contains("Choose a rig file");
    clickOn("#rig-open");
    clickOn("#rig-start");
    WaitForAsyncUtils.waitFor(400, TimeUnit.SECONDS, () -> desk.shown().get() != null);
    WaitForAsyncUtils.waitForFxEvents();
    pictures.picture("22-rig");
    assertThat(lookup("#rig-title").queryLabeled().getText()).contains("(invented readings)");
    clickOn("#rig-save");
    assertThat(lookup("#rig-saved").queryLabeled().getText()).startsWith("Saved in ");
    clickOn("#rig-keep");
    assertThat(dir.resolve("plain-flat-8.calibration.json")).isNotEmptyFile();
  }
}
