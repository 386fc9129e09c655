package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.solver.flow.CancelToken;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Runs commands over invented answers in a folder with two lips. */
abstract class CommandCase {
  static final String FLAT =
      """
      {"schema": "hemline.lip/1", "name": "%s",
       "outline": [[0, 0], [8, 0], [8, 10], [0, 10]], "mountEdge": 2}
      """;
  static final String DUCT =
      """
      {"schema": "hemline.duct/1", "name": "flat lip in a channel", "lengthUnit": "m",
       "channel": {"from": -10, "to": 40, "height": 8},
       "obstacles": [{"outline": [[0, 8], [0, 1], [4, 1], [4, 8]]}],
       "fluid": {"density": 1, "kinematicViscosity": 0.05}, "drive": {"leakFlow": 1},
       "inlet": "developed", "referenceGap": 1, "closure": "laminar"}
      """;

  @TempDir Path dir;
  final FakeStudies studies = new FakeStudies();
  final ByteArrayOutputStream out = new ByteArrayOutputStream();
  final ByteArrayOutputStream err = new ByteArrayOutputStream();
  String lip = "";

  /** True for a command that is asked to stop before it begins. */
  boolean stopped;

  @BeforeEach
  void writeLips() throws Exception {
    lip = lip("plain flat 8").toString();
    lip("knife fin");
  }

  Path lip(String name) throws Exception {
    return Files.writeString(dir.resolve(name.replace(' ', '-') + ".json"), FLAT.formatted(name));
  }

  int hemline(String... args) {
    CancelToken cancel = new CancelToken();
    if (stopped) {
      cancel.cancel();
    }
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            cancel,
            studies,
            () -> 0L);
    return Commands.execute(desk, file -> {}, args);
  }

  String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  JsonNode document() throws Exception {
    // one document and nothing else
    try (var parser = new ObjectMapper().createParser(out())) {
      JsonNode node = new ObjectMapper().readTree(parser);
      assertThat(parser.nextToken()).isNull();
      return node;
    }
  }
}
