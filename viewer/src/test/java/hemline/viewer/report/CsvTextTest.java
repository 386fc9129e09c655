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
    assertThat(new CsvText("a").row(name).toString()).startsWith("a\r\n'");
    SectionResult result = InventedStudies.result(name, 1e-3, 600, 0.7);
    assertThat(FiguresCsv.of(List.of(result)).lines().skip(1)).allMatch(l -> l.startsWith("'"));
  }

  @Test
  void cellsAreQuotedWhereTheyMust() {
    assertThat(new CsvText("a,b,c").row("a b", null, "a, \"b\"").row("=a,b", -0.0, 1e-7).toString())
        .isEqualTo("a,b,c\r\na b,,\"a, \"\"b\"\"\"\r\n\"'=a,b\",0.0,1.0E-7\r\n");
  }
}
