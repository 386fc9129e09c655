package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.problem.InputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class HeightsFileTest {
  @Test
  void readsHeightsInAnyUnitOfLength() throws Exception {
    assertThat(HeightsFile.parse("# rough wall\nheight (mm)\n2.5\n\n1\n", "h.csv"))
        .containsExactly(2.5e-3, 1e-3);
    assertThat(HeightsFile.parse("height (m)\r\n0.002\r\n", "h.csv")).containsExactly(2e-3);
  }

  @ParameterizedTest
  @CsvSource({
    "'2.5|1', 'h.csv, line 1'",
    "'height (mm)|2.5|-1', 'h.csv, line 3'",
    "'height (mm)|2.5|two', 'h.csv, line 3'",
    "'height (mm)|NaN', 'h.csv, line 2'",
    "'height (kg)|2.5', 'h.csv, line 1'",
    "'height (mm)', 'h.csv'",
    "'', 'h.csv'"
  })
  void refusesInASentenceThatSaysWhere(String text, String place) {
    assertThatThrownBy(() -> HeightsFile.parse(text.replace('|', '\n'), "h.csv"))
        .isInstanceOfSatisfying(
            InputException.class, e -> assertThat(e.problems().get(0).place()).startsWith(place));
  }
}
