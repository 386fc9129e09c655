package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.solver.flow.CancelToken;
import hemline.solver.refine.FamilySolver;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published measurements as readings of a rig (their sources stand in the files) go through the
 * command, with a solve of each point, and get the verdict that {@code check} gives the same rows
 * under the same flow model.
 */
final class PublishedRigsTest {
  private static final Path VALIDATION = Path.of("..", "validation");
  private static final Path RIGS = VALIDATION.resolve("rigs");

  /** Slots of one edge have friction on one side only in the table; see the rig file. */
  private static final double FRICTION = 0.06;

  @TempDir Path dir;

  private JsonNode compared(Path rig, String lip, String closure) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            System.err,
            false,
            new CancelToken(),
            new SolverStudies(new FamilySolver(), false),
            () -> 0L);
    int code =
        Commands.execute(
            desk,
            file -> {},
            "compare",
            rig.toString(),
            RIGS.resolve(lip + ".json").toString(),
            "--mesh=coarse",
            "--closure=" + closure,
            "--model-spread",
            "--matters=20",
            "--keep=" + dir.resolve("kept"),
            "--json");
    assertThat(code).isZero();
    return new ObjectMapper().readTree(out.toString(StandardCharsets.UTF_8));
  }

  /** Reference and verdict of check by width over gap. */
  private static Map<Double, String[]> checked(String cases, String name) throws Exception {
    Map<Double, String[]> rows = new TreeMap<>();
    for (String line : Files.readAllLines(VALIDATION.resolve("catalogue.csv"))) {
      String[] cells = line.split(",", -1);
      if (cells[0].startsWith(cases + "/" + name)) {
        rows.put(Double.parseDouble(cells[0].substring(cells[0].lastIndexOf('-') + 1)), cells);
      }
    }
    return rows;
  }

  @ParameterizedTest
  @CsvSource({
    "fin-over-wall, fin, width-, 0.004, 5, sa",
    "thick-slot, thick-slot, length-, 0.008, 3, sst"
  })
  void theVerdictIsThatOfTheCheck(
      String rig, String cases, String name, double width, int points, String closure)
      throws Exception {
    Map<Double, String[]> rows = checked(cases, name);
    JsonNode document = compared(RIGS.resolve(rig + ".csv"), rig, closure);
    assertThat(document.path("points")).hasSize(points).hasSize(rows.size());
    for (JsonNode point : document.path("points")) {
      String[] row = rows.get(width / point.path("gap").asDouble());
      double reference = Double.parseDouble(row[6]);
      assertThat(point.path("measured").asDouble())
          .isEqualTo(reference, within(reference * (cases.equals("fin") ? 1e-3 : FRICTION)));
      assertThat(point.path("verdict").textValue())
          .as(row[0])
          .isEqualTo(row[17].equals("pass") ? "agrees" : "differs");
    }
    assertThat(document.path("verdict").textValue()).isEqualTo("agrees");

    // readings that the check would not pass either
    JsonNode moved = compared(moved(rig, 1.4), rig, closure);
    assertThat(moved.path("verdict").textValue()).isEqualTo("differs");
  }

  private Path moved(String rig, double times) throws Exception {
    List<String> lines = Files.readAllLines(RIGS.resolve(rig + ".csv"));
    return Files.writeString(
        dir.resolve("moved.csv"),
        lines.stream()
            .map(
                line -> {
                  String[] cells = line.split(",", -1);
                  if (cells[0].equals("lip")) {
                    double flow = times * Double.parseDouble(cells[3]);
                    cells[3] = String.format(Locale.ROOT, "%.2f", flow);
                  }
                  return String.join(",", cells);
                })
            .collect(Collectors.joining("\n")));
  }
}
