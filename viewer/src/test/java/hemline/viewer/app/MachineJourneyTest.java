package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.MachineFile;
import hemline.shared.profile.Starter;
import hemline.shared.result.MachineFigure;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.model.MachineDesk.Balanced;
import hemline.viewer.model.Workbench;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.control.TitledPane;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** A machine changed in the window, from kept sections, with the real controls. */
final class MachineJourneyTest extends ApplicationTest {
  @TempDir static Path shared;
  private final SetAnswer ask = new SetAnswer();
  private HemlineWindow window;
  private Path dir = shared;

  @Override
  public void start(Stage stage) throws IOException {
    dir = Files.createTempDirectory(shared, "project");
    FamilySolver solver = new FamilySolver();
    Workbench bench =
        new Workbench(new Starter.Flat(4e-3, 6e-3).drawing(), solver, Platform::runLater);
    Examples examples = Examples.of(Path.of("../profiles"));
    Project project =
        new Project(
            bench,
            examples,
            solver,
            dir,
            new RecentPlaces(dir.resolve("settings/recent.json")),
            RescueStore::new,
            InventedStudies.LEAKS,
            () -> "build");
    window = new HemlineWindow(project, examples, ask);
    stage.setScene(window.createScene());
    window.pages().lookAfter(stage);
    stage.show();
  }

  private void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(180, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private Balanced shown() {
    return window.pages().machines().shown().get();
  }

  private double downforce() {
    return shown().balance().rest().get(MachineFigure.DOWNFORCE).value();
  }

  private void type(String field, String text) {
    clickOn("#" + field).push(KeyCode.CONTROL, KeyCode.A).write(text).push(KeyCode.ENTER);
  }

  private void crawler() throws Exception {
    clickOn("#tab-machine");
    until(() -> !lookup("#machine-file").<ComboBox<Path>>query().getItems().isEmpty());
    ComboBox<Path> files = lookup("#machine-file").query();
    Path crawler =
        files.getItems().stream()
            .filter(f -> f.endsWith("silo-wall-crawler.json"))
            .findFirst()
            .orElseThrow();
    interact(() -> files.setValue(crawler));
    until(() -> text("#value-fan-speed").equals("24000 rpm"));
  }

  /** Text of a control, asked for on the screen's thread, which may be laying it out. */
  private String text(String id) {
    return WaitForAsyncUtils.waitForAsyncFx(
        20_000,
        () -> {
          Node node = window.benchScreen().board().getScene().lookup(id);
          if (node instanceof Labeled label) {
            return label.getText();
          }
          return node instanceof TextField field ? field.getText() : "";
        });
  }

  private void balanced() throws Exception {
    until(() -> shown() != null && !window.pages().machines().work().running().get());
  }

  @Test
  void aChangeOfTheFanIsFollowedByTheDownforceAndUndone() throws Exception {
    crawler();
    clickOn("#machine-start");
    balanced();
    double before = downforce();
    Balanced first = shown();
    type("value-fan-speed", "22000");
    until(() -> shown() != first);
    balanced();
    assertThat(shown().balance().machine().fan().speed()).isEqualTo(22000 / 60.0);
    double slower = downforce();
    assertThat(slower).isLessThan(0.95 * before);
    Balanced second = shown();
    type("value-load-mass", "5,5 kg");
    until(() -> shown() != second);
    balanced();
    assertThat(shown().balance().machine().load().mass()).isEqualTo(5.5);
    // what cannot be is told at its field and leaves the balance
    Balanced third = shown();
    type("value-fan-speed", "31000");
    until(() -> !text("#value-fan-speed-reason").isEmpty());
    assertThat(lookup("#value-fan-speed-reason").<Labeled>query().getText())
        .contains("maximumSpeed");
    assertThat(shown()).isSameAs(third);
    clickOn("#machine-start");
    assertThat(shown()).isSameAs(third);
    clickOn("#tab-machine");
    push(KeyCode.CONTROL, KeyCode.Z);
    push(KeyCode.CONTROL, KeyCode.Z);
    push(KeyCode.CONTROL, KeyCode.Z);
    until(() -> shown() != third && downforce() == before);
    assertThat(lookup("#value-fan-speed").<TextField>query().getText()).isEqualTo("24000 rpm");
    push(KeyCode.CONTROL, KeyCode.Y);
    until(() -> downforce() == slower);
  }

  @Test
  void aChangedMachineIsSavedAsAFileOfTheProject() throws Exception {
    crawler();
    type("value-fan-speed", "23000");
    interact(() -> lookup("#values-axles").<TitledPane>query().setExpanded(true));
    interact(() -> lookup("#value-axles-0-stiffness").query().requestFocus());
    push(KeyCode.CONTROL, KeyCode.A).write("80").push(KeyCode.TAB);
    WaitForAsyncUtils.waitForFxEvents();
    ask.answer = dir.resolve("mine.json");
    clickOn("#machine-keep");
    until(() -> Files.exists(ask.answer));
    var saved = MachineFile.read(ask.answer);
    assertThat(saved.fan().speed()).isEqualTo(23000 / 60.0);
    assertThat(saved.running().axles().get(0).stiffness()).isEqualTo(80e3);
    until(() -> ask.answer.equals(lookup("#machine-file").<ComboBox<Path>>query().getValue()));
    assertThat(Files.readString(ask.answer)).contains("All figures are invented.");
  }
}
