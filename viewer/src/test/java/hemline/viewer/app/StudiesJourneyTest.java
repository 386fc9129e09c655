package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.Air;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.Ranking;
import hemline.viewer.draw.PictureCanvas;
import hemline.viewer.format.Digits;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.RescueStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javafx.event.Event;
import javafx.geometry.Point2D;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.TitledPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Studies, searches and the other pages with the real controls; the solver in slow air. */
final class StudiesJourneyTest extends ProjectJourney {
  private void toStudies() throws Exception {
    clickOn("#tab-studies");
    lipsAreListed();
  }

  private void lipsAreListed() throws Exception {
    until(() -> lookup("#study-lip").<ComboBox<?>>query().getValue() != null);
  }

  private KeptStudy studied() throws Exception {
    clickOn("#study-start");
    until(
        () -> !project.studies().work().running().get() && project.studies().shown().get() != null);
    KeptStudy study = project.studies().shown().get();
    assertThat(study.complete()).isTrue();
    return study;
  }

  private void slowAir() {
    interact(() -> lookup("#study-mesh").<ComboBox<MeshLevel>>query().setValue(MeshLevel.COARSE));
    put("study-gap", "0.4 mm");
    put("study-gap-to", "0.5 mm");
    put("study-points", "2");
    put("study-suction", "2 Pa");
  }

