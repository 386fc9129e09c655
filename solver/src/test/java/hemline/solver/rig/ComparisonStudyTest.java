package hemline.solver.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.Expansibility;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigFile;
import hemline.shared.section.SectionConditions;
import hemline.solver.rig.InventedRig.Quality;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a rig says beside predictions. */
final class ComparisonStudyTest {
  private static final String HEAD =
      """
      what,gap (mm),suction (Pa),flow (L/s),lip length (mm),temperature (degC),barometer (hPa),box volume (L),time (s)
      accuracy,0.01,1,,1,1,1,0.5,
      accuracy %,,0.5,1,,,,,1
      resolution,0.01,0.1,0.01,,,,,
      rig,,,,1000,15,1013.25,50,
      """;

  private static Rig rig(String lines) throws Exception {
    return RigFile.parse(HEAD + lines, "rig.csv", null, false);
  }

  private static List<Prediction> predictions(Rig rig, double value, double model) {
    return ComparisonStudy.points(rig).stream()
        .map(
            p ->
                new Prediction(
                    p.gap(),
                    p.suction(),
                    SolveStatus.CONVERGED,
                    new Estimate(value, 0.01 * value, 0, model, model, Estimate.Trend.MONOTONE),
                    List.of()))
        .toList();
  }

  /** By hand: 1 m of lip, 2 mm, 612.5 Pa in standard air of 1.225 kg/m³: the jet has 31.62 m/s. */
  @Test
  void theCoefficientIsFlowOverGapAndJet() throws Exception {
    Rig rig = rig("lip,2,612.5,44.27,,,,,\n");
    Comparison c = ComparisonStudy.of(rig, predictions(rig, 0.7, 0), 0.1);
    double jet = Math.sqrt(2 * 612.5 / Air.STANDARD.density());
    double expansion = Expansibility.factor(612.5, Air.STANDARD_PRESSURE);
    double byHand = 44.27e-3 / (2e-3 * jet * expansion);
    assertThat(c.points().get(0).measured().value()).isEqualTo(byHand, within(1e-9));
    assertThat(byHand).isEqualTo(0.7000 / 0.9968, within(5e-4));
    assertThat(c.points().get(0).error().value()).isEqualTo(0.7 - byHand, within(1e-9));
    // gap 0.01 and half of 0.01 mm of 2 mm, meter 1 %, gauge 0.5 % and 1 Pa by half, length 0.1 %
    double limits =
        Math.sqrt(
            0.5 * 0.5 + 0.25 * 0.25 + 1 + 0.25 * 0.25 + 0.08 * 0.08 + 0.1 * 0.1 + 0.17 * 0.17);
    assertThat(c.points().get(0).measured().halfWidth() / byHand)
        .isEqualTo(1.96 * 0.01 * limits / Math.sqrt(3), within(2e-4));
    assertThat(c.points().get(0).largest()).isEqualTo(Source.FLOW);
    assertThat(c.drawn()).isLessThan(0.2);
  }

