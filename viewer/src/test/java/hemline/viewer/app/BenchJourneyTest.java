package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.file.DxfFile;
import hemline.shared.fluid.Air;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipResolver;
import hemline.shared.result.Figure;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipShape;
import hemline.viewer.project.UserChoices;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.util.WaitForAsyncUtils;

/** What a user does at the bench, with the real controls and the real solver on coarse grids. */
final class BenchJourneyTest extends BenchJourney {
  private int keys;

  private String leak() {
    return lookup("#figure-leakFlow").queryLabeled().getText();
  }

  @Test
  void oneClickLeadsToStreamlines() throws Exception {
    clickOn("#run");
    until(this::solvedInFull);
    until(() -> window.benchScreen().board().picture().get() != null);
    assertThat(leak()).doesNotStartWith("\u2248");
    moveTo(pixel(4e-3, -1e-3));
    assertThat(lookup("#probe").queryLabeled().getText()).contains("m/s", "Pa", "of the leak");
    moveTo(pixel(8e-3, 0));
    assertThat(lookup("#probe").queryLabeled().getText())
        .as("the height that the corner's field shows")
        .containsPattern("^(7\\.9\\d|8\\.0\\d) \\| \u2212?0\\.0\\d mm");
    moveTo(pixel(4e-3, -1e-3));
    interact(() -> bench.set(bench.setting().get().withGap(2.5e-3)));
    assertThat(lookup("#probe").queryLabeled().getText()).doesNotContain("m/s");
    until(this::solvedInFull);
    until(() -> lookup("#probe").queryLabeled().getText().contains("m/s"));
    assertThat(window.benchScreen().board().picture().get().streamlines().throughLines())
        .isGreaterThanOrEqualTo(9);
  }

