package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@code rank} asks and tells. */
final class RankCommandTest extends CommandCase {
  @Test
  void rankTakesAFolderAndTheUsualBaseline() throws Exception {
    assertThat(
            hemline("rank", dir.toString(), "--gaps", "1mm..6mm", "--suction", "600Pa", "--json"))
        .isZero();
    assertThat(studies.asked.get(0)).isEqualTo(List.of("knife fin", "plain flat 8"));
    assertThat(studies.asked.get(1)).isEqualTo("plain flat 8");
    assertThat((List<?>) studies.asked.get(2)).hasSize(6);
    assertThat(document().get("schema").textValue()).isEqualTo("hemline.ranking/1");
    assertThat(err()).isEmpty();
  }

  @Test
  void rankTakesWeightsOrMeasuredHeights() throws Exception {
    List<String> asked = List.of("rank", dir.toString(), "--gaps", "1mm..3mm", "--steps", "3");
    assertThat(rank(asked, "2,1,1")).isZero();
    assertThat(studies.asked.get(3)).isEqualTo(List.of(0.5, 0.25, 0.25));
    assertThat(document().get("gapWeights")).hasSize(6);
    assertThat(document().get("rows").get(0).get("group").textValue()).isEqualTo("less");
    assertThat(document().get("rows").get(0).get("probabilityLess").doubleValue())
        .isGreaterThan(0.999);

    Path heights = dir.resolve("heights.csv");
    Files.writeString(heights, "height (mm)\n1\n1.5\n3\n2\n");
    studies.asked.clear();
    assertThat(rank(asked, heights.toString())).isZero();
    assertThat(studies.asked.get(3)).isEqualTo(List.of(0.375, 0.375, 0.25));

    Files.writeString(heights, "height (mm)\n0.5\n");
    assertThat(rank(asked, heights.toString())).isEqualTo(2);
    assertThat(err()).contains("every height must lie within the gaps, from 1 mm to 3 mm");
    assertThat(rank(asked, "1,2")).isEqualTo(2);
    assertThat(err()).contains("one weight for each of the 3 gaps, got 2");
    assertThat(rank(asked, "1,,2")).isEqualTo(2);
    assertThat(err()).contains("such as 1,2,1");
  }

  private int rank(List<String> asked, String weights) {
    out.reset();
    List<String> words = new ArrayList<>(asked);
    words.addAll(List.of("--suction", "600Pa", "--json", "--gap-weights", weights));
    return hemline(words.toArray(String[]::new));
  }

  @Test
  void rankTellsGroupsSwapsAndCautions() {
    Path folder = dir.resolve("results");
    assertThat(
            hemline(
                "rank",
                lip,
                dir.resolve("knife-fin.json").toString(),
                "--gaps",
                "2mm",
                "--suction",
                "600Pa",
                "--out",
                folder.toString()))
        .isZero();
    assertThat(studies.asked.get(2)).isEqualTo(List.of(0.002));
    assertThat(out())
        .contains("Leak against plain flat 8")
        .containsSubsequence(
            "Leaks less than plain flat 8",
            "two pockets 12",
            "Not distinguishable from plain flat 8",
            "one pocket 8",
            "Leaks more than plain flat 8",
            "A finer mesh may tell: one pocket 8.")
        .doesNotContain("Too uncertain")
        .contains("one pocket 8 leaks less than two pockets 12 from about 2.4 mm")
        .satisfies(text -> assertThat(text.lines()).allMatch(line -> line.length() <= 100))
        .contains("0.898 to 0.922")
        .contains("tether")
        .contains("licensed practice");
    assertThat(folder.resolve("ranking.json")).exists();
    assertThat(folder.resolve("ranking.csv")).exists();
    assertThat(folder.resolve("ranking.svg")).exists();
    assertThat(folder.resolve("gaps.png")).exists();
  }

  @ParameterizedTest
  @ValueSource(strings = {"knife fin", "Knife-Fin", "FILE"})
  void baselineIsANameOrAFile(String name) throws Exception {
    Path other = dir.resolve("elsewhere");
    Files.createDirectories(other);
    Path file = Files.writeString(other.resolve("x.json"), FLAT.formatted("old lip"));
    String given = name.equals("FILE") ? file.toString() : name;
    assertThat(
            hemline(
                "rank",
                dir.toString(),
                "--gaps",
                "2mm",
                "--suction",
                "600Pa",
                "--baseline",
                given,
                "--json"))
        .isZero();
    assertThat(studies.asked.get(1)).isEqualTo(name.equals("FILE") ? "old lip" : "knife fin");
  }

  @Test
  void missingBaselineIsNamedWithTheChoice() throws Exception {
    Files.delete(Path.of(lip));
    assertThat(hemline("rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa")).isEqualTo(2);
    assertThat(err())
        .contains("--baseline")
        .contains("plain flat 8")
        .contains("knife fin")
        .hasLineCount(1);
  }

  @Test
  void oneNameTwiceIsRefused() {
    assertThat(hemline("rank", dir.toString(), lip, "--gaps", "2mm", "--suction", "600Pa"))
        .isEqualTo(2);
    assertThat(err()).contains("plain flat 8").hasLineCount(1);
  }

  @Test
  void rankCutShortKeepsWhatWasSolved() throws Exception {
    studies.patience = 3;
    Path folder = dir.resolve("results");
    int code =
        hemline(
            "rank",
            dir.toString(),
            "--gaps",
            "1mm..6mm",
            "--suction",
            "600Pa",
            "--out",
            folder.toString());
    assertThat(code).isEqualTo(130);
    assertThat(err()).contains("3 of 12 sections").contains("figures.csv");
    assertThat(folder.resolve("figures.csv")).exists();
    assertThat(folder.resolve("ranking.json")).doesNotExist();
    assertThat(out()).isEmpty();
  }
}
