package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.profile.LipDrawing;
import hemline.viewer.model.Setting;
import hemline.viewer.screen.StarterPanel;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Undo and redo of all that is set at the bench, in the order it was done. */
final class UndoTest extends BenchJourney {
  /** What is to come back with the same bits. */
  private record State(LipDrawing drawing, Setting setting) {}

  private final List<State> states = new ArrayList<>();

  private void noted() {
    WaitForAsyncUtils.waitForFxEvents();
    State now = now();
    assertThat(now).isNotEqualTo(states.isEmpty() ? null : states.get(states.size() - 1));
    states.add(now);
  }

  private State now() {
    return new State(bench.drawing().get(), bench.setting().get());
  }

  private void type(String field, String text) {
    clickOn("#" + field).push(KeyCode.CONTROL, KeyCode.A).write(text).push(KeyCode.ENTER);
    noted();
  }

  private void slide(String slider, double to) {
    Slider one = lookup("#" + slider).query();
    interact(
        () -> {
          one.setValueChanging(true);
          one.setValue(0.5 * (one.getValue() + to));
          one.setValue(to);
          one.setValueChanging(false);
        });
    noted();
  }

  @Test
  void tenMixedEditsAreUndoneAndMadeAgainInOrder() {
    noted();
    type("gap", "3");
    slide("suction-slider", 1200);
    clickOn("#board").push(KeyCode.PERIOD).push(KeyCode.UP);
    noted();
    slide("ground-slider", -4);
    type("temperature", "30");
    type("corner-x", "7.25");
    slide("gap-slider", 1.5e-3);
    type("spanwise", "1.5");
    clickOn("#board").push(KeyCode.PAGE_UP);
    noted();
    type("suction", "0,7 kPa");
    assertThat(states).hasSize(11);
    clickOn("#board");
    for (int k = 9; k >= 0; k--) {
      push(KeyCode.CONTROL, KeyCode.Z);
      assertThat(now()).as("undo to %s", k).isEqualTo(states.get(k));
    }
    assertThat(bench.canUndo().get()).isFalse();
    for (int k = 1; k <= 10; k++) {
      push(KeyCode.CONTROL, KeyCode.Y);
      assertThat(now()).as("redo to %s", k).isEqualTo(states.get(k));
    }
    assertThat(bench.canRedo().get()).isFalse();
  }

  @Test
  void slidersOfAShapeGoBackWithIt() {
    interact(() -> window.benchScreen().begin(StarterPanel::teeth));
    noted();
    Slider pitch = lookup("#starter-pitch").query();
    slide("starter-pitch", 7);
    slide("starter-depth", 3);
    type("gap", "2.5");
    clickOn("#board");
    for (int k = 2; k >= 0; k--) {
      push(KeyCode.CONTROL, KeyCode.Z);
      assertThat(now()).as("undo to %s", k).isEqualTo(states.get(k));
    }
    assertThat(pitch.getValue()).isEqualTo(5);
    push(KeyCode.CONTROL, KeyCode.Y);
    assertThat(pitch.getValue()).isEqualTo(7);
    assertThat(now()).isEqualTo(states.get(1));
  }

  @Test
  void aFieldUndoesItsOwnTypingAndThenTheBench() {
    TextField gap = lookup("#gap").query();
    clickOn(gap).push(KeyCode.CONTROL, KeyCode.A).write("3").push(KeyCode.ENTER);
    assertThat(bench.setting().get().gap()).isEqualTo(3e-3);
    write("5");
    push(KeyCode.CONTROL, KeyCode.Z);
    assertThat(bench.setting().get().gap()).as("only typing was taken back").isEqualTo(3e-3);
    push(KeyCode.ESCAPE);
    push(KeyCode.CONTROL, KeyCode.Z);
    assertThat(bench.setting().get().gap()).isEqualTo(2e-3);
    assertThat(gap.getText()).isEqualTo("2 mm");
  }

  @Test
  void swapNeverLosesALip() {
    LipDrawing first = bench.drawing().get();
    clickOn("#set-as-B");
    clickOn("#board").push(KeyCode.PERIOD).push(KeyCode.UP);
    LipDrawing second = bench.drawing().get();
    assertThat(second).isNotEqualTo(first);
    clickOn("#swap");
    assertThat(bench.drawing().get()).isEqualTo(first);
    assertThat(bench.kept().get().drawing()).isEqualTo(second);
    clickOn("#swap");
    assertThat(bench.drawing().get()).isEqualTo(second);
    assertThat(bench.kept().get().drawing()).isEqualTo(first);
  }
}
