package hemline.viewer.screen;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The values that the window offers are those of the published form of machine files. */
final class MachineValueTest {
  /** Left to the file: what names other files, shapes, or belongs to what it describes. */
  private static final List<String> LEFT_TO_THE_FILE =
      List.of(
          "fan.curveSpeed",
          "fan.curveDensity",
          "fan.efficiency",
          "fan.height",
          "valve.dischargeCoefficient",
          "valve.movingMass",
          "valve.dampingRatio",
          "groundStep.height",
          "groundStep.length",
          "brakes.torque",
          "brakes.wheelRadius",
          "contactAllowance");

  @Test
  void everyValueIsOneOfTheFormAndNoneIsForgotten() throws Exception {
    JsonNode schema;
    try (InputStream in = getClass().getResourceAsStream("/hemline/schemas/machine.schema.json")) {
      schema = new ObjectMapper().readTree(in);
    }
    List<String> known = new ArrayList<>();
    gather("", schema, known);
    List<String> offered = MachineValue.all().stream().map(MachineValue::path).toList();
    assertThat(known).containsAll(offered);
    List<String> all = new ArrayList<>(offered);
    all.addAll(LEFT_TO_THE_FILE);
    assertThat(all).containsExactlyInAnyOrderElementsOf(known);
    assertThat(MachineValue.all()).allSatisfy(v -> assertThat(v.help()).isNotBlank());
  }

  /** Keys of quantities and numbers; lists of other leaks and edges are left to the file. */
  private static void gather(String path, JsonNode node, List<String> known) {
    String lead = path.isEmpty() ? "" : path + ".";
    node.path("properties")
        .properties()
        .forEach(
            e -> {
              JsonNode inner = e.getValue();
              String at = lead + e.getKey();
              boolean quantity =
                  inner.path("description").asText().startsWith("a quantity")
                      || inner.path("type").asText().equals("number");
              if (quantity) {
                known.add(at);
              } else if (e.getKey().equals("axles") && inner.has("items") && path.isEmpty()) {
                gather(at + ".*", inner.path("items"), known);
              } else {
                gather(at, inner, known);
              }
            });
  }
}