  @Test
  void sweepTheGapAndFindItAgainAfterARestart() throws Exception {
    toStudies();
    slowAir();
    put("study-gap-to", "0.3 mm");
    clickOn("#study-start");
    assertThat(lookup("#study-fault").queryLabeled().getText()).contains("above the first");
    put("study-gap-to", "1e9 mm");
    clickOn("#study-start");
    assertThat(lookup("#study-fault").queryLabeled().getText()).contains("at most 1 m");
    put("study-suction", "1e7 Pa");
    clickOn("#study-start");
    assertThat(lookup("#study-fault").queryLabeled().getText()).contains("about 100 kPa");
    put("study-suction", "2 Pa");
    put("study-gap-to", "0.5 mm");
    KeptStudy study = studied();
    assertThat(study.relative().relativeLeak()).hasSize(2);
    assertThat(lookup("#study-title").queryLabeled().getText()).contains("gap 0.4 mm to 0.5 mm");
    clickOn("#study-save");
    try (Stream<Path> files = Files.walk(dir.resolve("results"))) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .contains("sweep.json", "sweep.png", "sweep.svg", "figures.csv");
    }
    interact(() -> open(RescueStore::new));
    toStudies();
    until(() -> project.studies().kept().get().equals(List.of(study)));
    slowAir();
    clickOn("#study-start");
    assertThat(project.studies().work().running().get()).isFalse();
    assertThat(project.studies().shown().get()).isEqualTo(study);
  }

  /** A search that is stopped goes on, and its best lip comes to the bench. */
  @Test
  void aBetterLipIsSearchedStoppedAndProven() throws Exception {
    clickOn("#tab-improve");
    until(() -> lookup("#improve-start-lip").<ComboBox<?>>query().getValue() != null);
    interact(() -> lookup("#improve-family").<ComboBox<String>>query().setValue("flat"));
    assertThat(lookup("#improve-gap-to").query().isDisabled()).as("one gap").isTrue();
    put("improve-gap", "0.4 mm");
    put("improve-suction", "2 Pa");
    put("improve-evaluations", "2");
    put("improve-width", "0.5 mm");
    clickOn("#improve-start");
    until(() -> label("#improve-fault").startsWith("wall: must be above 0 and"));
    put("improve-width", "6 mm");
    clickOn("#improve-start");
    var searches = window.pages().searches();
    until(() -> searches.state().get() != null && !searches.state().get().tried().isEmpty());
    clickOn("#improve-start");
    until(() -> !searches.work().running().get());
    assertThat(label("#improve-state")).contains("are kept; it can go on");
    assertThat(searches.state().get().found()).isNull();
    clickOn("#improve-go-on");
    until(() -> searches.state().get().found() != null);
    assertThat(searches.state().get().tried()).hasSize(2);
    assertThat(label("#improve-title")).isEqualTo("Better than flat 4");
    clickOn("#improve-save");
    until(() -> label("#improve-saved").startsWith("Saved in "));
    assertThat(dir.resolve("results/better-than-flat-4/improvement.json")).isNotEmptyFile();
    clickOn("#improve-open");
    until(() -> bench.drawing().get().name().startsWith("improved"));
    assertThat(bench.setting().get().suction()).isEqualTo(2);
  }

  private String label(String id) {
    return lookup(id).queryAll().stream()
        .map(node -> ((Labeled) node).getText())
        .findFirst()
        .orElse("");
  }

  @Test
  void aStudyTakesAllItsConditionsFromTheForm() throws Exception {
    press(KeyCode.CONTROL).type(KeyCode.DIGIT2).release(KeyCode.CONTROL);
    lipsAreListed();
    clickOn("#over-ground");
    assertThat(lookup("#study-ground").<TextField>query().getText()).startsWith("\u2212");
    interact(() -> lookup("#study-mesh").<ComboBox<MeshLevel>>query().setValue(MeshLevel.COARSE));
    put("study-gap", "0.4 mm");
    put("study-suction", "20 Pa");
    put("study-points", "2");
    put("study-spanwise", "0.1 m/s");
    put("study-temperature", "400 degC");
    clickOn("#study-start");
    assertThat(lookup("#study-fault").queryLabeled().getText()).contains("temperature");
    put("study-temperature", "40 degC");
    put("study-ground", "\u22120.1 m/s");
    put("study-ground-to", "0.1 m/s");
    interact(() -> lookup("#study-relative").<CheckBox>query().setSelected(false));
    clickOn("#study-model-spread");
    KeptStudy study = studied();
    assertThat(study.question().held().ground().spanwiseSpeed()).isEqualTo(0.1);
    assertThat(study.question().held().air().density()).isBetween(1.12, 1.14);
    assertThat(study.question().solving().modelSpread()).isTrue();
    itsConditionsComeBack(study);
    assertThat(study.question().values()).containsExactly(-0.1, 0.1);
    assertThat(study.question().conditions()).contains("second turbulence model", "kg/m");
  }

  /** A kept study that is chosen asks its question again. */
  private void itsConditionsComeBack(KeptStudy study) {
    clickOn("#over-gap");
    put("study-suction", "900 Pa");
    put("study-spanwise", "0 m/s");
    put("study-temperature", "15 degC");
    put("study-points", "6");
    clickOn("#study-model-spread");
    ListView<KeptStudy> kept = lookup("#kept-studies").queryListView();
    interact(() -> kept.getSelectionModel().clearSelection());
    interact(() -> kept.getSelectionModel().select(study));
    assertThat(lookup("#over-ground").<RadioButton>query().isSelected()).isTrue();
    clickOn("#study-start");
    assertThat(project.studies().work().running().get()).as("it is answered already").isFalse();
    assertThat(project.studies().shown().get().question()).isEqualTo(study.question());
  }

  @Test
  void rankFourLips() throws Exception {
    toStudies();
    clickOn("#ranking");
    slowAir();
    put("study-points", "1");
    List<String> chosen = List.of("plain flat 8", "knife fin", "round nose", "chamfered flat");
    interact(
        () ->
            lookup(".check-box")
                .<CheckBox>queryAll()
                .forEach(
                    c -> {
                      if (c.getId() != null && c.getId().startsWith("candidate-")) {
                        c.setSelected(chosen.contains(c.getText()));
                      }
                    }));
    KeptStudy study = studied();
    assertThat(study.ranking().rows())
        .extracting(row -> row.profile())
        .containsExactlyInAnyOrderElementsOf(
            study.question().lips().stream().map(l -> l.name()).toList())
        .hasSize(4);
    // in creeping flow the longest way close to the ground leaks least
    assertThat(study.ranking().rows().get(0).profile()).isEqualTo("plain flat 8");
    theValueShowsUnderTheMouse(study.ranking().rows().get(0));
    aRowLeadsToItsFlow();
  }

  /** Pointing at the bar of a lip tells its name and its leak. */
  private void theValueShowsUnderTheMouse(Ranking.Row first) {
    PictureCanvas chart = lookup(n -> n instanceof PictureCanvas).query();
    interact(() -> lookup("#study-sheet").<ScrollPane>query().setVvalue(1));
    WaitForAsyncUtils.waitForFxEvents();
    double width = chart.getWidth();
    double height = chart.getHeight();
    List<String> told = new ArrayList<>();
    interact(
        () -> {
          for (double y = 1; y < height; y += 6) {
            for (double x = 0.3 * width; x < 0.8 * width; x += 6) {
              Point2D at = chart.localToScene(x, y);
              MouseEvent moved =
                  new MouseEvent(
                      MouseEvent.MOUSE_MOVED,
                      at.getX(),
                      at.getY(),
                      x,
                      y,
                      MouseButton.NONE,
                      0,
                      false,
                      false,
                      false,
                      false,
                      false,
                      false,
                      false,
                      false,
                      false,
                      false,
                      null);
              Event.fireEvent(chart, moved);
              Labeled said = (Labeled) chart.lookup("#chart-value");
              if (said.isVisible()) {
                told.add(said.getText());
              }
            }
          }
        });
    assertThat(told)
        .contains(
            first.profile()
                + "\nrelative leak: "
                + Digits.value(first.relativeLeak(), 1)
                + (Digits.exact(first.relativeLeak(), 1)
                    ? ""
                    : "  (" + Digits.range(first.relativeLeak(), 1) + ")"));
  }

  private void aRowLeadsToItsFlow() throws Exception {
    Hyperlink link =
        lookup(n -> n instanceof Hyperlink h && h.getText().equals("knife fin")).query();
    interact(link::fire);
    until(() -> bench.drawing().get().name().equals("knife fin"));
    assertThat(lookup("#board").query().isVisible()).isTrue();
    assertThat(bench.setting().get().gap()).isEqualTo(0.4e-3);
    assertThat(bench.setting().get().suction()).isEqualTo(2);
    assertThat(bench.section().fluid()).isEqualTo(Air.STANDARD);
    until(() -> bench.shown().get() != null && !bench.running().get());
    assertThat(bench.shown().get().section()).isEqualTo(bench.section());
  }

  @Test
  void everyPageOpensInBothThemesAndAMachineFileWithFaultsIsTold() throws Exception {
    interact(() -> window.setDark(true));
    clickOn("#tab-guide");
    assertThat(lookup("#guide-sheet").query().isVisible()).isTrue();
    clickOn("#tab-machine");
    until(() -> lookup("#try-knife-fin").tryQuery().isPresent());
    until(() -> lookup("#machine-file").<ComboBox<Path>>query().getValue() != null);
    assertThat(lookup("#machine-file").<ComboBox<Path>>query().getItems())
        .extracting(p -> p.getFileName().toString())
        .contains("silo-wall-crawler.json");
    // lips to try come from the shelf, none of them chosen at first
    interact(() -> lookup("#other-lips").<TitledPane>query().setExpanded(true));
    WaitForAsyncUtils.waitForFxEvents();
    clickOn("#try-all");
    assertThat(lookup("#try-knife-fin").<CheckBox>query().isSelected()).isTrue();
    clickOn("#try-none");
    assertThat(lookup("#try-knife-fin").<CheckBox>query().isSelected()).isFalse();
    interact(() -> lookup("#machine-factor").<TextField>query().setText("half"));
    clickOn("#machine-start");
    assertThat(lookup("#machine-factor-reason").queryLabeled().getText())
        .contains("write a number as 1.5");
    interact(() -> lookup("#machine-factor").<TextField>query().setText("2"));
    ask.answer =
        Files.writeString(dir.resolve("broken.json"), "{\"schema\": \"hemline.machine/1\"}");
    clickOn("#machine-open");
    clickOn("#machine-start");
    assertThat(lookup("#machine-fault").queryLabeled().getText()).contains("broken.json");
    assertThat(window.pages().machines().work().running().get()).isFalse();
    interact(() -> window.setDark(false));
  }
}
