package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.RigTemplate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every command owes: its exit codes, one document, an end on request, plain sentences. */
class CommandContractTest extends CommandCase {
  private static final String CRAWLER =
      Path.of("..", "profiles", "machines", "silo-wall-crawler.json").toString();

  /** Every member passes these. */
  abstract class Contract {
    /** A question that is answered. */
    abstract List<String> good();

    /** The same with something wrong in it, each time another. */
    abstract List<List<String>> bad();

    final List<String> with(String... more) {
      List<String> words = new ArrayList<>(good());
      words.addAll(Arrays.asList(more));
      return words;
    }

    final int call(List<String> words) {
      out.reset();
      err.reset();
      return hemline(words.toArray(String[]::new));
    }

    @Test
    void aGoodQuestionIsAnsweredTheSameEachTime() {
      assertThat(call(good())).isZero();
      assertThat(err()).isEmpty();
      String first = out();
      assertThat(call(good())).isZero();
      assertThat(out()).isEqualTo(first);
    }

    @Test
    void badQuestionsEndWithTwoAndASentenceEach() {
      for (List<String> words : bad()) {
        assertThat(call(words)).as("%s", words).isEqualTo(2);
        assertThat(out()).as("%s", words).isEmpty();
        assertThat(err().lines())
            .as("%s", words)
            .isNotEmpty()
            .allMatch(line -> line.startsWith("hemline: "))
            .allMatch(line -> line.length() > 25);
        assertThat(err()).doesNotContain("Exception", "\tat ", "java.");
      }
      assertThat(studies.asked).isEmpty();
    }

    @Test
    void anUnknownOptionIsNamed() {
      assertThat(call(with("--colour", "red"))).isEqualTo(2);
      assertThat(err()).contains("--colour").hasLineCount(1);
      assertThat(out()).isEmpty();
    }

    @Test
    void helpIsAnAnswer() {
      assertThat(call(List.of(good().get(0), "--help"))).isZero();
      assertThat(out()).startsWith("Usage: hemline " + good().get(0) + " ");
      assertThat(err()).isEmpty();
    }
  }

  /** Commands that solve. */
  abstract class Solving extends Contract {
    /** Schema of the document. */
    abstract String schema();

    @Test
    void jsonIsExactlyOneDocument() throws Exception {
      assertThat(call(with("--json"))).isZero();
      JsonNode document = document();
      assertThat(document.path("schema").textValue()).isEqualTo(schema());
      assertThat(err()).isEmpty();
    }

    @Test
    void filesGoWhereTheyAreAskedTo() throws Exception {
      Path folder = dir.resolve("results");
      assertThat(call(with("--out", folder.toString()))).isZero();
      try (var files = Files.list(folder)) {
        assertThat(files).isNotEmpty();
      }
      assertThat(call(with("--out", lip))).isEqualTo(2);
      assertThat(err()).contains("is a file").hasLineCount(1);
    }

    /** What fails ends with one, what is stopped with 130, and each is said. */
    @ParameterizedTest
    @ValueSource(strings = {"FAILED, 1", "CANCELLED, 130"})
    void theEndIsToldByItsCode(String text) throws Exception {
      String[] cell = text.split(", ");
      SolveStatus status = SolveStatus.valueOf(cell[0]);
      fail(status);
      assertThat(call(good())).isEqualTo(Integer.parseInt(cell[1]));
      assertThat(out() + err()).isNotBlank().doesNotContain("Exception", "\tat ");
      if (status == SolveStatus.CANCELLED) {
        fail(status);
        assertThat(call(with("--json"))).isEqualTo(130);
        assertThat(err()).startsWith("hemline: ");
        if (!out().isEmpty()) {
          assertThat(document().path("schema").textValue()).isEqualTo(schema());
        }
      }
    }

    void fail(SolveStatus status) {
      studies.status = status;
      studies.patience = status == SolveStatus.CANCELLED ? 1 : Integer.MAX_VALUE;
      studies.checkError = status == SolveStatus.FAILED ? 9 : 0;
    }
  }

