package hemline.viewer.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import hemline.shared.file.CalibrationFile;
import hemline.shared.file.DuctFile;
import hemline.shared.file.LimitsFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.result.Calibration;
import hemline.shared.rig.RigTemplate;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The published schemas: what is written and shipped fits them, what is damaged does not. */
class SchemaTest extends CommandCase {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path PROFILES = Path.of("..", "profiles");
  private static final String CRAWLER =
      PROFILES.resolve("machines/silo-wall-crawler.json").toString();
  private static final Path LIMITS = Path.of("examples", "leaning-fin-limits.json");
  private static final Path CASES =
      Path.of("..", "validation/src/main/resources/hemline/validation/cases");

  /** Keys whose lack is wrong for what stands elsewhere: other edges, brakes that name an axle. */
  private static final Set<String> FAR = Set.of("/floor/gap", "/axles/0/name", "/axles/1/name");

  /** Reads an input file as the program does. */
  private interface Reader {
    void read(Path file) throws InputException;
  }

  private static JsonSchema schema(String kind) throws IOException {
    try (InputStream in =
        SchemaTest.class.getResourceAsStream("/hemline/schemas/" + kind + ".schema.json")) {
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
    }
  }

  private static List<Path> files(Path folder, int depth) throws IOException {
    try (Stream<Path> files = Files.walk(folder, depth)) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    }
  }

  private void written(String kind, String... words) throws Exception {
    out.reset();
    err.reset();
    assertThat(hemline(words)).as(err()).isZero();
    JsonNode document = document();
    assertThat(document.path("schema").textValue()).isEqualTo("hemline." + kind + "/1");
    assertThat(schema(kind).validate(document)).as(kind).isEmpty();
    // a schema that lets anything through would pass too
    ((ObjectNode) document).remove("schema");
    assertThat(schema(kind).validate(document)).isNotEmpty();
  }

  @Test
  void everyDocumentOfACommandFitsItsSchema() throws Exception {
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    written("result", "run", lip, "--gap", "2mm", "--suction", "600Pa", "--json");
    written("result", "run", lip, "--gap", "2mm", "--suction", "600Pa", "--relative", "--json");
    written("result", "run", lip, "--gap=2mm", "--suction=600Pa", "--sensitivities", "--json");
    written("result", "run", "--duct", duct.toString(), "--json");
    Files.delete(duct);
    written("sweep", "sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--json");
    written(
        "sweep", "sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--relative", "--json");
    written("ranking", "rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa", "--json");
    written("check", "check", "cavity", "--json");
    written("improvement", "improve", lip, "--gaps", "1mm..2mm", "--suction", "600Pa", "--json");
    written("improvement", "improve", lip, "--machine", CRAWLER, "--json");
    written("batch", "batch", lip, "--gaps", "1mm..2mm", "--suctions", "600Pa", "--json");
    String rig = Files.writeString(dir.resolve("rig.csv"), RigTemplate.TEXT).toString();
    written("comparison", "compare", rig, lip, "--json");
    String knife = dir.resolve("knife-fin.json").toString();
    written("testplan", "compare", rig, lip, "--plan", "--against", knife, "--json");
    for (Path machine : files(PROFILES.resolve("machines"), 1)) {
      written("balance", "balance", machine.toString(), "--json");
    }
  }

  @Test
  void everyShippedInputFitsItsSchema() throws Exception {
    for (Path file : files(PROFILES, 1)) {
      fits("lip", file);
    }
    for (Path file : files(PROFILES.resolve("machines"), 1)) {
      fits("machine", file);
    }
    fits("limits", LIMITS);
    int ducts = 0;
    for (Path file : files(CASES, 9)) {
      String kind = JSON.readTree(file.toFile()).path("schema").textValue().split("[./]")[1];
      fits(kind, file);
      ducts += kind.equals("duct") ? 1 : 0;
    }
    assertThat(ducts).isGreaterThan(10);
    Calibration learnt =
        new Calibration(
            "a",
            "b",
            "c.csv",
            true,
            4,
            new Calibration.Line(0.9, 0.01, 0.02, 0.01, -0.5, 0),
            new Calibration.Range(1e-3, 2e-3, 300, 600));
    Path kept = dir.resolve("a.calibration.json");
    CalibrationFile.write(kept, learnt);
    fits("calibration", kept);
    Path again = dir.resolve("again.json");
    LipFile.write(again, LipFile.read(Path.of(lip)));
    fits("lip", again);
  }

  private static void fits(String kind, Path file) throws IOException {
    assertThat(schema(kind).validate(JSON.readTree(file.toFile()))).as("%s", file).isEmpty();
  }

  /** The files of every command, and what the example in Python says of them. */
  @Test
  void everyFileOfEveryCommandFitsItsSchemaAndIsReadByTheExample() throws Exception {
    Path to = dir.resolve("results");
    String machine = PROFILES.resolve("machines/silo-wall-crawler.json").toString();
    List<List<String>> commands =
        List.of(
            List.of("run", lip, "--gap", "2mm", "--suction", "600Pa"),
            List.of("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa"),
            List.of("rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa"),
            List.of("batch", lip, "--gaps", "1mm..2mm", "--suctions", "600Pa"),
            List.of("check", "cavity"),
            List.of("balance", machine));
    for (List<String> command : commands) {
      List<String> words = new ArrayList<>(command);
      words.addAll(List.of("--out", to.toString()));
      assertThat(hemline(words.toArray(String[]::new))).as(err()).isZero();
    }
    List<Path> written = files(to, 9);
    assertThat(written)
        .extracting(file -> file.getFileName().toString())
        .contains("result.json", "sweep.json", "ranking.json", "batch.json", "check.json")
        .contains("balance.json");
    for (Path file : written) {
      fits(JSON.readTree(file.toFile()).path("schema").textValue().split("[./]")[1], file);
    }
    assertThat(python(List.of("examples/read_results.py", to.toString())))
        .contains("plain flat 8, gap 2 mm: converged", "6 sections, medium mesh", "0 failed")
        .contains("leak over that of plain flat 8 at 600 Pa", "gap 6 mm, 600 Pa: ")
        .contains("operating points", "L/s per m (")
        .doesNotContain("Traceback");
  }

  /** What Python answers; its trouble is part of the answer. */
  private static String python(List<String> words) throws Exception {
    List<String> all = new ArrayList<>(List.of("python3"));
    all.addAll(words);
    Process process = new ProcessBuilder(all).redirectErrorStream(true).start();
    return new String(process.getInputStream().readAllBytes(), UTF_8);
  }

  /** Values of a wrong type, keys unknown and keys missing, at every place of the inputs. */
  @Test
  void damagedInputsAreRefusedBySchemaAndProgramAlike() throws Exception {
    copy(PROFILES, dir.resolve("profiles"));
    Path machines = dir.resolve("profiles").resolve("machines");
    int damaged = 0;
    damaged += refused("lip", PROFILES.resolve("vortex-trap-one-pocket.json"), dir, LipFile::load);
    damaged += refused("lip", Path.of(lip), dir, LipFile::load);
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    damaged += refused("duct", duct, dir, DuctFile::read);
    damaged += refused("limits", LIMITS, dir, LimitsFile::read);
    for (Path machine : files(PROFILES.resolve("machines"), 1)) {
      damaged += refused("machine", machine, machines, MachineFile::read);
    }
    assertThat(damaged).isGreaterThan(200);
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path target = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(target);
        } else {
          Files.copy(file, target);
        }
      }
    }
  }

  private static int refused(String kind, Path whole, Path folder, Reader reader) throws Exception {
    JsonSchema schema = schema(kind);
    Path place = folder.resolve("damaged-" + kind + ".json");
    JsonNode sound = JSON.readTree(whole.toFile());
    reader.read(Files.writeString(place, sound.toString()));
    List<JsonNode> damages = new ArrayList<>();
    damage(sound, sound, damages);
    for (JsonNode one : damages) {
      assertThat(schema.validate(one)).as("schema of %s takes %s", kind, one).isNotEmpty();
      Files.writeString(place, one.toString());
      assertThat(refusal(reader, place)).as("reader of %s takes %s", kind, one).isTrue();
    }
    Map<String, JsonNode> lacking = new TreeMap<>();
    lack(sound, sound, "", lacking);
    List<String> taken = new ArrayList<>();
    int missing = 0;
    for (Map.Entry<String, JsonNode> one : lacking.entrySet()) {
      boolean refused = refusal(reader, Files.writeString(place, one.getValue().toString()));
      boolean unfit = !schema.validate(one.getValue()).isEmpty();
      missing += refused && unfit ? 1 : 0;
      if (refused != unfit && !(refused && FAR.contains(one.getKey()))) {
        taken.add((refused ? "schema" : "reader") + " takes it without " + one.getKey());
      }
    }
    assertThat(taken).as(kind).isEmpty();
    String text = sound.toString();
    for (int cut = 1; cut < text.length(); cut += text.length() / 8) {
      Files.writeString(place, text.substring(0, cut));
      assertThat(refusal(reader, place)).as("%s cut at %s", kind, cut).isTrue();
    }
    Files.delete(place);
    return damages.size() + missing;
  }

  private static boolean refusal(Reader reader, Path file) {
    try {
      reader.read(file);
      return false;
    } catch (InputException e) {
      return !e.problems().isEmpty();
    }
  }

  /** Adds copies of the whole document, each with one place damaged. */
  private static void damage(JsonNode whole, JsonNode at, List<JsonNode> damages) {
    if (at instanceof ObjectNode object) {
      object.put("colour", "red");
      damages.add(whole.deepCopy());
      object.remove("colour");
      for (String key : List.copyOf(names(object))) {
        JsonNode before = object.get(key);
        object.set(key, wrong(before));
        damages.add(whole.deepCopy());
        object.set(key, before);
        damage(whole, before, damages);
      }
    } else if (at instanceof ArrayNode array) {
      for (int i = 0; i < Math.min(2, array.size()); i++) {
        JsonNode before = array.get(i);
        array.set(i, wrong(before));
        damages.add(whole.deepCopy());
        array.set(i, before);
        damage(whole, before, damages);
      }
    }
  }

  /** Adds copies of the whole document, each without one key, by the place of that. */
  private static void lack(JsonNode whole, JsonNode at, String place, Map<String, JsonNode> all) {
    if (at instanceof ObjectNode object) {
      for (String key : names(object)) {
        ObjectNode before = object.deepCopy();
        object.remove(key);
        all.put(place + "/" + key, whole.deepCopy());
        object.setAll(before);
        lack(whole, object.get(key), place + "/" + key, all);
      }
    } else {
      for (int i = 0; i < at.size(); i++) {
        lack(whole, at.get(i), place + "/" + i, all);
      }
    }
  }

  private static List<String> names(ObjectNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** A value of another type. */
  private static JsonNode wrong(JsonNode value) {
    return value.isTextual()
        ? JSON.getNodeFactory().numberNode(7)
        : JSON.getNodeFactory().textNode("?");
  }
}
