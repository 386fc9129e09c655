package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every group of every JSON format, with something in it that does not belong there. */
class KeysTest {
  private static final Path PROFILES = Path.of("..", "profiles");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String LIP =
      """
      {"schema": "hemline.lip/1", "name": "a", "family": "flat", "notes": "n", "source": "s",
       "invented": true, "lengthUnit": "mm",
       "outline": [[0, 0], [8, 0], [8, 10], [0, 10]], "mountEdge": 2,
       "roundings": [{"vertex": 0, "radius": 0.3}, {"vertex": 1, "chamfer": 0.3}],
       "detached": [[[10, 1], [12, 1], [12, 5]]]}
      """;
  private static final String DUCT =
      """
      {"schema": "hemline.duct/1", "name": "d", "notes": "n", "lengthUnit": "m",
       "channel": {"from": -10, "to": 40, "height": 8},
       "obstacles": [{"outline": [[0, 8], [0, 1], [4, 1], [4, 8]]}],
       "fluid": {"density": 1, "kinematicViscosity": 0.05},
       "drive": {"leakFlow": 1}, "inlet": "developed",
       "ground": {"speed": 0, "spanwiseSpeed": 0, "frictionless": false},
       "ceiling": {"speed": 0, "spanwiseSpeed": 0, "frictionless": false},
       "stations": {"upstream": -10, "downstream": 40},
       "referenceGap": 1, "closure": "laminar"}
      """;
  private static final String CAVITY =
      """
      {"schema": "hemline.duct/1", "lengthUnit": "m",
       "channel": {"from": 0, "to": 1, "height": 1},
       "walls": {"left": {"speed": 0.5}, "right": {"speed": 1}}, "closure": "sst"}
      """;

  private interface Reader {
    Object read(String text) throws InputException;
  }

  private static Reader reader(String kind) {
    return switch (kind) {
      case "lip" -> text -> LipFile.load(text, "a.json");
      case "duct", "cavity" -> text -> DuctFile.parse(text, "a.json");
      default -> text -> MachineFile.parse(text, "a.json", PROFILES.resolve("machines"));
    };
  }

  private static JsonNode sample(String kind) throws IOException {
    return JSON.readTree(
        switch (kind) {
          case "lip" -> LIP;
          case "duct" -> DUCT;
          case "cavity" -> CAVITY;
          default -> Files.readString(PROFILES.resolve("machines").resolve(kind + ".json"));
        });
  }

  private static List<ObjectNode> groups(JsonNode node, List<ObjectNode> found) {
    if (node instanceof ObjectNode group) {
      found.add(group);
    }
    node.forEach(child -> groups(child, found));
    return found;
  }

  private static InputException fault(Reader reader, JsonNode document) {
    return catchThrowableOfType(
        InputException.class, () -> reader.read(JSON.writeValueAsString(document)));
  }

  private static void assertTold(InputException told, String key, String what) {
    assertThat(told).as("%s %s", what, key).isNotNull();
    assertThat(told.problems())
        .as("%s %s", what, key)
        .anyMatch(p -> p.toString().contains("a.json") && p.toString().contains(key));
  }

  @ParameterizedTest
  @ValueSource(strings = {"lip", "duct", "cavity", "silo-wall-crawler", "hill-climb-cart"})
  void keysThatDoNotBelongAreNamed(String kind) throws Exception {
    Reader reader = reader(kind);
    JsonNode document = sample(kind);
    reader.read(JSON.writeValueAsString(document));
    List<ObjectNode> groups = groups(document, new ArrayList<>());
    assertThat(groups).hasSizeGreaterThan(2);
    for (ObjectNode group : groups) {
      group.put("colour", 3);
      assertTold(fault(reader, document), "colour", group.toString());
      group.remove("colour");
    }
  }

  /** A value of another kind is told by its key, wherever it stands. */
  @ParameterizedTest
  @ValueSource(strings = {"lip", "duct", "cavity", "silo-wall-crawler", "hill-climb-cart"})
  void valuesOfAnotherKindAreNamed(String kind) throws Exception {
    Reader reader = reader(kind);
    JsonNode document = sample(kind);
    for (ObjectNode group : groups(document, new ArrayList<>())) {
      List<String> keys = new ArrayList<>();
      for (Map.Entry<String, JsonNode> member : group.properties()) {
        keys.add(member.getKey());
      }
      for (String key : keys) {
        JsonNode was = group.get(key);
        JsonNode wrong =
            was instanceof ArrayNode || was instanceof ObjectNode
                ? JSON.getNodeFactory().numberNode(7)
                : JSON.getNodeFactory().arrayNode().add("x");
        group.set(key, wrong);
        assertTold(fault(reader, document), key, group.toString());
        group.set(key, was);
      }
    }
  }
}