  @Test
  void verdictsFollowTheErrorAndWhatMatters() throws Exception {
    Rig rig = rig("lip,2,612.5,44.27,,,,,\nlip,1,612.5,22.1,,,,,\n");
    assertThat(ComparisonStudy.of(rig, predictions(rig, 0.7, 0), 0.1).mean().verdict())
        .isEqualTo(Verdict.AGREES);
    Comparison off = ComparisonStudy.of(rig, predictions(rig, 0.8, 0), 0.1);
    assertThat(off.mean().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(off.mean().error()).isEqualTo(0.12, within(0.01));
    // a model band that holds the measurement makes no difference of it
    assertThat(ComparisonStudy.of(rig, predictions(rig, 0.8, 0.1), 0.1).mean().verdict())
        .isEqualTo(Verdict.AGREES);
    Comparison fine = ComparisonStudy.of(rig, predictions(rig, 0.7, 0), 0.01);
    assertThat(fine.mean().verdict()).isEqualTo(Verdict.CANNOT_TELL);
    assertThat(fine.finer().decisive()).isNotEmpty();
    assertThat(fine.finer().decisive().get(0).source()).isEqualTo(Source.FLOW);
    assertThat(fine.diagnosis().finding()).isEqualTo(Diagnosis.Finding.TOO_FEW);
  }

  @Test
  void leaksOfTheBoxAreTakenOffAtTheirSuction() throws Exception {
    Rig rig = rig("taped,,100,1,,,,,\ntaped,,400,2,,,,,\nlip,2,900,60,,,,,\n");
    Comparison c = ComparisonStudy.of(rig, predictions(rig, 0.7, 0), 0.1);
    Rig tight = rig("lip,2,900,57,,,,,\n");
    // 1 L/s at 100 Pa and 2 at 400: an orifice, 3 at 900
    assertThat(c.points().get(0).measured().value())
        .isEqualTo(
            ComparisonStudy.of(tight, predictions(tight, 0.7, 0), 0.1)
                .points()
                .get(0)
                .measured()
                .value(),
            within(1e-6));
  }

  /** √Δp falls by κ p₀ A √(2/ρ) / (2 V) a second. */
  @Test
  void aDecayTellsTheLeak() throws Exception {
    double area = 5e-6;
    double slope =
        1.2 * Air.STANDARD_PRESSURE * area * Math.sqrt(2 / Air.STANDARD.density()) / (2 * 0.05);
    StringBuilder lines = new StringBuilder("lip,2,612.5,44.27,,,,,\n");
    for (int k = 0; k < 6; k++) {
      double root = Math.sqrt(600) - slope * 0.3 * k;
      lines.append("decay,,").append(root * root).append(",,,,,,").append(0.3 * k).append('\n');
    }
    Rig rig = rig(lines.toString());
    Comparison c = ComparisonStudy.of(rig, predictions(rig, 0.7, 0), 0.1);
    DecayLeak leak = c.decays().get(0);
    assertThat(leak.taped()).isTrue();
    assertThat(leak.area()).isEqualTo(area, within(1e-9));
    // the polytropic exponent alone: 0.2 of 1.2 either way
    assertThat(leak.uncertainty() / area).isBetween(1.96 / 6 / Math.sqrt(3), 0.22);
    double jet = Math.sqrt(2 * 612.5 / Air.STANDARD.density());
    double without = 44.27e-3 / (2e-3 * jet * Expansibility.factor(612.5, Air.STANDARD_PRESSURE));
    assertThat(c.points().get(0).measured().value())
        .isEqualTo(without * (1 - area * jet / 44.27e-3), within(1e-6));
  }

  /** A blower whose pressure falls as the square of its flow, read by its suction alone. */
  @Test
  void suctionAloneTellsHowTheCoefficientChanges() throws Exception {
    StringBuilder lines = new StringBuilder("taped,,1000,,,,,,\n");
    double[] gaps = {1, 2, 3};
    double[] coefficients = {0.6, 0.7, 0.72};
    for (int k = 0; k < 3; k++) {
      // (p_t − p) / p = K (ε C_d h)²
      double flow = 0.9 * coefficients[k] * gaps[k];
      double p = 1000 / (1 + 0.3 * flow * flow);
      lines.append("lip,").append(gaps[k]).append(',').append(p).append(",,,,,,\n");
    }
    Rig rig = rig(lines.toString());
    Comparison c = ComparisonStudy.of(rig, predictions(rig, 0.7, 0), 0.1);
    assertThat(c.relative()).isTrue();
    assertThat(c.points().get(1).measured().value() / c.points().get(0).measured().value())
        .isEqualTo(0.7 / 0.6, within(5e-3));
    assertThat(c.mean().error()).isEqualTo(0, within(0.02));
    assertThat(c.diagnosis().finding()).isEqualTo(Diagnosis.Finding.TOO_FEW);
    assertThatThrownBy(() -> ComparisonStudy.of(rig("lip,2,600,,,,,,\n"), List.of(), 0.1))
        .hasMessageContaining("read the suction with the lip taped shut too");
  }

  @Test
  void aCalibrationFindsFactorAndOffset() throws Exception {
    StringBuilder lines = new StringBuilder();
    List<Prediction> predictions = new ArrayList<>();
    double jet = Math.sqrt(2 * 612.5 / Air.STANDARD.density());
    double expansion = Expansibility.factor(612.5, Air.STANDARD_PRESSURE);
    double[] predicted = {0.55, 0.65, 0.75, 0.8};
    for (int k = 0; k < 4; k++) {
      double gap = (k + 1) * 1e-3;
      double flow = (0.9 * predicted[k] + 0.05) * gap * jet * expansion;
      lines.append("lip,").append(k + 1).append(",612.5,").append(1000 * flow).append(",,,,,\n");
      predictions.add(
          new Prediction(
              gap,
              612.5,
              SolveStatus.CONVERGED,
              new Estimate(predicted[k], 0.003, 0, 0.03, 0.03, Estimate.Trend.MONOTONE),
              List.of()));
    }
    Rig rig = rig(lines.toString());
    Calibration c = CalibrationFit.of(rig, MadeUpLip.flat("flat", 8e-3), predictions);
    assertThat(c).isNotNull();
    assertThat(c.line().factor()).isEqualTo(0.9, within(1e-4));
    assertThat(c.line().offset()).isEqualTo(0.05, within(1e-4));
    assertThat(c.covers(new SectionConditions(2e-3, 612.5, 0, 0))).isTrue();
    assertThat(c.covers(new SectionConditions(2e-3, 612.5, 3, 0))).isFalse();
    assertThat(c.covers(new SectionConditions(8e-3, 612.5, 0, 0))).isFalse();
    Estimate raw = new Estimate(0.7, 0.003, 0, 0.03, 0.05, Estimate.Trend.MONOTONE);
    Estimate used = c.of(raw, true);
    assertThat(used.value()).isEqualTo(0.68, within(1e-4));
    assertThat(used.modelLow()).isEqualTo(used.modelHigh());
    assertThat(c.of(raw, false).modelHigh())
        .isEqualTo(Math.hypot(used.modelHigh(), 0.9 * 0.05), within(1e-5));
  }

  @Test
  void aPlanSaysWhichRepeatsTell() throws Exception {
    TestPlan plan = new TestPlan(rig("lip,2,612.5,44.27,,,,,\nlip,2,612.5,44.9,,,,,\n"));
    assertThat(plan.scatter()).isEqualTo(0.01, within(1e-3));
    var one = MadeUpLip.result("one", 2e-3, 600, 0.7);
    var other = MadeUpLip.result("other", 2e-3, 600, 0.7);
    Estimate far = new Estimate(1.2, 0.02, 0, 0.02, 0.02, Estimate.Trend.MONOTONE);
    Estimate near = new Estimate(1.01, 0.02, 0, 0, 0, Estimate.Trend.MONOTONE);
    PlannedPoint told = plan.at(one, other, far, 3);
    assertThat(told.tells()).isEqualTo(PlannedPoint.Tells.YES);
    assertThat(told.repeats()).isEqualTo(1);
    // 1 % scatter of both lips by √3 and the gap set anew; the meter's own error cancels
    double anew = 0.0025 / Math.sqrt(3);
    assertThat(told.uncertainty())
        .isEqualTo(1.96 * Math.sqrt(2 * (0.0101 * 0.0101 / 3 + anew * anew)), within(1.5e-3));
    PlannedPoint open = plan.at(one, other, near, 3);
    assertThat(open.tells()).isEqualTo(PlannedPoint.Tells.NO);
    assertThat(open.repeats()).isGreaterThan(5);
    assertThat(plan.at(one, other, Estimate.exact(1.001), 3).repeats()).isZero();
  }

  @Test
  void theSameReadingsGiveTheSameBits() throws Exception {
    InventedRig rig =
        new InventedRig(5, Quality.CHEAP, Map.of(), List.of(1e-3, 3e-3), List.of(200.0, 600.0), 2);
    assertThat(ComparisonStudy.of(rig.rig(), rig.predictions(), 0.1))
        .isEqualTo(ComparisonStudy.of(rig.rig(), rig.predictions(), 0.1));
  }
}