  @Nested
  class Run extends Solving {
    @Override
    List<String> good() {
      return List.of("run", lip, "--gap", "2mm", "--suction", "600Pa");
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("run"),
          List.of("run", "nowhere.json", "--gap", "2mm", "--suction", "600Pa"),
          List.of("run", lip, "--gap", "2", "--suction", "600Pa"),
          List.of("run", lip, "--gap", "2mm"),
          List.of("run", lip, "--gap", "2mm", "--suction", "600Pa", "--mesh", "ultra"));
    }

    @Override
    String schema() {
      return "hemline.result/1";
    }

    @Override
    void fail(SolveStatus status) {
      super.fail(status);
      studies.patience = Integer.MAX_VALUE;
    }
  }

  @Nested
  class Sweep extends Solving {
    @Override
    List<String> good() {
      return List.of("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa");
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("sweep"),
          List.of("sweep", "nowhere.json", "--gap", "1mm..6mm", "--suction", "600Pa"),
          List.of("sweep", lip, "--gap", "2mm", "--suction", "600Pa"),
          List.of("sweep", lip, "--gap", "6mm..1mm", "--suction", "600Pa"),
          List.of("sweep", lip, "--gap", "1mm..6mm", "--suction", "fast"));
    }

    @Override
    String schema() {
      return "hemline.sweep/1";
    }
  }

  @Nested
  class Rank extends Solving {
    @Override
    List<String> good() {
      return List.of("rank", dir.toString(), "--gaps", "1mm..6mm", "--suction", "600Pa");
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("rank"),
          List.of("rank", dir.resolve("nowhere").toString(), "--gaps", "2mm", "--suction", "1kPa"),
          List.of("rank", dir.toString(), "--gaps", "2", "--suction", "600Pa"),
          List.of("rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa", "--baseline", "x"),
          List.of("rank", dir.toString(), lip, "--gaps", "2mm", "--suction", "600Pa"));
    }

    @Override
    String schema() {
      return "hemline.ranking/1";
    }

    @Override
    void fail(SolveStatus status) {
      // the invented ranking is whole; only what was stopped is left out of it
      if (status == SolveStatus.CANCELLED) {
        super.fail(status);
      } else {
        studies.status = status;
      }
    }
  }

  @Nested
  class Batch extends Solving {
    private Path table = dir;

    @BeforeEach
    void writeTable() throws Exception {
      table =
          Files.writeString(dir.resolve("bad.csv"), "lip, gap (mm), suction (Pa)\nno.json, 1, 6\n");
    }

    @Override
    List<String> good() {
      return List.of("batch", dir.toString(), "--gaps", "1mm..2mm", "--suctions", "600Pa");
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("batch"),
          List.of(
              "batch", dir.resolve("nowhere").toString(), "--gaps", "2mm", "--suctions", "1kPa"),
          List.of("batch", dir.toString(), "--gaps", "2", "--suctions", "600Pa"),
          List.of("batch", dir.toString(), "--gaps", "2mm"),
          List.of("batch", dir.resolve("nowhere.csv").toString()),
          List.of("batch", table.toString()),
          List.of("batch", table.toString(), "--gaps", "2mm"));
    }

    @Override
    String schema() {
      return "hemline.batch/1";
    }
  }

  @Nested
  class Check extends Solving {
    @Override
    List<String> good() {
      return List.of("check", "cavity");
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("check", "nowhere"),
          List.of("check", "cavity/re1"),
          List.of("check", "cavity", "--threads", "none"));
    }

    @Override
    String schema() {
      return "hemline.check/1";
    }
  }

  @Nested
  class Compare extends Solving {
    private String rig(String text) {
      try {
        return Files.writeString(dir.resolve("rig" + text.hashCode() + ".csv"), text).toString();
      } catch (java.io.IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }

    @Override
    List<String> good() {
      return List.of("compare", rig(RigTemplate.TEXT), lip);
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("compare"),
          List.of("compare", rig(RigTemplate.TEXT)),
          List.of("compare", "nowhere.csv", lip),
          List.of("compare", lip, lip),
          List.of("compare", rig(RigTemplate.TEXT.replace("lip,1,300", "lip,1,-300")), lip),
          List.of("compare", rig(RigTemplate.TEXT), lip, "--matters", "0"));
    }

    @Override
    String schema() {
      return "hemline.comparison/1";
    }
  }

  @Nested
  class Improve extends Solving {
    @Override
    List<String> good() {
      return improve("--out", dir.resolve("improved").toString());
    }

    private List<String> improve(String... more) {
      List<String> words =
          new ArrayList<>(List.of("improve", lip, "--gaps", "2mm", "--suction", "600Pa"));
      words.addAll(List.of(more));
      return words;
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("improve"),
          List.of("improve", lip, "--suction", "600Pa"),
          improve("--family", "wings"),
          improve("--family", "teeth", "--number", "0"),
          improve("--family", "teeth", "--number", "12"),
          improve("--family", "flat", "--width", "0mm"),
          improve("--family", "flat", "--width", "100m"),
          improve("--family", "flat", "--wall", "20mm"),
          improve("--family", "flat", "--vary", "width=5mm..5mm"),
          improve("--family", "flat", "--vary", "pitch=2mm..5mm"),
          improve("--family", "flat", "--vary", "width"),
          improve("--family", "flat", "--corners", "1"),
          improve("--vary", "width=2mm..5mm"),
          improve("--corners", "9"),
          improve("--corners", "1,1"),
          improve("--reach", "0mm"),
          improve("--evaluations", "1"),
          improve("--evaluations", "100000"),
          improve("--minutes", "0"),
          improve("--mesh", "coarse"),
          improve("--gap-weights", "1,2"),
          improve("--ground-speed", "0m/s,0m/s"),
          improve("--ground-speed", "0m/s,4m/s", "--speed-weights", "1"),
          improve("--ground-speed", "0m/s,4m/s", "--speed-weights", "0,0"),
          improve("--symmetric", "--family", "hook"),
          improve("--limits", "nowhere.json"),
          improve("--limits", lip),
          improve("--machine", "nowhere.json"),
          improve("--machine", CRAWLER),
          List.of("improve", lip, "--machine", lip));
    }

    @Test
    void downforceOfAMachineIsAGoal() throws Exception {
      String to = dir.resolve("held").toString();
      assertThat(call(List.of("improve", lip, "--machine", CRAWLER, "--out", to))).isZero();
      assertThat(out()).contains("of the downforce of plain flat 8", "downforce, N");
      assertThat(Path.of(to, "trades.png")).isNotEmptyFile();
      assertThat(Files.readString(Path.of(to, "improvement.json")))
          .contains("\"goal\": \"downforce\"", "\"machine\": \"silo-wall inspection crawler\"");
    }

    @Test
    void severalSpeedsAreToldWithTheirShares() {
      assertThat(call(improve("--ground-speed", "0m/s,4m/s", "--speed-weights", "1,3"))).isZero();
      assertThat(out()).contains("ground at 0 m/s (25 %), 4 m/s (75 %)");
    }

    @Test
    void theWorkedExamplesCanBeTyped() throws Exception {
      List<String> commands =
          Files.readAllLines(Path.of("examples", "better-lips.md")).stream()
              .filter(line -> line.startsWith("hemline improve"))
              .map(line -> line.replace("viewer/", "").replace("profiles/", "../profiles/"))
              .toList();
      assertThat(commands).hasSize(6);
      for (String command : commands) {
        List<String> words = new ArrayList<>(List.of(command.split(" ")));
        words.remove(0);
        words.add("--json");
        assertThat(call(words)).as(command).isZero();
      }
    }

    /** Limits of a file count where no option says otherwise; what is wrong names its place. */
    @Test
    void limitsComeFromAFile() throws Exception {
      Path limits = dir.resolve("limits.json");
      String head = "{\"schema\": \"hemline.limits/1\", ";
      Files.writeString(limits, head + "\"family\": \"pockets\", \"number\": 1}");
      assertThat(call(improve("--limits", limits.toString()))).isZero();
      assertThat(out()).contains("opening 0.8 to 8");
      assertThat(call(improve("--limits", limits.toString(), "--family", "flat"))).isZero();
      assertThat(out()).contains("width 0.8 to 8");
      for (String wrong :
          List.of(
              "\"corners\": []",
              "\"corners\": [0, 77]",
              "\"family\": \"wings\"",
              "\"family\": \"teeth\", \"number\": 12",
              "\"family\": \"teeth\", \"number\": 900000000",
              "\"width\": \"1e300mm\"",
              "\"width\": \"0.01mm\"",
              "\"wall\": \"999mm\"",
              "\"family\": \"teeth\", \"vary\": {\"\": \"1mm..2mm\"}",
              "\"family\": \"nose\", \"symmetric\": true")) {
        Files.writeString(limits, head + wrong + "}");
        assertThat(call(improve("--limits", limits.toString()))).as(wrong).isEqualTo(2);
        assertThat(err()).as(wrong).contains("limits.json").hasLineCount(1);
      }
    }

    @Override
    String schema() {
      return "hemline.improvement/1";
    }

    @Override
    @Test
    void filesGoWhereTheyAreAskedTo() throws Exception {
      assertThat(call(good())).isZero();
      Path folder = dir.resolve("improved");
      for (String file :
          List.of("improvement.json", "search.csv", "search.png", "report.html", "ranking.svg")) {
        assertThat(folder.resolve(file)).isNotEmptyFile();
      }
      try (var files = Files.list(folder)) {
        List<String> names = files.map(f -> f.getFileName().toString()).toList();
        assertThat(names).anyMatch(n -> n.endsWith(".stl")).contains("plain-flat-8.json");
      }
      assertThat(call(improve("--out", lip))).isEqualTo(2);
      assertThat(err()).contains("is a file").hasLineCount(1);
    }
  }

  @Nested
  class Balance extends Solving {
    @Override
    List<String> good() {
      return List.of("balance", CRAWLER);
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("balance"),
          List.of("balance", "nowhere.json"),
          List.of("balance", lip),
          List.of("balance", CRAWLER, "--fan-speed", "fast"));
    }

    @Override
    String schema() {
      return "hemline.balance/1";
    }
  }

  @Nested
  class Convert extends Contract {
    private String target() {
      return dir.resolve("made.svg").toString();
    }

    @Override
    List<String> good() {
      return List.of("convert", lip, target());
    }

    @Override
    List<List<String>> bad() {
      return List.of(
          List.of("convert"),
          List.of("convert", lip),
          List.of("convert", "nowhere.json", target()),
          List.of("convert", lip, dir.resolve("made.odt").toString()),
          List.of("convert", lip, dir.resolve("made.stl").toString(), "--length", "-3mm"));
    }

    /** Asked to stop before it writes, it leaves nothing, and a file that was there stays. */
    @Test
    void aStopLeavesNothingBehind() throws Exception {
      stopped = true;
      assertThat(call(good())).isEqualTo(130);
      assertThat(out()).isEmpty();
      assertThat(err()).startsWith("hemline: stopped on request").hasLineCount(1);
      assertThat(Path.of(target())).doesNotExist();
      Files.writeString(Path.of(target()), "kept");
      assertThat(call(good())).isEqualTo(130);
      assertThat(Path.of(target())).hasContent("kept");
      stopped = false;
      assertThat(call(good())).isZero();
      assertThat(Files.readString(Path.of(target()))).startsWith("<?xml");
    }
  }
}
