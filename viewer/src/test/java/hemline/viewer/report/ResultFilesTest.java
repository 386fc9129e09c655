package hemline.viewer.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.shared.problem.InputException;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.solver.flow.FlowField;
import hemline.solver.study.Ranking;
import hemline.solver.study.SweepResult;
import hemline.viewer.picture.InventedChannel;
import hemline.viewer.picture.InventedStudies;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

final class ResultFilesTest {

  private static SectionResult result(Estimate leak, double massResidual) {
    RawFigures raw =
        new RawFigures(Map.of(Figure.LEAK_FLOW, leak.value()), List.of(), List.of(), List.of());
    return new SectionResult(
        "lip, \"odd\" name",
        new SectionConditions(2e-3, 600, -15, 3),
        SolveStatus.CONVERGED,
        Regime.TURBULENT,
        "sst",
        new SectionFigures(
            Map.of(Figure.LEAK_FLOW, leak),
            List.of(leak),
            List.of(leak),
            List.of(new SectionFigures.TrappedVortex(leak, 1e-3, 2e-3))),
        List.of(NoticeKind.FORMER.of("Mind this.")),
        List.of(
            new GridRun(2600, 90, SolveStatus.CONVERGED, 1e-15, 1e-3, raw, 0),
            new GridRun(10400, 150, SolveStatus.CONVERGED, massResidual, 1e-3, raw, 0)));
  }

  private static void noNumberIsBad(JsonNode node) {
    if (node.isNumber()) {
      assertThat(node.doubleValue()).isFinite();
    }
    node.forEach(ResultFilesTest::noNumberIsBad);
  }

  private static JsonNode read(String text) throws Exception {
    assertThat(text).doesNotContain("NaN").doesNotContain("Infinity").endsWith("}\n");
    JsonNode node = new ObjectMapper().readTree(text);
    noNumberIsBad(node);
    return node;
  }

  private static void brackets(JsonNode band) {
    assertThat(band.get("low").doubleValue()).isLessThanOrEqualTo(band.get("value").doubleValue());
    assertThat(band.get("high").doubleValue())
        .isGreaterThanOrEqualTo(band.get("value").doubleValue());
  }

  @Test
  void resultDocumentKeepsTheContract() throws Exception {
    Estimate leak = new Estimate(0.0431, 0.0004, 0, 0.0003, 0, Trend.MONOTONE);
    JsonNode document = read(ResultDocument.text(result(leak, 2e-15), null, false, 1.5));
    assertThat(document.get("schema").textValue()).isEqualTo("hemline.result/1");
    assertThat(document.at("/section/profile").textValue()).isEqualTo("lip, \"odd\" name");
    assertThat(document.at("/section/gap").doubleValue()).isEqualTo(0.002);
    assertThat(document.at("/section/groundSpeed").doubleValue()).isEqualTo(-15);
    assertThat(document.at("/section/spanwiseSpeed").doubleValue()).isEqualTo(3);
    assertThat(document.get("status").textValue()).isEqualTo("converged");
    assertThat(document.get("regime").textValue()).isEqualTo("turbulent");
    assertThat(document.get("closure").textValue()).isEqualTo("sst");
    assertThat(document.at("/figures/leakFlow/low").doubleValue()).isCloseTo(0.0426, within(1e-12));
    assertThat(document.at("/figures/leakFlow/unit").textValue()).isEqualTo("m2/s");
    assertThat(document.at("/figures/stageShares")).hasSize(1);
    assertThat(document.at("/figures/trappedVortices/0/strength/value").doubleValue())
        .isEqualTo(0.0431);
    assertThat(document.at("/figures/trappedVortices/0/y").doubleValue()).isEqualTo(0.002);
    assertThat(document.at("/warnings/0").textValue()).isEqualTo("Mind this.");
    assertThat(document.at("/grids/1/cells").intValue()).isEqualTo(10400);
    assertThat(document.get("iterations").intValue()).isEqualTo(240);
    assertThat(document.get("massResidual").doubleValue()).isEqualTo(2e-15);
    assertThat(document.get("seconds").doubleValue()).isEqualTo(1.5);
  }

