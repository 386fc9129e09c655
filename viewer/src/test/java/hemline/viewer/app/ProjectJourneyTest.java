package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.project.Program;
import hemline.viewer.project.RescueStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** Files of lips and their recovery with the real controls. */
final class ProjectJourneyTest extends ProjectJourney {
  /** A program of this computer that is gone. */
  private static final Program GONE =
      new Program(
          Program.here().computer(), Program.here().machine(), Integer.MAX_VALUE - 7L, null);

  private void save() {
    press(KeyCode.CONTROL).type(KeyCode.S).release(KeyCode.CONTROL);
  }

  @Test
  void aLipDrawnFromNothingIsNotLostUnasked() {
    clickOn("#board").push(KeyCode.N);
    for (String[] c : new String[][] {{"0", "0"}, {"5", "0"}, {"5", "6"}, {"0", "6"}}) {
      put("next-x", c[0]);
      put("next-y", c[1]);
      clickOn("#sketch-add");
    }
    clickOn("#sketch-close");
    assertThat(bench.drawing().get().name()).isEqualTo("my lip");
    assertThat(project.document().unsaved().get()).isTrue();
    interact(() -> window.benchScreen().open(new Starter.Flat(9e-3, 6e-3).drawing()));
    assertThat(lookup("#strip-text").queryLabeled().getText()).contains("not saved");
    assertThat(bench.drawing().get().name()).isEqualTo("my lip");
  }

  private void moveCorner() {
    interact(() -> bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), 0.2e-3, 0)));
  }

  @Test
  void unsavedChangesAreAskedForBeforeAnotherLipTakesTheirPlace() throws Exception {
    moveCorner();
    assertThat(stage.getTitle()).contains("not saved");
    var edited = bench.drawing().get();
    interact(() -> window.benchScreen().open(new Starter.Flat(9e-3, 6e-3).drawing()));
    assertThat(bench.drawing().get()).isEqualTo(edited);
    clickOn("#strip-go-on-editing");
    assertThat(bench.drawing().get()).isEqualTo(edited);
    ask.answer = dir.resolve("mine.json");
    interact(() -> window.benchScreen().open(new Starter.Flat(9e-3, 6e-3).drawing()));
    clickOn("#strip-save");
    until(() -> !bench.drawing().get().equals(edited));
    assertThat(LipFile.read(ask.answer)).isEqualTo(edited);
    assertThat(bench.drawing().get()).isNotEqualTo(edited);
    assertThat(project.recent().files()).containsExactly(ask.answer);
    // the commands read the folder
    assertThat(LipFile.loadFolder(dir)).hasSize(1);
    moveCorner();
    interact(() -> stage.getOnCloseRequest().handle(new javafx.stage.WindowEvent(stage, null)));
    assertThat(stage.isShowing()).isTrue();
    clickOn("#strip-throw-away");
    assertThat(stage.isShowing()).isFalse();
    assertThat(project.document().left().drawings()).isEmpty();
  }

  @Test
  void aCrashCostsNothing() throws Exception {
    interact(() -> open(folder -> new RescueStore(folder, GONE)));
    moveCorner();
    interact(() -> bench.set(bench.setting().get().withGap(3e-3).withTemperature(300)));
    var edited = bench.drawing().get();
    var conditions = bench.setting().get();
    until(() -> rescues().size() == 1);
    Path left = rescues().get(0);
    // the program breaks off here: nothing is closed or cleared
    interact(() -> open(RescueStore::new));
    recoveryIsOffered();
    assertThat(lookup("#strip-text").queryLabeled().getText()).contains("was left with changes");
    clickOn("#strip-recover");
    assertThat(bench.drawing().get()).isEqualTo(edited);
    assertThat(bench.setting().get()).isEqualTo(conditions);
    assertThat(project.document().unsaved().get()).isTrue();
    // it is put by again at once, should this program break off too
    until(() -> !Files.exists(left) && rescues().size() == 1);
  }

  /** A lip that was not changed, looked at with another gap. */
  @Test
  void aCrashCostsNoConditions() throws Exception {
    interact(() -> open(folder -> new RescueStore(folder, GONE)));
    interact(() -> bench.set(bench.setting().get().withGap(3e-3)));
    until(() -> rescues().size() == 1);
    interact(() -> open(RescueStore::new));
    recoveryIsOffered();
    clickOn("#strip-recover");
    assertThat(bench.setting().get().gap()).isEqualTo(3e-3);
  }

  private void recoveryIsOffered() throws Exception {
    until(() -> lookup("#strip-recover").tryQuery().isPresent());
  }

  private List<Path> rescues() throws IOException {
    Path folder = dir.resolve(".hemline/rescue");
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }

  @Test
  void aForeignFolderNeitherLocksTheWindowOutNorNamesAFileToOverwrite() throws Exception {
    Path settings = Files.writeString(shared.resolve("settings.conf"), "precious");
    RescueStore stranger = new RescueStore(project.folder().rescue(), GONE);
    stranger.putBy(
        List.of(new RescueStore.Open(bench.drawing().get(), Map.of(), settings, "")),
        Instant.parse("2026-11-25T12:00:00Z"));
    Files.writeString(dir.resolve(".hemline/rescue/a.json"), "{\"when\": \"\"}");
    Files.createDirectories(project.folder().studies());
    Files.writeString(dir.resolve(".hemline/studies/a.json"), "{}");
    interact(() -> open(RescueStore::new));
    recoveryIsOffered();
    assertThat(lookup("#strip-text").queryLabeled().getText())
        .contains("was left with changes")
        .contains("a.json: is damaged");
    clickOn("#strip-recover");
    assertThat(project.document().file().get()).isNull();
    ask.answer = dir.resolve("mine.json");
    save();
    until(() -> ask.answer.equals(project.document().file().get()));
    assertThat(settings).hasContent("precious");
    assertThat(ask.answer).exists();
    clickOn("#tab-studies");
    assertThat(project.studies().work().state().get()).contains("a.json: is damaged");
  }

  private void openAgain(Path file) throws Exception {
    interact(() -> window.pages().files().openGuarded(file));
    until(() -> file.equals(project.document().file().get()));
  }

  @Test
  void theSecondWriterOfALipFileIsAsked() throws Exception {
    Path file = dir.resolve("mine.json");
    LipFile.write(file, bench.drawing().get());
    openAgain(file);
    moveCorner();
    LipDrawing mine = bench.drawing().get();
    LipDrawing other = new Starter.Flat(9e-3, 6e-3).drawing();
    LipFile.write(file, other);
    save();
    until(() -> lookup("#strip-replace-it").tryQuery().isPresent());
    assertThat(lookup("#strip-text").queryLabeled().getText()).contains("changed by another");
    assertThat(LipFile.read(file)).isEqualTo(other);
    ask.answer = dir.resolve("second.json");
    clickOn("#strip-save-under-another-name");
    until(() -> ask.answer.equals(project.document().file().get()));
    assertThat(LipFile.read(file)).isEqualTo(other);
    assertThat(LipFile.read(ask.answer)).isEqualTo(mine);
    openAgain(file);
    moveCorner();
    LipFile.write(file, mine);
    save();
    until(() -> lookup("#strip-replace-it").tryQuery().isPresent());
    clickOn("#strip-replace-it");
    until(() -> !project.document().unsaved().get());
    assertThat(LipFile.read(file)).isEqualTo(bench.drawing().get());
  }
}
