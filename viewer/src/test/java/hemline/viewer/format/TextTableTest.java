package hemline.viewer.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.viewer.format.TextTable.Lean;
import org.junit.jupiter.api.Test;

final class TextTableTest {

  @Test
  void columnsLineUpAndEndWithoutBlanks() {
    TextTable table = new TextTable(Lean.RIGHT, Lean.LEFT, Lean.LEFT);
    table.row("rank", "lip", "leak").row("1", "plain flat", "1").row("12", "Γ", "");
    assertThat(table.lines("> "))
        .containsExactly("> rank  lip         leak", ">    1  plain flat  1", ">   12  Γ");
  }

  @Test
  void tooManyCellsAreRefused() {
    TextTable table = new TextTable(Lean.LEFT);
    assertThatThrownBy(() -> table.row("a", "b")).isInstanceOf(IllegalArgumentException.class);
  }
}
