package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class CommandsTest {
  private static final String FLAT =
      """
      {"schema": "hemline.lip/1", "name": "%s",
       "outline": [[0, 0], [8, 0], [8, 10], [0, 10]], "mountEdge": 2}
      """;
  private static final String DUCT =
      """
      {"schema": "hemline.duct/1", "name": "flat lip in a channel", "lengthUnit": "m",
       "channel": {"from": -10, "to": 40, "height": 8},
       "obstacles": [{"outline": [[0, 8], [0, 1], [4, 1], [4, 8]]}],
       "fluid": {"density": 1, "kinematicViscosity": 0.05}, "drive": {"leakFlow": 1},
       "inlet": "developed", "referenceGap": 1, "closure": "laminar"}
      """;

  @TempDir Path dir;
  private final FakeBench bench = new FakeBench();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private String lip = "";

  @BeforeEach
  void writeLips() throws Exception {
    lip = lip("plain flat 8").toString();
    lip("knife fin");
  }

  private Path lip(String name) throws Exception {
    return Files.writeString(dir.resolve(name.replace(' ', '-') + ".json"), FLAT.formatted(name));
  }

  private int hemline(String... args) {
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            new CancelToken(),
            bench,
            () -> 0L);
    return Commands.execute(desk, file -> {}, args);
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private JsonNode document() throws Exception {
    // one document and nothing else
    try (var parser = new ObjectMapper().createParser(out())) {
      JsonNode node = new ObjectMapper().readTree(parser);
      assertThat(parser.nextToken()).isNull();
      return node;
    }
  }

  @Test
  void runAsksTheSolverWhatTheOptionsSay() {
    int code =
        hemline(
            "run",
            lip,
            "--gap",
            "0.08in",
            "--suction",
            "6mbar",
            "--ground-speed",
            "-54km/h",
            "--spanwise-speed",
            "2m/s",
            "--mesh",
            "fine",
            "--closure",
            "sst",
            "--model-spread",
            "--threads",
            "3",
            "--temperature",
            "40degC");
    assertThat(err()).isEmpty();
    assertThat(code).isZero();
    SealSection section = (SealSection) bench.asked.get(0);
    assertThat(section.gap()).isEqualTo(0.002032);
    assertThat(section.suction()).isEqualTo(600);
    assertThat(section.ground().speed()).isEqualTo(-15);
    assertThat(section.ground().spanwiseSpeed()).isEqualTo(2);
    assertThat(section.fluid().density()).isBetween(1.12, 1.13);
    assertThat(bench.asked.get(1)).isEqualTo(new RunOptions(MeshLevel.FINE, Closure.SST, true, 3));
    assertThat(out()).contains("plain flat 8").contains("leak flow").contains("L/s per m");
  }

  @Test
  void jsonIsOneDocumentAndNothingElse() throws Exception {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--json")).isZero();
    assertThat(document().get("schema").textValue()).isEqualTo("hemline.result/1");
    assertThat(err()).isEmpty();
  }

  @Test
  void relativeLeakIsAddedWhenAskedFor() throws Exception {
    String[] args = {"run", lip, "--gap", "2mm", "--suction", "600Pa", "--relative"};
    assertThat(hemline(args)).isZero();
    assertThat(out()).contains("0.930  \u00b1 0.020");
    out.reset();
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--relative", "--json"))
        .isZero();
    assertThat(document().at("/figures/relativeLeak/low").doubleValue()).isEqualTo(0.91);
  }

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
  void outHoldsTheFiles() throws Exception {
    Path folder = dir.resolve("results");
    hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--out", folder.toString());
    assertThat(folder.resolve("result.json")).exists();
    assertThat(folder.resolve("figures.csv")).exists();
  }

  @ParameterizedTest
  @CsvSource({"CONVERGED, 0", "UNSTEADY, 1", "FAILED, 1", "CANCELLED, 130"})
  void runEndsWithTheCodeOfItsStatus(SolveStatus status, int code) {
    bench.status = status;
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa")).isEqualTo(code);
  }

  @Test
  void cancelledRunPrintsNoDocument() {
    bench.status = SolveStatus.CANCELLED;
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--json")).isEqualTo(130);
    assertThat(out()).isEmpty();
    assertThat(err()).contains("stopped on request");
  }

  @Test
  void ductTakesThePlaceOfTheLip() throws Exception {
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    assertThat(hemline("run", "--duct", duct.toString(), "--json")).isZero();
    DuctSection section = (DuctSection) bench.asked.get(0);
    assertThat(section.name()).isEqualTo("flat lip in a channel");
    assertThat(((RunOptions) bench.asked.get(1)).closure()).isEqualTo(Closure.AUTO);
    assertThat(document().at("/section/profile").textValue()).isEqualTo("flat lip in a channel");
  }

  @Test
  void ductWithLipOptionsIsRefused() throws Exception {
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    assertThat(hemline("run", lip, "--duct", duct.toString(), "--gap", "2mm")).isEqualTo(2);
    assertThat(err().lines()).hasSize(2);
    assertThat(bench.asked).isEmpty();
  }

  @Test
  void everyProblemIsToldAtOnceInOneSentenceEach() {
    int code =
        hemline("run", "nowhere.json", "--gap", "2kPa", "--suction", "fast", "--mesh", "ultra");
    assertThat(code).isEqualTo(2);
    assertThat(out()).isEmpty();
    assertThat(err().lines()).hasSize(4).allMatch(line -> line.startsWith("hemline: "));
    assertThat(err())
        .contains("nowhere.json")
        .contains("--gap")
        .contains("--suction")
        .contains("coarse, medium, fine")
        .doesNotContain("Exception");
    assertThat(bench.asked).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"0mm", "-2mm", "2", "2,5mm", "5m", "1mm..6mm", "NaNmm", "1e400mm", ""})
  void impossibleGapsAreRefused(String gap) {
    assertThat(hemline("run", lip, "--gap", gap, "--suction", "600Pa")).isEqualTo(2);
    assertThat(err().lines()).hasSize(1);
    assertThat(err()).contains("--gap");
  }

  @ParameterizedTest
  @CsvSource({
    "--suction, 200kPa",
    "--ground-speed, 2000m/s",
    "--temperature, 900degC",
    "--threads, 0",
    "--threads, many",
    "--closure, les",
    "--mesh, ''"
  })
  void impossibleOptionsAreRefused(String option, String value) {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", option, value))
        .isEqualTo(2);
    assertThat(err()).contains(option).doesNotContain("Exception");
    assertThat(err().lines()).hasSize(1);
  }

  @Test
  void zeroSuctionWithMovingGroundIsLegal() {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "0", "--ground-speed", "5m/s"))
        .isZero();
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

  @Test
  void runWritesAPage() throws Exception {
    Path page = dir.resolve("page.html");
    String[] asked = {
      "run", lip, "--gap", "2mm", "--suction", "600Pa", "--report", page.toString(), "--json"
    };
    assertThat(hemline(asked)).isZero();
    document();
    assertThat(Files.readString(page)).startsWith("<!DOCTYPE html>").contains("plain flat 8");
    bench.asked.clear();
    asked[7] = dir.toString();
    assertThat(hemline(asked)).isEqualTo(2);
    assertThat(err()).contains("is a folder; name a file").hasLineCount(1);
    asked[7] = dir.resolve("page.html/page.html").toString();
    assertThat(hemline(asked)).isEqualTo(2);
    assertThat(err()).contains("page.html: is a file; name a folder");
    assertThat(bench.asked).isEmpty();
  }

  @Test
  void sweepTakesExactlyOneRange() throws Exception {
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--json")).isZero();
    assertThat(bench.asked.get(0)).isEqualTo(List.of(0.001, 0.002, 0.003, 0.004, 0.005, 0.006));
    assertThat(document().get("points")).hasSize(6);
    assertThat(hemline("sweep", lip, "--gap", "2mm", "--suction", "100Pa..1kPa", "--steps", "4"))
        .isZero();
    assertThat(bench.asked.get(1)).isEqualTo(List.of(100.0, 400.0, 700.0, 1000.0));
    assertThat(hemline("sweep", lip, "--gap", "2mm", "--suction", "1kPa")).isEqualTo(2);
    assertThat(hemline("sweep", lip, "--gap", "1mm..2mm", "--suction", "1kPa..2kPa")).isEqualTo(2);
    assertThat(hemline("sweep", lip, "--gap", "6mm..2mm", "--suction", "1kPa")).isEqualTo(2);
    String speeds = "--ground-speed=-5m/s..5m/s";
    assertThat(hemline("sweep", lip, "--gap", "2mm..3mm", "--suction", "1kPa", speeds))
        .isEqualTo(2);
  }

  @Test
  void sweepGoesOverGroundSpeedsAndAgainstAFlatLip() throws Exception {
    String speeds = "--ground-speed=-5m/s..5m/s";
    String[] asked = {"sweep", lip, "--gap", "2mm", "--suction", "1kPa", speeds, "--steps", "3"};
    assertThat(hemline(asked)).isZero();
    assertThat(bench.asked).contains(List.of(-5.0, 0.0, 5.0));
    String[] relative = Arrays.copyOf(asked, asked.length + 2);
    relative[asked.length] = "--relative";
    relative[asked.length + 1] = "--json";
    out.reset();
    assertThat(hemline(relative)).isZero();
    assertThat(document().at("/points/2/figures/relativeLeak/value").asDouble()).isEqualTo(0.93);
    relative[asked.length + 1] = "--spanwise-speed=2m/s";
    assertThat(hemline(relative)).isZero();
    assertThat(out()).contains("over flat").contains("0.930 \u00b1 0.020");
  }

  @Test
  void sweepCutShortTellsWhatItHas() throws Exception {
    bench.patience = 2;
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--json"))
        .isEqualTo(130);
    assertThat(document().get("points")).hasSize(2);
    assertThat(document().get("complete").booleanValue()).isFalse();
    assertThat(document().get("gapExponent").isNull()).isTrue();
    assertThat(err()).contains("2 of 6 points");
  }

  @Test
  void unsteadyPointsOfASweepCountWithTheirBands() {
    bench.status = SolveStatus.UNSTEADY;
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa")).isZero();
    bench.status = SolveStatus.FAILED;
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa")).isEqualTo(1);
  }

  @Test
  void rankTakesAFolderAndTheUsualBaseline() throws Exception {
    assertThat(
            hemline("rank", dir.toString(), "--gaps", "1mm..6mm", "--suction", "600Pa", "--json"))
        .isZero();
    assertThat(bench.asked.get(0)).isEqualTo(List.of("knife fin", "plain flat 8"));
    assertThat(bench.asked.get(1)).isEqualTo("plain flat 8");
    assertThat((List<?>) bench.asked.get(2)).hasSize(6);
    assertThat(document().get("schema").textValue()).isEqualTo("hemline.ranking/1");
    assertThat(err()).isEmpty();
  }

  @Test
  void rankTakesWeightsOrMeasuredHeights() throws Exception {
    List<String> asked = List.of("rank", dir.toString(), "--gaps", "1mm..3mm", "--steps", "3");
    assertThat(rank(asked, "2,1,1")).isZero();
    assertThat(bench.asked.get(3)).isEqualTo(List.of(0.5, 0.25, 0.25));
    assertThat(document().get("gapWeights")).hasSize(6);
    assertThat(document().get("rows").get(0).get("group").textValue()).isEqualTo("less");
    assertThat(document().get("rows").get(0).get("probabilityLess").doubleValue())
        .isGreaterThan(0.999);

    Path heights = dir.resolve("heights.csv");
    Files.writeString(heights, "height (mm)\n1\n1.5\n3\n2\n");
    bench.asked.clear();
    assertThat(rank(asked, heights.toString())).isZero();
    assertThat(bench.asked.get(3)).isEqualTo(List.of(0.375, 0.375, 0.25));

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
    assertThat(bench.asked.get(2)).isEqualTo(List.of(0.002));
    assertThat(out())
        .contains("Leak against plain flat 8")
        .containsSubsequence(
            "Leaks less than plain flat 8",
            "two pockets 12",
            "Not distinguishable from plain flat 8",
            "one pocket 8",
            "A finer mesh may tell: one pocket 8.",
            "Leaks more than plain flat 8")
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
    assertThat(bench.asked.get(1)).isEqualTo(name.equals("FILE") ? "old lip" : "knife fin");
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
    bench.patience = 3;
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

  /** Each command with its first file and the exit code of its invented answers. */
  @ParameterizedTest
  @CsvSource({
    "run LIP --gap 2mm --suction 600Pa, result.json, figures.csv, 0",
    "sweep LIP --gap 1mm..6mm --suction 600Pa, sweep.json, figures.csv, 0",
    "rank DIR --gaps 1mm..6mm --suction 600Pa, ranking.csv, ranking.json, 0",
    "rank DIR --gaps 1mm..6mm --suction 600Pa, ranking.png, ranking.json, 0",
    "check --fast, check.json, check.html, 0",
    "balance ../profiles/machines/silo-wall-crawler.json, fan-and-leaks.png, balance.json, 0"
  })
  void aFileThatFailsLosesNeitherTheTableNorTheOthers(
      String line, String fails, String stays, int code) throws Exception {
    Path folder = dir.resolve("results");
    List<String> asked = new ArrayList<>();
    for (String word : line.split(" ")) {
      asked.add(word.equals("LIP") ? lip : word.equals("DIR") ? dir.toString() : word);
    }
    asked.addAll(List.of("--out", folder.toString()));
    assertThat(hemline(asked.toArray(String[]::new))).isEqualTo(code);
    String table = out().lines().limit(2).reduce("", String::concat);
    assertThat(table).isNotBlank();
    out.reset();

    Files.delete(folder.resolve(fails));
    Files.createDirectories(folder.resolve(fails).resolve("taken"));
    Files.delete(folder.resolve(stays));
    assertThat(hemline(asked.toArray(String[]::new))).isEqualTo(1);
    assertThat(out().lines().limit(2).reduce("", String::concat)).isEqualTo(table);
    assertThat(err().lines().toList()).hasSize(2);
    assertThat(err()).contains(folder.resolve(fails) + ": cannot be written", "the other");
    assertThat(folder.resolve(stays)).isRegularFile();
  }

  /** Only Linux has a folder that lets root in and takes no file. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderThatTakesNoFileIsToldBeforeSolving() {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--out", "/proc/self"))
        .isEqualTo(2);
    assertThat(err()).contains("/proc/self").hasLineCount(1);
    assertThat(bench.asked).isEmpty();
    assertThat(out()).isEmpty();
  }

  @Test
  void folderIsNotMadeWhenTheInputIsBad() {
    Path folder = dir.resolve("results");
    hemline("run", lip, "--gap", "2", "--suction", "600Pa", "--out", folder.toString());
    assertThat(folder).doesNotExist();
  }

  @Test
  void folderThatIsAFileIsRefused() {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--out", lip))
        .isEqualTo(2);
    assertThat(err()).contains("is a file");
    assertThat(bench.asked).isEmpty();
  }
}
