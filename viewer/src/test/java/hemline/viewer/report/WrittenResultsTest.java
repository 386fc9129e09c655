package hemline.viewer.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.MachineFigure;
import hemline.shared.result.RawFigures;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.result.Termination;
import hemline.shared.section.SectionConditions;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.RunOptions;
import hemline.validation.reference.ReferenceCases;
import hemline.viewer.picture.InventedStudies;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/**
 * Results are for other programs: read back they are what was told, and written again from what was
 * read they are the same text.
 */
class WrittenResultsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  // ---- one section, whole

  /** Every figure with a band of its own, all lists filled. */
  private static SectionResult full() {
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    Map<Figure, Double> scalars = new EnumMap<>(Figure.class);
    for (Figure figure : Figure.values()) {
      double value = Math.sin(1 + figure.ordinal()) / 3;
      figures.put(figure, estimate(value, figure.ordinal()));
      scalars.put(figure, 1.01 * value);
    }
    RawFigures raw = new RawFigures(scalars, List.of(), List.of(), List.of());
    return new SectionResult(
        "lip, \"odd\" = name",
        new SectionConditions(1.7320508e-3, 600.1, -15, 1.0 / 3),
        SolveStatus.UNSTEADY,
        Regime.TRANSITIONAL,
        "sst",
        new SectionFigures(
            figures,
            List.of(estimate(0.6, 1), estimate(0.4, 2)),
            List.of(estimate(0.3, 3)),
            List.of(new SectionFigures.TrappedVortex(estimate(-0.02, 4), 1e-3 / 3, 2e-3))),
        List.of(NoticeKind.FORMER.of("Mind this: 5 < 6 & \"so\".")),
        List.of(
            new GridRun(
                2600,
                90,
                SolveStatus.CONVERGED,
                1e-15,
                1e-3,
                raw,
                1e-4,
                Termination.of(SolveStatus.CONVERGED)),
            new GridRun(
                10400,
                150,
                SolveStatus.UNSTEADY,
                2e-9,
                3e-3,
                raw,
                2e-4,
                Termination.of(SolveStatus.UNSTEADY))));
  }

  private static Estimate estimate(double value, int k) {
    double part = Math.abs(value) / 100;
    Trend trend = Trend.values()[k % Trend.values().length];
    return new Estimate(value, part / (1 + k), part / 7, part / 3, k % 2 * part, trend);
  }

  private static <T> T named(T[] all, Function<T, String> key, String name) {
    return Arrays.stream(all).filter(one -> key.apply(one).equals(name)).findFirst().orElseThrow();
  }

  private static Estimate estimate(JsonNode node) {
    JsonNode band = node.path("band");
    Estimate e =
        new Estimate(
            node.path("value").doubleValue(),
            band.path("numerical").doubleValue(),
            band.path("iteration").doubleValue(),
            band.path("modelLow").doubleValue(),
            band.path("modelHigh").doubleValue(),
            Trend.valueOf(node.path("trend").textValue().toUpperCase(Locale.ROOT)));
    assertThat(node.path("low").doubleValue()).isEqualTo(e.low());
    assertThat(node.path("high").doubleValue()).isEqualTo(e.high());
    return e;
  }

  private static List<Estimate> estimates(JsonNode list) {
    List<Estimate> all = new ArrayList<>();
    list.forEach(one -> all.add(estimate(one)));
    return all;
  }

  private static SectionResult section(JsonNode d) {
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    for (Figure figure : Figure.values()) {
      JsonNode one = d.path("figures").path(figure.key());
      assertThat(one.path("unit").textValue()).isEqualTo(figure.unit());
      figures.put(figure, estimate(one));
    }
    List<SectionFigures.TrappedVortex> vortices = new ArrayList<>();
    for (JsonNode v : d.path("figures").path("trappedVortices")) {
      vortices.add(
          new SectionFigures.TrappedVortex(
              estimate(v.path("strength")), v.path("x").doubleValue(), v.path("y").doubleValue()));
    }
    List<GridRun> grids = new ArrayList<>();
    d.path("grids").forEach(grid -> grids.add(grid(grid)));
    JsonNode s = d.path("section");
    return new SectionResult(
        s.path("profile").textValue(),
        new SectionConditions(
            s.path("gap").doubleValue(),
            s.path("suction").doubleValue(),
            s.path("groundSpeed").doubleValue(),
            s.path("spanwiseSpeed").doubleValue()),
        named(SolveStatus.values(), SolveStatus::key, d.path("status").textValue()),
        named(Regime.values(), Regime::key, d.path("regime").textValue()),
        d.path("closure").textValue(),
        new SectionFigures(
            figures,
            estimates(d.path("figures").path("stageShares")),
            estimates(d.path("figures").path("carryOver")),
            vortices),
        List.of(NoticeKind.FORMER.of(d.path("warnings").path(0).textValue())),
        grids);
  }

  private static GridRun grid(JsonNode grid) {
    Map<Figure, Double> scalars = new EnumMap<>(Figure.class);
    for (Figure figure : Figure.values()) {
      scalars.put(figure, grid.path("figures").path(figure.key()).doubleValue());
    }
    SolveStatus status =
        named(SolveStatus.values(), SolveStatus::key, grid.path("status").textValue());
    return new GridRun(
        grid.path("cells").intValue(),
        grid.path("iterations").intValue(),
        status,
        grid.path("massResidual").doubleValue(),
        grid.path("momentumResidual").doubleValue(),
        new RawFigures(scalars, List.of(), List.of(), List.of()),
        grid.path("leakSpread").doubleValue());
  }

  @Test
  void aResultIsReadAsItWasTold() throws Exception {
    SectionResult told = full();
    Estimate relative = estimate(0.93, 5);
    String text = ResultDocument.text(told, relative, false, 1.5);
    JsonNode document = JSON.readTree(text);
    SectionResult read = section(document);
    assertThat(read).isEqualTo(told);
    assertThat(estimate(document.path("figures").path("relativeLeak"))).isEqualTo(relative);
    double seconds = document.path("seconds").doubleValue();
    assertThat(ResultDocument.text(read, relative, false, seconds)).isEqualTo(text);
  }

  // ---- tables

  /** Cells of comma-separated values by RFC 4180. */
  private static List<List<String>> cells(String csv) {
    List<List<String>> lines = new ArrayList<>();
    List<String> line = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < csv.length(); i++) {
      char c = csv.charAt(i);
      if (quoted && c == '"' && i + 1 < csv.length() && csv.charAt(i + 1) == '"') {
        cell.append('"');
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        line.add(cell.toString());
        cell.setLength(0);
      } else if (csv.startsWith("\r\n", i) && !quoted) {
        line.add(cell.toString());
        cell.setLength(0);
        lines.add(line);
        line = new ArrayList<>();
        i++;
      } else {
        cell.append(c);
      }
    }
    assertThat(quoted || !line.isEmpty() || cell.length() > 0).as("ends in mid-line").isFalse();
    return lines;
  }

  private static String written(List<List<String>> lines) {
    CsvText out = new CsvText(String.join(",", lines.get(0)));
    lines.stream().skip(1).forEach(out::row);
    return out.toString();
  }

  /** A table is as wide in every line as in its head, and the same when its cells are written. */
  private static List<List<String>> table(String csv) {
    List<List<String>> lines = cells(csv);
    assertThat(lines).hasSizeGreaterThan(1);
    assertThat(lines).allSatisfy(line -> assertThat(line).hasSameSizeAs(lines.get(0)));
    // a number may begin with a minus, and a text with the apostrophe it was given
    assertThat(written(lines).replace(",'-", ",-")).isEqualTo(csv);
    return lines;
  }

  private static void assertBand(List<String> line, int from, Estimate e) {
    assertThat(Double.parseDouble(line.get(from))).isEqualTo(e.value());
    assertThat(Double.parseDouble(line.get(from + 1))).isEqualTo(e.low());
    assertThat(Double.parseDouble(line.get(from + 2))).isEqualTo(e.high());
  }

  @Test
  void figuresAreReadAsTheyWereTold() {
    SectionResult told = full();
    List<List<String>> lines = table(FiguresCsv.of(List.of(told)));
    assertThat(lines).hasSize(1 + Figure.values().length + 4);
    for (Figure figure : Figure.values()) {
      List<String> line =
          lines.stream().filter(l -> l.get(8).equals(figure.key())).findFirst().orElseThrow();
      assertThat(line.subList(0, 8))
          .containsExactly(
              told.name(),
              "0.0017320508",
              "600.1",
              "-15.0",
              "0.3333333333333333",
              "unsteady",
              "transitional",
              "sst");
      assertBand(line, 9, told.figures().get(figure));
      assertThat(line.get(12)).isEqualTo(figure.unit());
    }
    List<List<String>> rest = lines.subList(1 + Figure.values().length, lines.size());
    assertThat(rest)
        .extracting(l -> l.get(8))
        .containsExactly("stageShare1", "stageShare2", "carryOver1", "trappedVortexStrength1");
    assertBand(rest.get(1), 9, told.figures().stageShares().get(1));
    assertBand(rest.get(2), 9, told.figures().carryOver().get(0));
    assertBand(rest.get(3), 9, told.figures().trappedVortices().get(0).strength());
  }

  @Test
  void rankingsAreReadAsTheyWereTold() {
    var ranking = InventedStudies.ranking();
    List<List<String>> lines = table(FiguresCsv.of(ranking));
    int k = 1;
    for (var row : ranking.rows()) {
      assertThat(lines.get(k).get(1)).isEqualTo(row.profile());
      assertThat(lines.get(k).get(7)).isEmpty();
      assertBand(lines.get(k), 8, row.relativeLeak());
      k++;
      for (var ratio : row.perGap()) {
        assertThat(Double.parseDouble(lines.get(k).get(7))).isEqualTo(ratio.gap());
        assertBand(lines.get(k), 8, ratio.relativeLeak());
        k++;
      }
    }
    assertThat(lines).hasSize(k);
  }

  // ---- all documents and tables: read and written the same

  private static void assertSame(String document) throws Exception {
    assertThat(JsonText.of((ObjectNode) JSON.readTree(document))).isEqualTo(document);
  }

  private static MachineBalance balance() throws Exception {
    var machine = MachineFile.read(Path.of("..", "profiles", "machines", "silo-wall-crawler.json"));
    return new MachineStudy(new LeakStudy(new FamilySolver(), InventedStudies.LEAKS))
        .of(
            machine,
            List.of(machine.floor().edges().get(0).lip()),
            1.5,
            new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1),
            new CancelToken(),
            ProgressListener.NONE);
  }

  @Test
  void documentsAreWrittenTheSameAgain() throws Exception {
    assertSame(ResultDocument.text(full(), null, true, 1.5));
    assertSame(SweepDocument.text(InventedStudies.sweep(), null, true, 3));
    assertSame(RankingDocument.text(InventedStudies.ranking(), true, 3));
    var checked =
        ReferenceCases.in("cavity").stream().map(c -> InventedChecks.answer(c, true, 0.5)).toList();
    assertThat(checked).isNotEmpty();
    assertSame(CheckDocument.text(checked, true, 3));
    table(CheckCsv.of(checked));
  }

  /** The balance: its documents and all four tables, and in them the figures of the balance. */
  @Test
  void balancesAreReadAsTheyWereTold() throws Exception {
    MachineBalance b = balance();
    String text = BalanceDocument.text(b, "coarse", 3);
    assertSame(text);
    var rest = b.operation().rest();
    assertThat(rest).isNotNull();
    assertThat(estimate(JSON.readTree(text).path("downforce")))
        .isEqualTo(rest.get(MachineFigure.DOWNFORCE));
    List<List<String>> figures = table(BalanceCsv.figures(b));
    List<String> downforce =
        figures.stream()
            .filter(l -> l.get(0).equals("rest") && l.get(1).equals("downforce"))
            .findFirst()
            .orElseThrow();
    assertBand(downforce, 2, rest.get(MachineFigure.DOWNFORCE));
    List<List<String>> trades = table(BalanceCsv.trades(b));
    assertThat(trades).hasSize(1 + b.changes().trades().size() + b.changes().lips().size());
    for (int k = 0; k < b.changes().trades().size(); k++) {
      var force = b.changes().trades().get(k).downforce();
      if (force != null) {
        assertBand(trades.get(k + 1), 3, force);
      }
    }
    List<List<String>> curves = table(BalanceCsv.curves(b));
    double[] pressure = b.operation().leakCurves().get(1).pressure();
    List<List<String>> leaks =
        curves.stream().filter(l -> l.get(0).equals("leaks") && l.get(1).equals("0.75")).toList();
    assertThat(leaks).hasSize(pressure.length);
    for (int k = 0; k < pressure.length; k++) {
      assertThat(Double.parseDouble(leaks.get(k).get(3))).isEqualTo(pressure[k]);
    }
    List<List<String>> sections = table(BalanceCsv.sections(b));
    assertThat(sections).hasSize(1 + b.leakPoints().size());
    assertBand(sections.get(1), 7, b.leakPoints().get(0).discharge());
  }
}
