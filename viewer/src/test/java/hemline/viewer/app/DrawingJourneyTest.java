package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.DxfFile;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipResolver;
import hemline.viewer.draw.BoardLook.ColourMap;
import hemline.viewer.edit.Corner;
import hemline.viewer.screen.SectionBoard;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import javafx.scene.control.Slider;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.util.WaitForAsyncUtils;

/** Drawing with the real controls: menus, sliders, the right mouse button, keys. */
final class DrawingJourneyTest extends BenchJourney {
  private static final int EDITS = 200;

  private void choose(String menu, String item) {
    clickOn("#" + menu);
    clickOn(item);
    WaitForAsyncUtils.waitForFxEvents();
  }

  @Test
  void startersFollowTheirSliders() {
    choose("menu-lips", "Teeth with sliders");
    assertThat(bench.drawing().get().name()).contains("3 teeth");
    int corners = bench.drawing().get().body().vertices().size();
    Slider teeth = lookup("#starter-teeth").query();
    clickOn(teeth).push(KeyCode.RIGHT);
    interact(() -> teeth.setValue(5));
    assertThat(bench.drawing().get().body().vertices()).hasSize(corners + 2 * 4);
    double wide = wide();
    drag(teeth.getScene().lookup("#starter-pitch .thumb")).moveBy(30, 0).drop();
    assertThat(wide()).isGreaterThan(wide + 1e-3);
    interact(() -> lookup("#starter-lean-to-plenum").<Slider>query().setValue(2));
    push(KeyCode.CONTROL, KeyCode.Z);
    assertThat(bench.canRedo().get()).isTrue();
    clickOn("#starter-done");
    assertThat(lookup("#starter-done").query().isVisible()).isTrue();
    assertThat(lookup("#starter-done").query().getParent().isVisible()).isFalse();
    choose("menu-lips", "Pockets with sliders");
    double low = depth();
    interact(() -> lookup("#starter-depth").<Slider>query().setValue(6));
    assertThat(depth()).isGreaterThan(low + 2e-3);
  }

  private double wide() {
    List<Vertex> v = bench.drawing().get().body().vertices();
    return v.stream().mapToDouble(Vertex::x).max().orElse(0)
        - v.stream().mapToDouble(Vertex::x).min().orElse(0);
  }

  /** Height of the second lowest level of vertices over the lowest. */
  private double depth() {
    double[] heights =
        bench.drawing().get().body().vertices().stream()
            .mapToDouble(Vertex::y)
            .distinct()
            .sorted()
            .toArray();
    return heights[1] - heights[0];
  }

