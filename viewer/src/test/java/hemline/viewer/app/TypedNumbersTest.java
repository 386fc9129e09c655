package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.section.SealSection;
import hemline.solver.grid.MeshLevel;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.edit.LipShape;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Setting;
import hemline.viewer.screen.ShownUnit;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleSupplier;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** What is typed is what is solved, whichever way the cursor leaves the field. */
final class TypedNumbersTest extends BenchJourney {
  private void type(String field, String text) {
    clickOn("#" + field).push(KeyCode.CONTROL, KeyCode.A).write(text);
  }

  private boolean red(String field) {
    return lookup("#" + field).query().getStyleClass().contains("bad");
  }

  private String reason(String field) {
    return lookup("#" + field + "-reason").queryLabeled().getText();
  }

  private Setting setting() {
    return bench.setting().get();
  }

  @Test
  void aGapTypedWithoutEnterIsSolved() throws Exception {
    type("gap", "3mm");
    clickOn("#run");
    until(this::solvedInFull);
    assertThat(bench.shown().get().section().gap()).isEqualTo(3e-3);
    assertThat(lookup("#gap").<TextField>query().getText()).isEqualTo("3 mm");
    type("gap", "2,5");
    push(KeyCode.F5);
    assertThat(setting().gap()).isEqualTo(2.5e-3);
    until(this::solvedInFull);
    assertThat(bench.shown().get().section().gap()).isEqualTo(2.5e-3);
    type("suction", "0.5 kPa");
    push(KeyCode.TAB);
    assertThat(setting().suction()).isEqualTo(500);
    type("temperature", "20");
    clickOn("#board");
    assertThat(setting().temperature()).isCloseTo(293.15, within(1e-9));
    interact(bench::stop);
  }

  @Test
  void lengthsAreInInchesOnceChosen() {
    try {
      push(KeyCode.ALT, KeyCode.V);
      clickOn("Lengths in inches");
      assertThat(lookup("#gap").<TextField>query().getText()).isEqualTo("0.07874 in");
      type("gap", "1/16");
      push(KeyCode.TAB);
      assertThat(setting().gap()).isEqualTo(1.5875e-3);
      assertThat(lookup("#gap").<TextField>query().getText()).isEqualTo("0.0625 in");
      interact(() -> window.benchScreen().selection().set(Set.of(new Corner(0, 1))));
      type("corner-x", "5/16in");
      push(KeyCode.TAB);
      assertThat(corner(1)[0]).isEqualTo(7.9375e-3);
      clickOn("#look-sizes");
      drag(pixel(7.9375e-3, 0)).moveTo(pixel(8.5e-3, 0)).moveTo(pixel(9e-3, 0)).drop();
      assertThat(corner(1)[0] / 25.4e-3 * 64).as("on 1/64 in").isCloseTo(23, within(1e-9));
      interact(() -> window.benchScreen().selection().clear());
      clickOn("#lip-more");
      assertThat(lookup("#grid-step").<TextField>query().getText()).isEqualTo("1/64 in");
      type("coupon-length", "2");
      push(KeyCode.TAB);
      assertThat(window.benchScreen().coupon().get()).isEqualTo(50.8e-3);
    } finally {
      interact(() -> ShownUnit.use(LengthUnit.MM));
    }
    assertThat(lookup("#gap").<TextField>query().getText()).isEqualTo("1.5875 mm");
  }

  @Test
  void anEntryThatCannotBeTakenIsNotSolvedAround() {
    type("gap", "3 parsec");
    clickOn("#run");
    assertThat(bench.running().get()).isFalse();
    assertThat(bench.shown().get()).isNull();
    assertThat(red("gap")).isTrue();
    assertThat(lookup("#gap-reason").query().isVisible()).isTrue();
    assertThat(reason("gap")).contains("parsec", "write a length as 2mm");
    Node gap = lookup("#gap").query();
    assertThat(gap.getScene().getFocusOwner()).isSameAs(gap);
    push(KeyCode.ESCAPE);
    assertThat(lookup("#gap").<TextField>query().getText()).isEqualTo("2 mm");
    assertThat(red("gap")).isFalse();
    assertThat(lookup("#gap-reason").query().isVisible()).isFalse();
  }