  @Test
  void aLipDrawnFromNothingRuns() throws Exception {
    clickOn("#board").push(KeyCode.CONTROL, KeyCode.N);
    WaitForAsyncUtils.waitForFxEvents();
    double[][] corners = {{0, 0}, {9e-3, 0}, {9e-3, 8e-3}, {0, 8e-3}};
    for (double[] c : corners) {
      clickOn(pixel(c[0], c[1]));
    }
    push(KeyCode.F5);
    assertThat(lookup("#run-reason").queryLabeled().getText()).contains("not closed yet");
    push(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    LipDrawing drawn = bench.drawing().get();
    assertThat(drawn.name()).isEqualTo("my lip");
    assertThat(drawn.body().vertices())
        .containsExactly(
            new Vertex(0, 0), new Vertex(9e-3, 0), new Vertex(9e-3, 8e-3), new Vertex(0, 8e-3));
    assertThat(drawn.mountEdge()).isEqualTo(2);
    clickOn("#run");
    until(this::solvedInFull);
    assertThat(bench.shown().get().result().figures().get(Figure.LEAK_FLOW).value())
        .isBetween(0.02, 0.08);
  }

  /**
   * A lip with a pocket and a round edge, by keyboard alone, as fast as two keys a second allow.
   */
  @Test
  void aLipWithAPocketIsTyped() throws Exception {
    keys = 0;
    key(KeyCode.CONTROL, KeyCode.N);
    tabTo("next-x");
    String[][] corners = {
      {"0", "0"}, {"3", "0"}, {"3", "2"}, {"6", "2"}, {"6", "0"}, {"9", "0"}, {"9", "8"}, {"0", "8"}
    };
    for (String[] corner : corners) {
      type(corner[0]);
      key(KeyCode.TAB);
      type(corner[1]);
      key(KeyCode.ENTER);
    }
    tabTo("sketch-close");
    key(KeyCode.SPACE);
    tabTo("board");
    key(KeyCode.PERIOD);
    tabTo("corner-dress");
    key(KeyCode.DOWN);
    tabTo("corner-size");
    type("1.5");
    key(KeyCode.ENTER);
    key(KeyCode.F5);
    until(this::solvedInFull);
    assertThat(keys).as("keys pressed").isLessThan(120);
    LipDrawing drawn = bench.drawing().get();
    assertThat(drawn.body().vertices())
        .extracting(v -> Math.round(1e3 * v.x()) + " " + Math.round(1e3 * v.y()))
        .containsExactly("0 0", "3 0", "3 2", "6 2", "6 0", "9 0", "9 8", "0 8");
    assertThat(drawn.body().roundings()).containsExactly(Rounding.round(0, 1.5e-3));
    assertThat(bench.shown().get().section().profile()).isEqualTo(LipResolver.resolve(drawn));
  }

  private void key(KeyCode... together) {
    push(together);
    keys++;
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void type(String text) {
    write(text);
    keys += text.length();
  }

  /** Moves the keyboard to a control with the Tab key. */
  private void tabTo(String id) {
    for (int k = 0; k < 40; k++) {
      Node owner = window.benchScreen().board().getScene().getFocusOwner();
      if (owner != null && id.equals(owner.getId())) {
        return;
      }
      key(KeyCode.TAB);
    }
    throw new AssertionError("no Tab leads to " + id);
  }

  @Test
  void theLeakFollowsADraggedCorner() throws Exception {
    clickOn("#run");
    until(this::solvedInFull);
    String before = leak();
    drag(pixel(8e-3, 0)).moveTo(pixel(8.3e-3, 0)).moveTo(pixel(9e-3, 0));
    until(() -> bench.shown().get().preview() && !bench.stale().get());
    assertThat(leak()).isNotEqualTo(before).startsWith("\u2248");
    assertThat(bench.canUndo().get()).isTrue();
    drop();
    until(this::solvedInFull);
    assertThat(leak()).isNotEqualTo(before).doesNotStartWith("\u2248");
    assertThat(bench.drawing().get().body().at(1)).isEqualTo(new Vertex(9e-3, 0));
    push(KeyCode.CONTROL, KeyCode.Z);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(bench.drawing().get().body().at(1)).isEqualTo(new Vertex(8e-3, 0));
  }

  @Test
  void anImportedDrawingRunsAndLeavesAsACoupon(@TempDir Path folder) throws Exception {
    Path dxf = folder.resolve("from elsewhere.dxf");
    DxfFile.write(dxf, List.of(LipResolver.resolve(bench.drawing().get()).outline()));
    interact(() -> window.bringIn(dxf));
    until(() -> bench.drawing().get().name().equals("from elsewhere"));
    clickOn("#run");
    until(this::solvedInFull);
    Path stl = folder.resolve("coupon.stl");
    Path png = folder.resolve("flow.png");
    Drawings.export(bench, stl, 40e-3);
    Drawings.savePicture(bench, png);
    assertThat(Files.size(stl)).as("a box of 12 triangles").isEqualTo(84 + 12 * 50);
    assertThat(ImageIO.read(png.toFile()).getWidth()).isGreaterThan(1000);
  }

  @Test
  void cornersAreTypedRoundedAndDeletedByKeyboard() {
    clickOn("#board").push(KeyCode.PERIOD).push(KeyCode.PERIOD);
    assertThat(window.benchScreen().selection().get()).containsExactly(new Corner(0, 1));
    push(KeyCode.UP).push(KeyCode.LEFT);
    assertThat(bench.drawing().get().body().at(1)).isEqualTo(new Vertex(7.9e-3, 0.1e-3));
    clickOn("#corner-x").push(KeyCode.CONTROL, KeyCode.A).write("7,25").push(KeyCode.ENTER);
    assertThat(bench.drawing().get().body().at(1).x()).isEqualTo(7.25e-3);
    interact(() -> lookup("#corner-dress").queryComboBox().getSelectionModel().select(1));
    assertThat(bench.drawing().get().body().roundings()).containsExactly(Rounding.round(1, 0.5e-3));
    clickOn("#corner-delete");
    assertThat(bench.drawing().get().body().vertices()).hasSize(3);
  }

  @Test
  void aClickChoosesOneCornerOfAnEdge() {
    Set<Corner> ends = Set.of(new Corner(0, 1), new Corner(0, 2));
    interact(() -> window.benchScreen().selection().set(ends));
    clickOn(pixel(8e-3, 0));
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(window.benchScreen().selection().get()).containsExactly(new Corner(0, 1));
  }

  /** The first steps go along and leave when they are done. */
  @Test
  void aLipIsKeptBesideAnother(@TempDir Path folder) throws Exception {
    UserChoices choices = new UserChoices(folder.resolve("settings/choices.json"));
    interact(() -> window.remember(choices, true));
    Node steps = lookup("#first-steps").query();
    assertThat(steps.isVisible()).isTrue();
    clickOn("#run");
    until(this::solvedInFull);
    assertThat(lookup("\u2713 2 Run, done").tryQuery()).isPresent();
    clickOn("#set-as-B");
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(lookup("#kept-board").query().isVisible()).isTrue();
    interact(() -> bench.set(bench.setting().get().withGap(3e-3)));
    until(this::solvedInFull);
    double kept = bench.kept().get().shown().result().figures().get(Figure.LEAK_FLOW).value();
    assertThat(bench.shown().get().result().figures().get(Figure.LEAK_FLOW).value())
        .isGreaterThan(1.3 * kept);
    assertThat(lookup("#kept-leakFlow").queryLabeled().getText())
        .startsWith("B ")
        .containsPattern("leaks \\d+(\\.\\d)? % more than B \\(\\d.* to \\d.* %\\)");
    clickOn("#as-C").clickOn("#as-C");
    assertThat(bench.beside().get()).hasSize(3);
    assertThat(lookup("#kept-board-D").query().isVisible()).isTrue();
    assertThat(lookup("#as-C").query().isDisabled()).as("four lips are the most").isTrue();
    until(() -> window.benchScreen().board().picture().get() != null);
    assertThat(lookup("\u2713 3 Compare, done").tryQuery()).isPresent();
    assertThat(steps.isVisible()).as("a lip is still to be drawn").isTrue();
    assertThat(choices.get(UserChoices.STEPS)).isEmpty();
    interact(() -> bench.edit(d -> LipShape.named(d, "drawn")));
    assertThat(steps.isVisible()).isFalse();
    until(() -> choices.get(UserChoices.STEPS).equals("done"));
    clickOn("#swap");
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(bench.setting().get().gap()).isEqualTo(2e-3);
    assertThat(bench.stale().get()).isFalse();
  }

  @Test
  void aWrongNumberIsToldAtItsField() {
    clickOn("#gap").push(KeyCode.CONTROL, KeyCode.A).write("2 parsec").push(KeyCode.ENTER);
    assertThat(lookup("#gap").query().getStyleClass()).contains("bad");
    assertThat(bench.setting().get().gap()).isEqualTo(2e-3);
    for (String[] far :
        new String[][] {
          {"gap", "1e9 mm"}, {"gap", "-2 mm"}, {"suction", "1e7 Pa"}, {"ground", "5000 m/s"}
        }) {
      var before = bench.setting().get();
      clickOn("#" + far[0]).push(KeyCode.CONTROL, KeyCode.A).write(far[1]).push(KeyCode.ENTER);
      assertThat(lookup("#" + far[0]).query().getStyleClass()).as(far[1]).contains("bad");
      assertThat(bench.setting().get()).as(far[1]).isEqualTo(before);
    }
    clickOn("#gap").push(KeyCode.CONTROL, KeyCode.A).write("0.1in").push(KeyCode.ENTER);
    assertThat(lookup("#gap").query().getStyleClass()).doesNotContain("bad");
    assertThat(bench.setting().get().gap()).isEqualTo(2.54e-3);
  }

  @Test
  void theAirMayBeCold() throws Exception {
    clickOn("#temperature").push(KeyCode.CONTROL, KeyCode.A).write("400degC").push(KeyCode.ENTER);
    assertThat(lookup("#temperature").query().getStyleClass()).contains("bad");
    assertThat(bench.section().fluid()).isEqualTo(Air.STANDARD);
    clickOn("#temperature").push(KeyCode.CONTROL, KeyCode.A).write("-20degC").push(KeyCode.ENTER);
    TextField field = lookup("#temperature").query();
    assertThat(field.getText()).isEqualTo("\u221220 \u00b0C");
    clickOn(field).push(KeyCode.ENTER);
    assertThat(field.getStyleClass()).as("what it writes it reads").doesNotContain("bad");
    assertThat(bench.setting().get().temperature()).isCloseTo(253.15, within(1e-9));
    clickOn("#run");
    until(this::solvedInFull);
    assertThat(bench.shown().get().section().fluid()).isEqualTo(Air.at(253.15, 101325));
    assertThat(lookup(".quiet").queryAllAs(Labeled.class))
        .anyMatch(label -> label.getText().endsWith("air of 1.394 kg/m\u00b3"));
    interact(() -> bench.set(bench.setting().get().withTemperature(288.15)));
    assertThat(bench.section().fluid()).isEqualTo(Air.STANDARD);
    interact(bench::stop);
  }
}
