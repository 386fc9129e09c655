package hemline.solver.rig;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.rig.InventedRig.Quality;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Rigs with known truth: stated intervals hold it as often as they say, faults are named right. */
final class InventedRigsTest {
  private static final List<Double> GAPS = List.of(0.5e-3, 1e-3, 2e-3, 3e-3, 4e-3);
  private static final List<Double> SUCTIONS = List.of(150.0, 400.0, 1000.0);

  /** A rig; where two faults are put in, either is a right name. */
  private record Case(long seed, Quality quality, Map<Fault, Double> faults) {
    InventedRig rig() {
      return new InventedRig(seed, quality, faults, GAPS, SUCTIONS, 3);
    }
  }

  private static final List<Case> CASES =
      List.of(
          new Case(1, Quality.CHEAP, Map.of()),
          new Case(2, Quality.GOOD, Map.of()),
          new Case(3, Quality.CHEAP, Map.of(Fault.EXTRA_AREA, 120e-6)),
          new Case(4, Quality.GOOD, Map.of(Fault.EXTRA_AREA, 100e-6)),
          new Case(5, Quality.CHEAP, Map.of(Fault.GAP_OFFSET, -0.2e-3)),
          new Case(6, Quality.GOOD, Map.of(Fault.GAP_OFFSET, -0.1e-3)),
          new Case(7, Quality.CHEAP, Map.of(Fault.GAUGE_ZERO, 30.0)),
          new Case(8, Quality.GOOD, Map.of(Fault.GAUGE_ZERO, -10.0)),
          new Case(9, Quality.CHEAP, Map.of(Fault.FLOW_SCALE, 0.2)),
          new Case(10, Quality.GOOD, Map.of(Fault.FLOW_SCALE, -0.08)),
          new Case(11, Quality.CHEAP, Map.of(Fault.HOSE, 0.3)),
          new Case(12, Quality.GOOD, Map.of(Fault.HOSE, 0.12)),
          new Case(13, Quality.CHEAP, Map.of(Fault.FLOW_SCALE, 0.25, Fault.GAUGE_ZERO, 8.0)),
          new Case(14, Quality.GOOD, Map.of(Fault.FLOW_SCALE, 0.15, Fault.GAP_OFFSET, -0.02e-3)),
          new Case(15, Quality.CHEAP, Map.of(Fault.GAUGE_ZERO, 40.0, Fault.HOSE, 0.04)),
          new Case(16, Quality.GOOD, Map.of(Fault.GAUGE_ZERO, 20.0, Fault.FLOW_SCALE, 0.02)),
          new Case(17, Quality.GOOD, Map.of(Fault.GAP_OFFSET, -0.15e-3, Fault.GAUGE_ZERO, 3.0)),
          new Case(18, Quality.GOOD, Map.of(Fault.HOSE, 0.2, Fault.FLOW_SCALE, 0.02)),
          new Case(19, Quality.GOOD, Map.of(Fault.EXTRA_AREA, 150e-6, Fault.GAUGE_ZERO, 2.0)),
          new Case(20, Quality.CHEAP, Map.of(Fault.EXTRA_AREA, 150e-6, Fault.FLOW_SCALE, 0.03)));

  @Test
  void theRightFaultIsNamedOrNone() throws Exception {
    int right = 0;
    List<String> told = new ArrayList<>();
    for (Case one : CASES) {
      InventedRig rig = one.rig();
      Diagnosis d = FaultStudy.of(rig.rig(), rig.predictions());
      FaultFit named = d.named();
      boolean good =
          named == null
              ? one.faults().isEmpty() && d.finding() == Diagnosis.Finding.NONE
              : one.faults().containsKey(named.fault());
      right += good ? 1 : 0;
      told.add(one + ": " + d.finding() + " " + (named == null ? d.alike() : named));
      assertThat(good || d.finding() == Diagnosis.Finding.CANNOT_TELL)
          .as("never a wrong name: %s", told.get(told.size() - 1))
          .isTrue();
    }
    assertThat(right).as(String.join("\n", told)).isGreaterThanOrEqualTo(17);
  }

  /** 1200 points of 300 rigs; the true size of 60 faults. */
  @Test
  void statedIntervalsHoldTheTruth() throws Exception {
    for (Quality quality : Quality.values()) {
      int inside = 0;
      int insideError = 0;
      int all = 0;
      for (long seed = 100; seed < 250; seed++) {
        InventedRig rig =
            new InventedRig(seed, quality, Map.of(), List.of(1e-3, 3e-3), List.of(200.0, 600.0), 3);
        ComparisonModel model = new ComparisonModel(rig.rig(), rig.predictions());
        Propagated found = Propagation.of(model.inputs(), model::outputs);
        List<RigPoint> points = model.rig().points();
        for (int k = 0; k < points.size(); k++) {
          double off = found.value(k) - rig.truthOf(points.get(k));
          inside += Math.abs(off) <= found.expanded(k, 0.95) ? 1 : 0;
          double trueError =
              model.predicted(k).value() * rig.predictionError / (1 + rig.predictionError);
          int e = points.size() + k;
          insideError += Math.abs(found.value(e) - trueError) <= found.expanded(e, 0.95) ? 1 : 0;
          all++;
        }
      }
      assertThat((double) inside / all).as("%s, measured", quality).isBetween(0.9, 0.99);
      assertThat((double) insideError / all).as("%s, error", quality).isBetween(0.9, 0.99);
    }
  }

  @Test
  void theTrueSizeOfAFaultLiesInItsInterval() throws Exception {
    Map<Fault, Double> faults =
        Map.of(Fault.GAUGE_ZERO, 30.0, Fault.FLOW_SCALE, 0.15, Fault.HOSE, 0.2);
    int inside = 0;
    int all = 0;
    for (Map.Entry<Fault, Double> fault : faults.entrySet()) {
      for (long seed = 300; seed < 320; seed++) {
        InventedRig rig =
            new InventedRig(
                seed,
                Quality.GOOD,
                Map.of(fault.getKey(), fault.getValue()),
                List.of(1e-3, 2e-3, 4e-3),
                SUCTIONS,
                2);
        FaultFit fit =
            FaultStudy.of(rig.rig(), rig.predictions()).fits().stream()
                .filter(f -> f.fault() == fault.getKey())
                .findFirst()
                .orElseThrow();
        double truth = fault.getKey() == Fault.HOSE ? rig.hose(fault.getValue()) : fault.getValue();
        inside += Math.abs(fit.size() - truth) <= fit.uncertainty() ? 1 : 0;
        all++;
      }
    }
    assertThat((double) inside / all).isBetween(0.88, 1.0);
  }
}
