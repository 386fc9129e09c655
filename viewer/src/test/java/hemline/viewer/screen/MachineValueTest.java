package hemline.viewer.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.shared.units.Quantities;
import hemline.viewer.format.LengthUnit;
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

  /** An inch is 25.4 mm by definition (international yard and pound agreement 1959). */
  @Test
  void areasAreInSquareInchesWhereInchesAreInUse() throws Exception {
    Measure area =
        MachineValue.all().stream()
            .filter(v -> v.path().equals("fan.exitArea"))
            .findFirst()
            .orElseThrow()
            .measure();
    assertThat(area.text(20e-4)).isEqualTo("20 cm2");
    LengthUnit.use(LengthUnit.INCH);
    try {
      assertThat(area.text(2 * 0.0254 * 0.0254)).isEqualTo("2 in2");
      assertThat(Quantities.typed(area.kind(), area.unit(), "exit area", "0,5"))
          .isCloseTo(0.5 * 0.0254 * 0.0254, within(1e-12));
      assertThat(LengthUnit.area(20e-6, 3)).isEqualTo("0.031 in\u00b2");
    } finally {
      LengthUnit.use(LengthUnit.MM);
    }
    assertThat(LengthUnit.area(20e-6, 3)).isEqualTo("20 mm\u00b2");
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
