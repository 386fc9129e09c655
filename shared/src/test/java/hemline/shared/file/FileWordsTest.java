package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.problem.Spelling;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines and words of the messages on files. */
class FileWordsTest {
  @TempDir Path dir;

  private interface Reading {
    void run() throws InputException;
  }

  private static List<Problem> problems(Reading reading) {
    InputException e = catchThrowableOfType(InputException.class, reading::run);
    assertThat(e).isNotNull();
    return e.problems();
  }

  private static List<Problem> fan(String text) {
    return problems(() -> FanCurveFile.parse(text, "fan.csv"));
  }

  /** Every fault of a fan curve stands with its line, remarks and blank lines counted. */
  @Test
  void linesOfAFanCurve() {
    String head = "# a remark\n\nflow (L/s), static pressure (Pa)\n";
    List<Problem> two = fan(head + "0, 500\n20, x\n30\n");
    assertThat(two)
        .extracting(Problem::place)
        .containsExactly("fan.csv, line 5", "fan.csv, line 6");
    assertThat(two.get(0).text())
        .isEqualTo("\"x\" is no number for the column \"static pressure\"; write it as 12.5");
    assertThat(two.get(1).text()).isEqualTo("has 1 values, but the head line names 2 columns");
    List<Problem> unit = fan("# remark\nflow (L/s), static pressure (kg)\n0, 500\n");
    assertThat(unit).hasSize(1);
    assertThat(unit.get(0).place()).isEqualTo("fan.csv, line 2");
    assertThat(unit.get(0).text()).startsWith("column 2: ");
    List<Problem> name = fan("flow (L/s), pressure (Pa)\n0, 500\n");
    assertThat(name.get(0).place()).isEqualTo("fan.csv, line 1");
    assertThat(name.get(0).text()).startsWith("column 2 must be \"static pressure\"");
    assertThat(fan("flow (L/s)\n0\n").get(0).text()).startsWith("the head line must name two or");
    assertThat(fan("# nothing\n").get(0).text()).startsWith("the head line is missing");
    // no more than nine are told at once
    assertThat(fan(head + "x, 1\n".repeat(30))).hasSize(9);
  }

  @Test
  void heightsAndTheirLines() throws Exception {
    Path file = Files.writeString(dir.resolve("h.csv"), "# ground\nheight (mm)\n2\n\n3.5\n0.1");
    assertThat(HeightsFile.read(file)).containsExactly(0.002, 0.0035, 0.0001);
    List<Problem> bad = problems(() -> HeightsFile.parse("height (cm)\n1\n0\n-1\nx\n", "h.csv"));
    assertThat(bad)
        .extracting(Problem::place)
        .containsExactly("h.csv, line 3", "h.csv, line 4", "h.csv, line 5");
    assertThat(problems(() -> HeightsFile.parse("height (mm)\n" + "x\n".repeat(20), "h.csv")))
        .hasSize(8);
    assertThat(problems(() -> HeightsFile.parse("height (mm)\n", "h.csv")).get(0).code())
        .isEqualTo("heights.none");
    assertThat(problems(() -> HeightsFile.parse("2\n3\n", "h.csv")).get(0).code())
        .isEqualTo("heights.head");
  }

  /** Within half of the letters, whatever their case; the nearest of several. */
  @Test
  void nearestWords() {
    List<String> known = List.of("gap", "height", "weight");
    assertThat(Spelling.nearest("heigth", known)).isEqualTo("height");
    assertThat(Spelling.nearest("WEIGHT", known)).isEqualTo("weight");
    assertThat(Spelling.nearest("gab", known)).isEqualTo("gap");
    assertThat(Spelling.nearest("gxx", known)).isNull();
    // three of six letters changed is just near enough, four is not
    assertThat(Spelling.nearest("heixxx", known)).isEqualTo("height");
    assertThat(Spelling.nearest("hexxxx", known)).isNull();
    assertThat(Spelling.nearest("x".repeat(61), known)).isNull();
    assertThat(Spelling.nearest("x".repeat(60), List.of("x".repeat(61)))).isNotNull();
  }

  @Test
  void whatAValueIsCalled() {
    assertThat(new JsonItem.Text(1, "a").noun()).isEqualTo("a text");
    assertThat(new JsonItem.Number(1, "2").noun()).isEqualTo("a number");
    assertThat(new JsonItem.Truth(1, true).noun()).isEqualTo("true");
    assertThat(new JsonItem.Truth(1, false).noun()).isEqualTo("false");
    assertThat(new JsonItem.Nothing(1).noun()).isEqualTo("null");
    assertThat(new JsonItem.Array(1, List.of()).noun()).isEqualTo("a list");
    assertThat(new JsonItem.Members(1, new LinkedHashMap<>(), Map.of()).noun())
        .isEqualTo("a group of keys");
  }
}
