package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.ReliefValve;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What presses on the machine and when it surges, against formulas beside the balance. */
class PlenumLoadsTest {
  private static final double SUCTION = 500;
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  /**
   * Air that a valve lets in strikes the ground with mass flow times jet speed, ρ q √(2 Δp / ρ);
   * how much of it the machine's floor takes back is not known, and half counts against the
   * downforce.
   */
  @Test
  void valveJetAgainstMomentum() {
    double seat = 1.2e-3;
    double rate = 400;
    double preload = 0.25;
    ReliefValve valve = new ReliefValve(seat, rate, preload, 0.05, 0.62, 0.01, 0.1);
    Machine m = Machines.round(Machines.quadratic(3000, 1e5), Machines.RIGID).withValve(valve);
    double rho = m.duty().air().air().density();
    PlenumState s = new PlenumBalance(m, LAWS).at(0.05, SUCTION, Stand.REST);
    double lift = (seat * SUCTION - preload) / rate;
    double diameter = Math.sqrt(4 * seat / Math.PI);
    double jet = Math.sqrt(2 * SUCTION / rho);
    double flow = 0.62 * Math.PI * diameter * lift * jet;
    assertThat(Math.PI * diameter * lift).isLessThan(seat);
    assertThat(s.flows().valve()).isCloseTo(flow, within(1e-12));
    assertThat(s.parts().valve()).isCloseTo(-0.5 * rho * flow * jet, within(1e-12));
    assertThat(s.parts().floor()).isCloseTo(SUCTION * AREA, within(1e-9));
    assertThat(s.load()[0]).isCloseTo(SUCTION * AREA - 0.5 * rho * flow * jet, within(1e-9));
  }

  /** Lip lift that goes with ln h, from 2 mm at 0.1 mm to 20 mm at 10 mm, downwards. */
  private static double lift(double gap) {
    return -2e-3 - 18e-3 * Math.log(gap / 1e-4) / Math.log(100);
  }

  private static Map<String, LeakLaw> lifting() {
    List<Double> gaps = List.of(1e-4, 1e-2);
    List<Double> suctions = List.of(1.0, 1e4);
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : gaps) {
      for (double suction : suctions) {
        LeakPoint p = Machines.point(gap, suction, Estimate.exact(Machines.C));
        points.add(p.with(p.discharge(), Estimate.exact(lift(gap))));
      }
    }
    return Map.of("lip", new LeakLaw(new LeakTable(gaps, suctions, points)));
  }

  /**
   * Floor and lips press the springs together, and the lips' share changes with the gap that is
   * left: k z = A p − l(h₀ − z) p L, here solved to the end by repetition.
   */
  @Test
  void lipsAndSpringsAgree() {
    double k = 1e5;
    PlenumBalance balance =
        new PlenumBalance(Machines.round(Machines.quadratic(3000, 1e5), k), lifting());
    double z = 0;
    double lips = 0;
    for (int n = 0; n < 60; n++) {
      z = (AREA * SUCTION + lips) / k;
      lips = -lift(Machines.GAP - z) * SUCTION * SEAL;
    }
    PlenumState s = balance.at(0.05, SUCTION, Stand.REST);
    assertThat(z).isBetween(0.3 * Machines.GAP, 0.5 * Machines.GAP);
    // the two repetitions of the balance are off by 4e-4 of the lips' force, one would be by 2e-2
    assertThat(s.parts().lips()).isCloseTo(lips, within(1e-3 * lips));
    assertThat(s.sink()[0]).isCloseTo(z, within(1e-3 * lips / k));
    assertThat(s.least().gap()).isCloseTo(Machines.GAP - z, within(1e-3 * lips / k));
  }

  /**
   * Soft springs close the gap as the suction rises, so that the leak hardly grows; but the air is
   * faster than the floor, and at a fixed height the steep stall side surges all the same.
   */
  @Test
  void surgesAtAFixedHeightWhateverTheSprings() {
    double k = 1e5;
    double at = 0.035;
    Machine m = Machines.round(Machines.steepHump(), k);
    FanCurve curve = m.fan().running(m.duty().air().air().density());
    double p = curve.pressureAt(at);
    double perGap = Machines.C * SEAL * Math.sqrt(2 * p / m.duty().air().air().density());
    double gap = at / perGap;
    double fixed = at / (2 * p);
    double free = fixed - perGap * AREA / k;
    double slope = curve.slopeAt(at);
    assertThat(slope * fixed).isGreaterThan(1.5);
    assertThat(slope * free).isLessThan(0.7);
    Machine stands = m.withFloor(m.floor().withGaps((gap + AREA * p / k) / Machines.GAP));
    PlenumBalance balance = new PlenumBalance(stands, LAWS);
    PlenumState there =
        balance.points(Stand.REST).stream()
            .filter(s -> Math.abs(s.flows().fan() - at) < 1e-5)
            .findFirst()
            .orElseThrow();
    assertThat(there.suction()).isCloseTo(p, within(0.5));
    assertThat(there.stalled()).isTrue();
    assertThat(there.stable()).isFalse();
  }
}