  @Test
  void theRightMouseButtonOffersWhatAFindAllows() {
    rightClickOn(pixel(8e-3, 0));
    clickOn("Round by 1 mm");
    assertThat(bench.drawing().get().body().roundings()).containsExactly(Rounding.round(1, 1e-3));
    rightClickOn(pixel(0, 0));
    clickOn("Break by 0.5 mm");
    assertThat(bench.drawing().get().body().roundings()).hasSize(2);
    rightClickOn(pixel(8e-3, 6e-3));
    clickOn("Add a corner here");
    assertThat(bench.drawing().get().body().vertices()).hasSize(5);
    rightClickOn(pixel(0, 5e-3));
    clickOn("Bend or straighten");
    assertThat(bench.drawing().get().body().vertices()).filteredOn(v -> v.bulge() != 0).hasSize(1);
    LipDrawing before = bench.drawing().get();
    rightClickOn(pixel(12e-3, 5e-3));
    clickOn("Draw a detached part");
    for (double[] c : new double[][] {{11e-3, 2e-3}, {13e-3, 2e-3}, {13e-3, 5e-3}, {11e-3, 5e-3}}) {
      clickOn(pixel(c[0], c[1]));
    }
    push(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(bench.drawing().get().detached()).hasSize(1);
    assertThat(bench.drawing().get().detached().get(0).vertices())
        .containsExactly(
            new Vertex(11e-3, 2e-3),
            new Vertex(13e-3, 2e-3),
            new Vertex(13e-3, 5e-3),
            new Vertex(11e-3, 5e-3));
    assertThat(bench.findings().get().profile()).as("it is a lip").isNotNull();
    rightClickOn(pixel(13e-3, 5e-3));
    clickOn("Delete this part");
    assertThat(bench.drawing().get()).isEqualTo(before);
  }

  @Test
  void allCornersOfADetachedPartGoAtOnce() {
    clickOn("#board").push(KeyCode.A);
    for (double[] c : new double[][] {{11e-3, 2e-3}, {13e-3, 2e-3}, {13e-3, 5e-3}, {11e-3, 5e-3}}) {
      clickOn(pixel(c[0], c[1]));
    }
    push(KeyCode.CONTROL, KeyCode.Z);
    clickOn(pixel(12e-3, 6e-3)).push(KeyCode.ENTER);
    assertThat(bench.drawing().get().detached().get(0).vertices())
        .contains(new Vertex(12e-3, 6e-3))
        .hasSize(4);
    interact(
        () ->
            window
                .benchScreen()
                .selection()
                .set(
                    java.util.Set.of(
                        new Corner(1, 0), new Corner(1, 1), new Corner(1, 2), new Corner(1, 3))));
    push(KeyCode.DELETE);
    assertThat(bench.drawing().get().detached()).isEmpty();
  }

  @Test
  void aDrawingComesInAndGoesOutByTheMenu(@TempDir Path folder) throws Exception {
    ask.answer = folder.resolve("shop lip.dxf");
    DxfFile.write(ask.answer, List.of(LipResolver.resolve(bench.drawing().get()).outline()));
    choose("menu-drawings", "Import a drawing \u2026");
    until(() -> bench.drawing().get().name().equals("shop lip"));
    clickOn("#run");
    until(this::solvedInFull);
    ask.answer = folder.resolve("coupon.stl");
    choose("menu-drawings", "Export a test coupon to print, STL \u2026");
    assertThat(Files.size(ask.answer)).as("a box of 12 triangles").isEqualTo(84 + 12 * 50);
    ask.answer = folder.resolve("flow.svg");
    choose("menu-drawings", "Export a picture of the flow, SVG \u2026");
    assertThat(Files.readString(ask.answer).contains(">shop lip<")).as("named picture").isTrue();
    assertThat(lookup("#strip-text").queryLabeled().getText()).contains("flow.svg");
    ask.answer = Files.writeString(folder.resolve("broken.dxf"), "0\nSECTION\n");
    choose("menu-drawings", "Import a drawing \u2026");
    until(() -> lookup("#strip-text").queryLabeled().getText().contains("there is no outline"));
    assertThat(bench.drawing().get().name()).isEqualTo("shop lip");
  }

  @Test
  void keysSwitchTheLookAndMoveTheLip() throws Exception {
    clickOn("#run");
    until(this::solvedInFull);
    clickOn("#board").push(KeyCode.S);
    SectionBoard board = window.benchScreen().board();
    assertThat(board.look().get().map()).isEqualTo(ColourMap.SPEED);
    push(KeyCode.P).push(KeyCode.M).push(KeyCode.F).push(KeyCode.T);
    assertThat(board.look().get().map()).isEqualTo(ColourMap.PRESSURE);
    assertThat(board.look().get().mesh()).isTrue();
    assertThat(board.look().get().tubes()).isEqualTo(20);
    assertThat(board.look().get().tracers()).isTrue();
    push(KeyCode.T).push(KeyCode.L).push(KeyCode.K);
    assertThat(board.look().get().streamlines()).isFalse();
    assertThat(bench.kept().get()).isNotNull();
    push(KeyCode.PAGE_UP);
    assertThat(bench.setting().get().gap()).isEqualTo(2.1e-3);
    push(KeyCode.D);
    assertThat(bench.kept().get()).isNull();
  }

  @Test
  void twoHundredRandomActionsAreUndoneToTheSameOutline() {
    bench.stop();
    LipDrawing first = bench.drawing().get();
    SplittableRandom chance = new SplittableRandom(20261127);
    List<KeyCode> actions =
        List.of(
            KeyCode.LEFT,
            KeyCode.RIGHT,
            KeyCode.UP,
            KeyCode.DOWN,
            KeyCode.INSERT,
            KeyCode.DELETE,
            KeyCode.B);
    SectionBoard board = window.benchScreen().board();
    List<LipDrawing> states = new ArrayList<>(List.of(first));
    interact(
        () -> {
          for (int k = 0; k < EDITS; k++) {
            int steps = 1 + chance.nextInt(4);
            for (int step = 0; step < steps; step++) {
              press(board, KeyCode.PERIOD, false);
            }
            press(board, actions.get(chance.nextInt(actions.size())), chance.nextInt(3) == 0);
            if (!bench.drawing().get().equals(states.get(states.size() - 1))) {
              states.add(bench.drawing().get());
            }
          }
        });
    assertThat(states).hasSizeGreaterThan(EDITS / 2);
    interact(
        () -> {
          for (int k = states.size() - 2; k >= 0; k--) {
            window.benchScreen().undo();
            assertThat(bench.drawing().get()).as("undo to %d", k).isEqualTo(states.get(k));
          }
        });
    assertThat(bench.canUndo().get()).isFalse();
    assertThat(bench.drawing().get()).isEqualTo(first);
  }

  private static void press(SectionBoard board, KeyCode code, boolean shift) {
    board.fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, shift, false, false, false));
  }
}