  @Test
  void aLipWithFaultsIsNotRunInSilence() {
    interact(() -> bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), -0.02, 0.015)));
    clickOn("#run");
    assertThat(lookup("#run-reason").<Labeled>query().getText()).startsWith("Not run: ");
    assertThat(lookup("#run").queryButton().getTooltip().getText()).startsWith("Cannot run: ");
    interact(() -> lookup("#mesh").<ComboBox<MeshLevel>>query().setValue(MeshLevel.FINE));
    assertThat(bench.options().get().level()).isEqualTo(MeshLevel.FINE);
  }

  /** A wrong entry, then a right one, in ten fields. */
  @Test
  void tenFieldsTakeTheRightEntryAfterTheWrongOne() throws Exception {
    wrongThenRight("gap", "9 m", "1.5", 1.5e-3, () -> setting().gap());
    wrongThenRight("suction", "1e7 Pa", "0,4 kPa", 400, () -> setting().suction());
    wrongThenRight("ground", "5000 m/s", "\u22121", -1, () -> setting().groundSpeed());
    wrongThenRight("spanwise", "2 mm", "0.5", 0.5, () -> setting().spanwiseSpeed());
    wrongThenRight("temperature", "400", "10", 283.15, () -> setting().temperature());
    wrongThenRight("lip-width", "0", "7", 7e-3, () -> box(1) - box(0), "lip-more");
    interact(() -> window.benchScreen().selection().set(Set.of(new Corner(0, 1))));
    wrongThenRight("corner-x", "wide", "7.5mm", 7.5e-3, () -> corner(1)[0]);
    wrongThenRight("corner-y", "", "0.25", 0.25e-3, () -> corner(1)[1]);
    interact(() -> lookup("#corner-dress").queryComboBox().getSelectionModel().select(1));
    wrongThenRight(
        "corner-size",
        "-1",
        "0.75",
        0.75e-3,
        () -> bench.drawing().get().body().roundings().get(0).size());
    interact(
        () -> window.benchScreen().selection().set(Set.of(new Corner(0, 2), new Corner(0, 3))));
    wrongThenRight("edge-length", "0", "8", 8e-3, () -> corner(2)[0] - corner(3)[0]);
    SealSection shown = bench.section();
    push(KeyCode.F5);
    until(this::solvedInFull);
    assertThat(bench.shown().get().section()).isEqualTo(shown);
  }

  private double box(int side) {
    return LipShape.box(bench.drawing().get())[side];
  }

  private double[] corner(int index) {
    var v = bench.drawing().get().body().at(index);
    return new double[] {v.x(), v.y()};
  }

  private void wrongThenRight(
      String field, String wrong, String right, double si, DoubleSupplier value, String... open) {
    for (String button : open) {
      clickOn("#" + button);
    }
    WaitForAsyncUtils.waitForFxEvents();
    double before = value.getAsDouble();
    type(field, wrong);
    if (wrong.isEmpty()) {
      push(KeyCode.BACK_SPACE);
    }
    push(KeyCode.TAB);
    assertThat(red(field)).as(field + " " + wrong).isTrue();
    Node reason = lookup("#" + field + "-reason").query();
    assertThat(reason.isVisible()).as(field).isTrue();
    assertThat(reason(field)).as(field).isNotBlank();
    assertThat(value.getAsDouble()).as(field).isEqualTo(before);
    type(field, right);
    push(KeyCode.TAB);
    assertThat(red(field)).as(field + " " + right).isFalse();
    assertThat(reason.isVisible()).as(field).isFalse();
    assertThat(value.getAsDouble()).as(field).isCloseTo(si, within(1e-12 + 1e-9 * Math.abs(si)));
  }
}
