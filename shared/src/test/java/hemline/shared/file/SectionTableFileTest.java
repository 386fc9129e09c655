package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.problem.InputException;
import hemline.shared.section.GroundMotion;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SectionTableFileTest {
  private static final Path FOLDER = Path.of("lips");

  @Test
  void readsColumnsInAnyOrderWithTheirUnits() throws Exception {
    String text =
        "# made up\r\nsuction (kPa), lip, Ground speed (mm/s), gap (mm)\r\n"
            + "0.6, flat.json, 250, 2\n\n-1,sub/knife.svg,0,0.5\n";
    assertThat(SectionTableFile.parse(text, FOLDER, "t.csv"))
        .containsExactly(
            new SectionTableFile.Row(
                FOLDER.resolve("flat.json"), 2e-3, 600, new GroundMotion(0.25, 0)),
            new SectionTableFile.Row(
                FOLDER.resolve("sub/knife.svg"), 5e-4, -1000, GroundMotion.STILL));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "lip, gap (mm); line 1: lacks the column \"suction\"",
        "lip, gap (mm), suction (Pa), gap (m); twice",
        "lip, gap (Pa), suction (Pa); line 1: gap",
        "lip, gap, suction (Pa); line 1: gap",
        "lip, gap (mm), suction (Pa), colour; no column \"colour\"",
        "lip, gap (mm), suction (Pa)|flat.json, 1; line 2: has 2 cells",
        "lip, gap (mm), suction (Pa)|, 1, 600; lacks the file of the lip",
        "lip, gap (mm), suction (Pa)|flat.json, wide, 600; \"wide\" is no number",
        "lip, gap (mm), suction (Pa)|flat.json, 0, 600; a gap must be above 0",
        "lip, gap (mm), suction (Pa)|flat.json, 1, 2e5; cannot exceed",
        "lip, gap (mm), suction (Pa)|flat.json, NaN, 600; is no number",
        "lip, gap (mm), suction (Pa); holds no sections",
        "# nothing; holds no sections",
      })
  void refusesInASentence(String text, String told) {
    assertThatThrownBy(() -> SectionTableFile.parse(text.replace('|', '\n'), FOLDER, "t.csv"))
        .isInstanceOfSatisfying(
            InputException.class,
            e -> assertThat(e.problems().get(0).toString()).contains("t.csv").contains(told));
  }
}