  @Test
  void bandAlwaysHoldsTheValue() throws Exception {
    for (long seed = 1; seed <= 300; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-12, 12));
      Estimate leak =
          new Estimate(
              value,
              Math.abs(value) * Math.pow(10, random.nextInt(-20, 1)),
              random.nextBoolean() ? 0 : Math.abs(value) * 1e-17,
              0,
              0,
              Trend.UNKNOWN);
      brackets(read(ResultDocument.text(result(leak, 0), leak, true, 0)).at("/figures/leakFlow"));
    }
  }

  @Test
  void missingNumbersAreNull() throws Exception {
    JsonNode document =
        read(ResultDocument.text(result(Estimate.exact(1), Double.NaN), null, true, Double.NaN));
    assertThat(document.get("massResidual").isNull()).isTrue();
    assertThat(document.get("seconds").isNull()).isTrue();
    assertThat(document.at("/section/kind").textValue()).isEqualTo("duct");
  }

  @Test
  void sweepDocumentHoldsFullResults() throws Exception {
    JsonNode document = read(SweepDocument.text(InventedStudies.sweep(), null, true, 3));
    assertThat(document.get("schema").textValue()).isEqualTo("hemline.sweep/1");
    assertThat(document.get("points")).hasSize(6);
    assertThat(document.at("/points/0/schema").textValue()).isEqualTo("hemline.result/1");
    brackets(document.get("gapExponent"));
    JsonNode without = read(SweepDocument.text(new SweepResult(List.of(), null), null, false, 0));
    assertThat(without.get("gapExponent").isNull()).isTrue();
    assertThat(without.get("complete").booleanValue()).isFalse();
  }

  @Test
  void rankingDocumentKeepsTheContract() throws Exception {
    Ranking ranking = InventedStudies.ranking();
    JsonNode document = read(RankingDocument.text(ranking, true, 3));
    assertThat(document.get("schema").textValue()).isEqualTo("hemline.ranking/1");
    assertThat(document.get("baseline").textValue()).isEqualTo("plain flat 8");
    assertThat(document.get("rows")).hasSize(ranking.rows().size());
    JsonNode third = document.at("/rows/2");
    assertThat(third.get("profile").textValue()).isEqualTo("two pockets 12");
    assertThat(third.get("rank").intValue()).isEqualTo(3);
    assertThat(third.at("/tiedWith/0").textValue()).isEqualTo("one pocket 8");
    brackets(third.get("relativeLeak"));
    assertThat(third.get("perGap")).hasSize(6);
    assertThat(third.at("/perGap/5/gap").doubleValue()).isEqualTo(0.006);
    assertThat(third.at("/perGap/5/status").textValue()).isEqualTo("unsteady");
    brackets(third.at("/perGap/5/relativeLeak"));
    assertThat(document.at("/crossings/0/profiles/1").textValue()).isEqualTo("one pocket 8");
    assertThat(document.at("/crossings/0/gap").doubleValue()).isEqualTo(0.0024);
    assertThat(document.at("/possibleCrossings/0/profiles/0").textValue())
        .isEqualTo("plain flat 8");
  }

  @Test
  void tablesAreOneLineAFigureAndQuoteNames() {
    Estimate leak = new Estimate(0.0431, 0.0004, 0, 0, 0, Trend.MONOTONE);
    List<String> lines = FiguresCsv.of(List.of(result(leak, 0))).lines().toList();
    assertThat(lines).hasSize(5);
    assertThat(lines.get(1))
        .startsWith(
            "\"lip, \"\"odd\"\""
                + " name\",0.002,600.0,-15.0,3.0,converged,turbulent,sst,leakFlow,0.0431,")
        .endsWith(",m2/s");
    List<String> ranking = FiguresCsv.of(InventedStudies.ranking()).lines().toList();
    assertThat(ranking).hasSize(1 + 7 * 7);
    assertThat(ranking.get(1))
        .startsWith("1,inclined teeth against the leak,plain flat 8,,less,1.0,1.0,,0.91,");
  }

  @Test
  void fieldFileHoldsEveryRectangleAndCorner() throws Exception {
    FlowField field = InventedChannel.field();
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(FieldFile.text(field))));
    Element piece = (Element) document.getElementsByTagName("Piece").item(0);
    assertThat(piece.getAttribute("Extent")).isEqualTo("0 32 0 16 0 0");
    int rectangles = 32 * 16;
    assertThat(numbers(document, "velocity")).hasSize(3 * rectangles);
    assertThat(numbers(document, "eddyViscosity")).hasSize(rectangles);
    assertThat(numbers(document, "streamfunction")).hasSize(33 * 17);
    assertThat(numbers(document, "x")).hasSize(33);
    assertThat(numbers(document, "y")).hasSize(17);
    String[] fluid = numbers(document, "fluid");
    String[] pressure = numbers(document, "pressure");
    assertThat(fluid).hasSize(rectangles);
    for (int k = 0; k < rectangles; k++) {
      int i = k % 32;
      int j = k / 32;
      boolean block = i >= 12 && i < 20 && j >= 4;
      assertThat(fluid[k]).isEqualTo(block ? "0" : "1");
      assertThat(Double.parseDouble(pressure[k]))
          .isCloseTo(block ? 0 : -10 * (0.25 * i + 0.125), within(1e-5));
    }
  }

  private static String[] numbers(Document document, String name) {
    var arrays = document.getElementsByTagName("DataArray");
    for (int k = 0; k < arrays.getLength(); k++) {
      Element array = (Element) arrays.item(k);
      if (array.getAttribute("Name").equals(name)) {
        return array.getTextContent().strip().split("\\s+");
      }
    }
    throw new AssertionError("no array " + name);
  }

  @Test
  void filesAppearWholeAndLeaveNothingBeside(@TempDir Path dir) throws Exception {
    ResultFolder folder = ResultFolder.at(dir.resolve("a/b"));
    folder.write("one.txt", "first");
    folder.write("one.txt", "second");
    folder.write("deep/two.txt", "x");
    assertThat(dir.resolve("a/b/one.txt")).hasContent("second");
    assertThat(folder.problems()).isEmpty();
    assertThat(folder.kept()).isEqualTo(3);
    try (Stream<Path> all = Files.walk(dir)) {
      assertThat(all.filter(Files::isRegularFile).map(p -> p.getFileName().toString()))
          .containsExactlyInAnyOrder("one.txt", "two.txt");
    }
  }

  @Test
  void folderThatCannotBeIsAClearProblem(@TempDir Path dir) throws Exception {
    Path file = Files.writeString(dir.resolve("taken"), "x");
    assertThatThrownBy(() -> ResultFolder.at(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("is a file");
    assertThatThrownBy(() -> ResultFolder.at(file.resolve("below")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("cannot be made");
  }

  @Test
  void aFileThatFailsTakesNoOtherWithIt(@TempDir Path dir) throws Exception {
    ResultFolder folder = ResultFolder.at(dir);
    Files.createDirectories(dir.resolve("table.csv/inside"));
    folder.write("table.csv", "x");
    SectionFiles.picture(
        folder,
        "chart",
        () -> {
          throw new UnsatisfiedLinkError("libfreetype.so.6");
        });
    folder.write("result.json", "{}");
    assertThat(dir.resolve("result.json")).hasContent("{}");
    assertThat(folder.kept()).isEqualTo(1);
    assertThat(folder.problems()).hasSize(3);
    assertThat(folder.problems().get(0).toString()).contains("chart.png", "libfreetype.so.6");
    assertThat(folder.problems().get(2).toString()).contains("table.csv: cannot be written");
  }

  /** Only Linux has a folder that lets root in and takes no file. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderThatTakesNoFileIsToldAtOnce() {
    assertThatThrownBy(() -> ResultFolder.at(Path.of("/proc/self")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("/proc/self: no file can be written here");
  }

  @Test
  void namesBecomeFileNames() {
    assertThat(ResultFolder.fileName("Plain flat 8 (new)/..")).isEqualTo("plain-flat-8-new");
    assertThat(ResultFolder.fileName("Dichtlippe groß")).isEqualTo("dichtlippe-groß");
    assertThat(ResultFolder.fileName("///")).isEqualTo("unnamed");
    String longest = ResultFolder.fileName("\u5507".repeat(80));
    assertThat(longest).isEqualTo("\u5507".repeat(40));
    assertThat(ResultFolder.fileNames(List.of("a b", "A-b", "a", "a b!")))
        .containsExactly("a-b", "a-b-2", "a", "a-b-3");
  }
}
