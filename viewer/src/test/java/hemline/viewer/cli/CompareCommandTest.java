package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.rig.RigTemplate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What {@code compare} tells and keeps, and what uses it. */
final class CompareCommandTest extends CommandCase {
  private String rig = "";

  @BeforeEach
  void writeRig() throws Exception {
    rig = Files.writeString(dir.resolve("rig.csv"), RigTemplate.TEXT).toString();
  }

  @Test
  void aTemplateIsPrinted() throws Exception {
    assertThat(hemline("compare", "--template")).isZero();
    assertThat(out()).isEqualTo(RigTemplate.TEXT);
    assertThat(studies.asked).isEmpty();
  }

  @Test
  void pointsVerdictPatternAndCautionsAreTold() {
    assertThat(hemline("compare", rig, lip)).isZero();
    assertThat(out())
        .contains("plain flat 8 beside ")
        .contains("(invented readings)")
        .contains("C_d measured")
        .contains("(95 %)")
        .contains("Faults of the rig by their pattern")
        .contains("Nothing of this is applied to any figure")
        .contains("Monte Carlo")
        .contains("guards over inlet")
        .contains("may cave in")
        .contains("protect your hearing");
  }

  @Test
  void filesHoldChartTableAndPage() throws Exception {
    Path folder = dir.resolve("told");
    assertThat(hemline("compare", rig, lip, "--out", folder.toString())).isZero();
    assertThat(folder.resolve("comparison.png")).isNotEmptyFile();
    assertThat(Files.readString(folder.resolve("comparison.csv")).lines().count()).isEqualTo(7);
    assertThat(Files.readString(folder.resolve("report.html")))
        .contains("data:image/svg+xml")
        .contains("protect your hearing")
        .doesNotContain("<script", "http:");
    assertThat(Files.readString(folder.resolve("comparison.svg"))).contains("measured");
  }

  @Test
  void aCalibrationIsKeptWithConsentUsedNamedAndLeftOut() throws Exception {
    measured((gap, flow) -> 0.95 * flow);
    Path beside = dir.resolve("plain-flat-8.calibration.json");
    String[] run = {"run", lip, "--gap", "2mm", "--suction", "600Pa", "--json"};
    assertThat(hemline("compare", rig, lip)).isZero();
    assertThat(beside).doesNotExist();
    assertThat(hemline("compare", rig, lip, "--keep-calibration")).isZero();
    assertThat(beside).exists();
    assertThat(out()).contains("--uncalibrated leaves it out");
    out.reset();
    assertThat(hemline(run)).isZero();
    double used = document().at("/figures/dischargeCoefficient/value").asDouble();
    assertThat(out())
        .contains("C_d and leak are calibrated by")
        .contains("rig.csv (invented readings)")
        .doesNotContain(", plus ");
    out.reset();
    String[] raw = java.util.Arrays.copyOf(run, run.length + 1);
    raw[run.length] = "--uncalibrated";
    assertThat(hemline(raw)).isZero();
    double left = document().at("/figures/dischargeCoefficient/value").asDouble();
    assertThat(left).isEqualTo(0.7);
    assertThat(used).isNotEqualTo(left).isBetween(0.5, 0.9);
    assertThat(out()).doesNotContain("calibrated by");
    out.reset();
    String[] sweep = {"sweep", lip, "--gap", "1mm..2mm", "--suction", "600Pa", "--json"};
    err.reset();
    assertThat(hemline(sweep)).isZero();
    assertThat(out()).doesNotContain("calibrated by");
    assertThat(err()).contains("a calibration is kept beside the lip; sweep leaves it out");
    out.reset();
    // folders with calibrations are still folders of lips
    assertThat(hemline("rank", dir.toString(), "--gaps", "2mm", "--suction", "600Pa", "--json"))
        .isZero();
    assertThat(out()).contains("calibrated by");
  }

  @Test
  void aCalibrationOfAnotherOutlineOrADamagedOneIsRefused() throws Exception {
    measured((gap, flow) -> 0.95 * flow);
    Path beside = dir.resolve("plain-flat-8.calibration.json");
    assertThat(hemline("compare", rig, lip, "--keep-calibration")).isZero();
    String kept = Files.readString(beside);
    Files.writeString(
        Path.of(lip),
        FLAT.formatted("plain flat 8").replace("[8, 10]", "[8, 11]").replace("[0, 10]", "[0, 11]"));
    String[] run = {"run", lip, "--gap", "2mm", "--suction", "600Pa"};
    out.reset();
    err.reset();
    assertThat(hemline(run)).isEqualTo(2);
    assertThat(err()).contains("belongs to another outline").hasLineCount(1);
    Files.writeString(beside, kept.replace("\"factor\": 0", "\"factor\": 1"));
    err.reset();
    assertThat(hemline(run)).isEqualTo(2);
    assertThat(err()).contains("changed or damaged");
  }

  /**
   * Writes the rig anew with flows other than those of the studies.
   *
   * @param flow by gap in mm and the flow in L/s that a discharge coefficient of 0.7 gives
   */
  private void measured(DoubleBinaryOperator flow) throws Exception {
    StringBuilder file = new StringBuilder();
    for (String line : RigTemplate.TEXT.split("\n")) {
      String[] cells = line.split(",", -1);
      if (cells[0].equals("lip")) {
        double gap = Double.parseDouble(cells[1]);
        double suction = Double.parseDouble(cells[2]);
        double through = 0.7 * 0.6 * gap * Math.sqrt(2 * suction / 1.19);
        double leak = suction > 400 ? 1.1 : 0.7;
        cells[3] = String.format(Locale.ROOT, "%.2f", flow.applyAsDouble(gap, through) + leak);
        line = String.join(",", cells);
      }
      file.append(line).append('\n');
    }
    Files.writeString(Path.of(rig), file);
  }

  /** A gap 0.3 mm smaller than the shims, and three times the flow. */
  @Test
  void aFaultOfTheRigIsNoCalibration() throws Exception {
    measured((gap, flow) -> flow * (1 - 0.3 / gap));
    assertThat(hemline("compare", rig, lip, "--keep-calibration")).isEqualTo(1);
    assertThat(out()).contains("The pattern is that of one fault: a gap other than");
    assertThat(err()).contains("no calibration was kept. A fault of the rig was found");
    // too far off for a calibration, and still the fault is what is told
    measured((gap, flow) -> 3.5 * flow * (1 - 0.3 / gap));
    err.reset();
    assertThat(hemline("compare", rig, lip, "--keep-calibration")).isEqualTo(1);
    assertThat(err()).contains("no calibration was kept. A fault of the rig was found");
    measured((gap, flow) -> 3 * flow);
    err.reset();
    assertThat(hemline("compare", rig, lip, "--keep-calibration")).isEqualTo(1);
    assertThat(err()).contains("no calibration but a fault; check units");
    assertThat(dir.resolve("plain-flat-8.calibration.json")).doesNotExist();
  }

  @Test
  void aPlanAsksForTheOtherLip() throws Exception {
    String other = dir.resolve("knife-fin.json").toString();
    assertThat(hemline("compare", rig, lip, "--plan")).isEqualTo(2);
    assertThat(err()).contains("--against");
    assertThat(hemline("compare", rig, lip, "--plan", "--against", other, "--json")).isZero();
    assertThat(document().path("schema").textValue()).isEqualTo("hemline.testplan/1");
    assertThat(document().path("points")).hasSize(12);
    assertThat(document().at("/points/0/tells").textValue()).isEqualTo("yes");
  }
}
