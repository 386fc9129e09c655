package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What all commands share: words, help, warnings. */
final class CommandsTest extends CommandCase {
  @Test
  void whatIsToBeKnownOfALipIsSaidWithEveryStudy() throws Exception {
    Path thin =
        Files.writeString(
            dir.resolve("thin.json"),
            FLAT.formatted("thin").replace("[8, 0], [8, 10]", "[0.3, 0], [0.3, 10]"));
    hemline("run", thin.toString(), "--gap", "2mm", "--suction", "600Pa", "--json");
    String warning = document().at("/warnings/0").textValue();
    assertThat(warning).contains("thinner");
    out.reset();
    hemline("sweep", thin.toString(), "--gap", "1mm..2mm", "--suction", "600Pa", "--json");
    assertThat(document().at("/points/1/warnings/0").textValue()).isEqualTo(warning);
    out.reset();
    hemline("rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa", "--json");
    assertThat(document().at("/warnings/0").textValue()).isEqualTo("thin: " + warning);
  }

  @Test
  void unknownWordsGetAHint() {
    assertThat(hemline("run", lip, "--gpa", "2mm")).isEqualTo(2);
    assertThat(err()).contains("--gpa").contains("--gap");
    assertThat(hemline("rnk")).isEqualTo(2);
    assertThat(err()).contains("rnk").contains("did you mean rank?");
    assertThat(hemline("run", lip, lip)).isEqualTo(2);
    assertThat(err()).contains("one argument too many");
    assertThat(hemline("run", lip, "--gap")).isEqualTo(2);
    assertThat(hemline()).isEqualTo(2);
    assertThat(err()).doesNotContain("Exception");
    assertThat(out()).isEmpty();
  }

  @Test
  void helpIsNoError() {
    assertThat(hemline("--help")).isZero();
    assertThat(hemline("rank", "--help")).isZero();
    assertThat(out()).contains("--gaps").contains("Exit codes");
    assertThat(err()).isEmpty();
  }
}
