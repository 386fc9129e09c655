package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import hemline.shared.file.DuctFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The published schemas: what is written and shipped fits them, what is damaged does not. */
class SchemaTest extends CommandCase {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path PROFILES = Path.of("..", "profiles");
  private static final Path CASES =
      Path.of("..", "validation/src/main/resources/hemline/validation/cases");

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
    written("result", "run", "--duct", duct.toString(), "--json");
    Files.delete(duct);
    written("sweep", "sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--json");
    written(
        "sweep", "sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--relative", "--json");
    written("ranking", "rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa", "--json");
    written("check", "check", "cavity", "--json");
    written("batch", "batch", lip, "--gaps", "1mm..2mm", "--suctions", "600Pa", "--json");
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
    int ducts = 0;
    for (Path file : files(CASES, 9)) {
      String kind = JSON.readTree(file.toFile()).path("schema").textValue().split("[./]")[1];
      fits(kind, file);
      ducts += kind.equals("duct") ? 1 : 0;
    }
    assertThat(ducts).isGreaterThan(10);
    Path again = dir.resolve("again.json");
    LipFile.write(again, LipFile.read(Path.of(lip)));
    fits("lip", again);
  }

  private static void fits(String kind, Path file) throws IOException {
    assertThat(schema(kind).validate(JSON.readTree(file.toFile()))).as("%s", file).isEmpty();
  }

  /** Values of a wrong type, keys unknown and keys missing, at every place of three inputs. */
  @Test
  void damagedInputsAreRefusedBySchemaAndProgramAlike() throws Exception {
    copy(PROFILES, dir.resolve("profiles"));
    Path machines = dir.resolve("profiles").resolve("machines");
    int damaged = 0;
    damaged += refused("lip", PROFILES.resolve("vortex-trap-one-pocket.json"), dir, LipFile::load);
    damaged += refused("lip", Path.of(lip), dir, LipFile::load);
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    damaged += refused("duct", duct, dir, DuctFile::read);
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
    Files.delete(place);
    return damages.size();
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
