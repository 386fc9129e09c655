package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.InputException;
import hemline.shared.section.DuctSection;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a duct cannot be, bound by bound, each with the sentence that tells it. */
class DuctRefusalsTest {
  private static final String CHANNEL =
      """
      {"schema": "hemline.duct/1", "lengthUnit": "m",
       "channel": {"from": -10, "to": 40, "height": 8},
       "obstacles": [{"outline": [[0, 8], [0, 1], [4, 1], [4, 8]]}],
       "fluid": {"density": 1, "kinematicViscosity": 0.05},
       "drive": {"leakFlow": 1}, "inlet": "developed",
       "stations": {"upstream": -10, "downstream": 40}}
      """;

  private static DuctSection read(String from, String to) throws InputException {
    assertThat(CHANNEL).contains(from);
    return DuctFile.parse(CHANNEL.replace(from, to), "d.json");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"from\": -10 | \"from\": 40 | must be larger than from",
        "\"height\": 8 | \"height\": 0 | must be positive",
        "\"developed\" | \"flat\" | must be \"developed\" or \"uniform\"",
        "\"density\": 1 | \"density\": 0 | must be positive",
        "0.05} | 0} | must be positive",
        "0.05} | -1} | must be positive",
        "\"upstream\": -10 | \"upstream\": -10.1 | runs from -10 m to 40 m",
        "\"downstream\": 40 | \"downstream\": 40.1 | runs from -10 m to 40 m",
        "\"upstream\": -10 | \"upstream\": 40 | must be larger than upstream",
        "\"stations\" | \"referenceGap\": 0, \"stations\" | must be positive",
        "\"stations\" | \"closure\": \"les\", \"stations\" | must be one of",
        // beyond the ends, by a billionth of the length and more
        "[0, 8], [0, 1], [4, 1] | [-10.0000002, 8], [-10.0000002, 1], [4, 1] | at -10 m and 40 m",
        "[4, 1], [4, 8] | [40.0000002, 1], [40.0000002, 8] | at -10 m and 40 m",
        "[0, 8], [0, 1] | [0, 8.0000002], [0, 1] | at 0 and 8 m",
        "[0, 1], [4, 1] | [0, -0.0000002], [4, 1] | at 0 and 8 m",
        "[0, 1], [4, 1] | [0, 0], [4, 1] | leaves no passage",
      })
  void isRefused(String from, String to, String told) {
    InputException fault = catchThrowableOfType(InputException.class, () -> read(from, to));
    assertThat(fault).as("%s", to).isNotNull();
    assertThat(fault.problems()).as("%s", to).anyMatch(p -> p.toString().contains(told));
    assertThat(fault.problems()).allMatch(p -> p.toString().startsWith("d.json"));
  }

  /** On the bound itself and within the slack of rounding. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"upstream\": -10 | \"upstream\": 39.9",
        "[0, 8], [0, 1], [4, 1] | [-10.00000001, 8], [-10.00000001, 1], [4, 1]",
        "[4, 1], [4, 8] | [40.00000001, 1], [40.00000001, 8]",
        "[0, 8], [0, 1] | [0, 8.00000001], [0, 1]",
        "[0, 1], [4, 1] | [0, 0.001], [4, 1]",
        "\"stations\" | \"referenceGap\": 0.001, \"stations\"",
      })
  void isTaken(String from, String to) throws InputException {
    assertThat(read(from, to).obstacles()).hasSize(1);
  }

  /** Least way past an obstacle to a wall that it does not stand on; the height without any. */
  @Test
  void theLeastClearanceIsTheReferenceGap() throws InputException {
    assertThat(DuctFile.parse(CHANNEL, "d.json").gap()).isEqualTo(1);
    assertThat(read("[0, 8], [0, 1], [4, 1], [4, 8]", "[0, 5], [0, 3], [4, 3], [4, 5]").gap())
        .isCloseTo(3, within(1e-12));
    assertThat(read("[0, 8], [0, 1], [4, 1], [4, 8]", "[0, 7.5], [0, 3], [4, 3], [4, 7.5]").gap())
        .isCloseTo(0.5, within(1e-12));
    assertThat(read("{\"outline\": [[0, 8], [0, 1], [4, 1], [4, 8]]}", "").gap()).isEqualTo(8);
  }
}
