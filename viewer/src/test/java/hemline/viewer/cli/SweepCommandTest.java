package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.viewer.format.Cautions;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What {@code sweep} asks and tells. */
final class SweepCommandTest extends CommandCase {
  @Test
  void sweepTakesExactlyOneRange() throws Exception {
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--json")).isZero();
    assertThat(studies.asked.get(0)).isEqualTo(List.of(0.001, 0.002, 0.003, 0.004, 0.005, 0.006));
    assertThat(document().get("points")).hasSize(6);
    assertThat(hemline("sweep", lip, "--gap", "2mm", "--suction", "100Pa..1kPa", "--steps", "4"))
        .isZero();
    assertThat(studies.asked.get(1)).isEqualTo(List.of(100.0, 400.0, 700.0, 1000.0));
    assertThat(hemline("sweep", lip, "--gap", "2mm", "--suction", "1kPa")).isEqualTo(2);
    assertThat(hemline("sweep", lip, "--gap", "1mm..2mm", "--suction", "1kPa..2kPa")).isEqualTo(2);
    assertThat(hemline("sweep", lip, "--gap", "6mm..2mm", "--suction", "1kPa")).isEqualTo(2);
    String speeds = "--ground-speed=-5m/s..5m/s";
    assertThat(hemline("sweep", lip, "--gap", "2mm..3mm", "--suction", "1kPa", speeds))
        .isEqualTo(2);
  }

  @Test
  void sweepGoesOverGroundSpeedsAndAgainstAFlatLip() throws Exception {
    String speeds = "--ground-speed=-5m/s..5m/s";
    String[] asked = {"sweep", lip, "--gap", "2mm", "--suction", "1kPa", speeds, "--steps", "3"};
    assertThat(hemline(asked)).isZero();
    assertThat(studies.asked).contains(List.of(-5.0, 0.0, 5.0));
    String[] relative = Arrays.copyOf(asked, asked.length + 2);
    relative[asked.length] = "--relative";
    relative[asked.length + 1] = "--json";
    out.reset();
    assertThat(hemline(relative)).isZero();
    assertThat(document().at("/points/2/figures/relativeLeak/value").asDouble()).isEqualTo(0.93);
    relative[asked.length + 1] = "--spanwise-speed=2m/s";
    assertThat(hemline(relative)).isZero();
    assertThat(out()).contains("over flat").contains("0.930 \u00b1 0.020");
    String told = out().replaceAll("\\s+", " ");
    assertThat(told).contains("Before you build", Cautions.SHORT);
  }

  @Test
  void sweepCutShortTellsWhatItHas() throws Exception {
    studies.patience = 2;
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa", "--json"))
        .isEqualTo(130);
    assertThat(document().get("points")).hasSize(2);
    assertThat(document().get("complete").booleanValue()).isFalse();
    assertThat(document().get("gapExponent").isNull()).isTrue();
    assertThat(err()).contains("2 of 6 points");
  }

  @Test
  void unsteadyPointsOfASweepCountWithTheirBands() {
    studies.status = SolveStatus.UNSTEADY;
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa")).isZero();
    studies.status = SolveStatus.FAILED;
    assertThat(hemline("sweep", lip, "--gap", "1mm..6mm", "--suction", "600Pa")).isEqualTo(1);
  }
}
