package hemline.viewer.report;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SectionResult;
import hemline.viewer.picture.InventedStudies;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class CsvTextTest {
  @ParameterizedTest
  @ValueSource(strings = {"=1+2", "@SUM(A1)", "+1", "-2+3", "\t=1"})
  void aNameNeverStartsAFormula(String name) {
    assertThat(CsvText.cell(name)).startsWith("'");
    SectionResult result = InventedStudies.result(name, 1e-3, 600, 0.7);
    assertThat(FiguresCsv.of(List.of(result)).lines().skip(1)).allMatch(l -> l.startsWith("'"));
  }

  @Test
  void cellsAreQuotedWhereTheyMust() {
    assertThat(CsvText.cell("a b")).isEqualTo("a b");
    assertThat(CsvText.cell("")).isEmpty();
    assertThat(CsvText.cell("a, \"b\"")).isEqualTo("\"a, \"\"b\"\"\"");
    assertThat(CsvText.cell("=a,b")).isEqualTo("\"'=a,b\"");
  }
}
