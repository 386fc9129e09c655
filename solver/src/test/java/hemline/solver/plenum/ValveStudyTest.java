package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.ReliefValve;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class ValveStudyTest {
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;

  /** With the suction pinned the floor sinks by A p / k: the cap is k h₀ / (A f). */
  @Test
  void pinsTheSuction() {
    double k = 5e4;
    Machine m = Machines.round(Machines.quadratic(3000, 1e5), k);
    ReliefValve large = new ReliefValve(2e-2, 200, 1, 0.05, 0.62, 0.05, 0.2);
    PlenumBalance balance = new PlenumBalance(m.withValve(large), LAWS);
    ValveSetting v = ValveStudy.of(balance, 1.5, null);
    double cap = k * Machines.GAP / (1.5 * AREA);
    assertThat(v.capSuction().value()).isCloseTo(cap, withPercentage(1e-4));
    // p₀ − a Q² = cap
    double flow = Math.sqrt((3000 - cap) / 1e5);
    assertThat(v.flowAtCap().value()).isCloseTo(flow, withPercentage(0.01));
    ValveSetting.Setting set = Objects.requireNonNull(v.setting());
    assertThat(set.seat().fits()).isTrue();
    ReliefValve at = large.withPreload(set.spring().preload());
    assertThat(at.flow(cap, m.duty().air().air().density())).isCloseTo(flow, withPercentage(0.01));
    // even with the seal closed the machine then stays at or below the cap
    PlenumBalance closed =
        new PlenumBalance(
            Machines.round(Machines.quadratic(3000, 1e5), Machines.RIGID)
                .withValve(at)
                .withFloor(m.floor().withGaps(1e-3)),
            LAWS);
    assertThat(Machines.settled(closed).suction()).isLessThan(1.01 * cap);
  }

  /** Whether a valve is needed is judged without it, even where it does its work. */
  @Test
  void isNeededWhereTheSpringsAloneFallShort() {
    Machine m = Machines.round(Machines.quadratic(3000, 1e5), 2.5e5);
    ReliefValve large = new ReliefValve(2e-2, 200, 1, 0.05, 0.62, 0.05, 0.2);
    PlenumBalance alone = new PlenumBalance(m, LAWS);
    Estimate factor =
        Objects.requireNonNull(HeightStability.of(alone, Stand.REST).heave().factor());
    assertThat(factor.low()).isGreaterThan(1.2);
    PlenumBalance with = new PlenumBalance(m.withValve(large), LAWS);
    assertThat(Objects.requireNonNull(HeightStability.of(with, Stand.REST).heave().factor()).low())
        .isGreaterThan(1.2 * factor.high());
    assertThat(ValveStudy.of(with, 1.1 * factor.high(), null).needed()).isTrue();
    assertThat(ValveStudy.of(with, 0.9 * factor.low(), null).needed()).isFalse();
  }

  /** A fan that cannot close the gaps at its peak leaves the valve nothing to do. */
  @Test
  void needNotOpenBelowAPeakThatLeavesTheMargin() {
    double stiff = 1.6 * 3000 * AREA / Machines.GAP;
    ReliefValve large = new ReliefValve(2e-2, 200, 1, 0.05, 0.62, 0.05, 0.2);
    Machine m = Machines.round(Machines.quadratic(3000, 1e5), stiff).withValve(large);
    ValveSetting v = ValveStudy.of(new PlenumBalance(m, LAWS), 1.5, null);
    assertThat(v.capSuction().value()).isCloseTo(3000, withPercentage(1e-6));
    assertThat(v.idle()).isTrue();
    ValveSetting.Setting set = Objects.requireNonNull(v.setting());
    assertThat(set.seat().fits()).isTrue();
    assertThat(set.spring().openingSuction()).isCloseTo(3000, withPercentage(1e-6));
    assertThat(set.seat().lift()).isZero();
    assertThat(ValveStudy.of(new PlenumBalance(m, LAWS), 1.7, null).idle()).isFalse();
  }

  @Test
  void tellsAValveThatIsTooSmall() {
    Machine m = Machines.round(Machines.quadratic(3000, 1e5), 5e4);
    ReliefValve small = new ReliefValve(1e-4, 200, 0.1, 0.05, 0.62, 0.05, 0.2);
    ValveSetting v = ValveStudy.of(new PlenumBalance(m.withValve(small), LAWS), 1.5, null);
    ValveSetting.Setting set = Objects.requireNonNull(v.setting());
    assertThat(set.seat().fits()).isFalse();
    assertThat(set.seat().largestFlow()).isLessThan(v.flowAtCap().value());
    assertThat(set.seat().areaNeeded() / 1e-4)
        .isCloseTo(v.flowAtCap().value() / set.seat().largestFlow(), withPercentage(1e-6));
  }

  /** The bound on damping, against the motion itself: below it swings grow, above it they die. */
  @Test
  void boundsTheDampingThatStopsChatter() {
    ReliefValve valve = new ReliefValve(3e-3, 300, 1, 0.05, 0.62, 0.02, 0.1);
    double slope = 2e-4;
    double g = 4;
    double filling = 4e-3 / (1.4 * 101325);
    double needed = ValveStudy.needed(valve, slope, g, filling);
    assertThat(needed).isPositive();
    assertThat(growth(valve, slope, g, filling, 0.9 * needed)).isGreaterThan(1);
    assertThat(growth(valve, slope, g, filling, 1.1 * needed)).isLessThan(1);
  }

  /** Energy of the late swing over that of an earlier one, by small steps in time (RK4). */
  private static double growth(
      ReliefValve valve, double slope, double g, double filling, double damping) {
    double m = valve.movingMass();
    double k = valve.springRate();
    double c = 2 * damping * Math.sqrt(k * m);
    double dt = 2e-6;
    double[] y = {0, 1e-5, 0};
    double early = 0;
    double late = 0;
    int steps = 400_000;
    for (int i = 0; i < steps; i++) {
      double[] a = rate(y, m, k, c, slope, g, filling, valve.seatArea());
      double[] b = rate(moved(y, a, dt / 2), m, k, c, slope, g, filling, valve.seatArea());
      double[] d = rate(moved(y, b, dt / 2), m, k, c, slope, g, filling, valve.seatArea());
      double[] e = rate(moved(y, d, dt), m, k, c, slope, g, filling, valve.seatArea());
      for (int j = 0; j < 3; j++) {
        y[j] += dt / 6 * (a[j] + 2 * b[j] + 2 * d[j] + e[j]);
      }
      if (i > steps / 4 && i <= steps / 2) {
        early = Math.max(early, Math.abs(y[1]));
      } else if (i > 3 * steps / 4) {
        late = Math.max(late, Math.abs(y[1]));
      }
    }
    return late / early;
  }

  private static double[] rate(
      double[] y,
      double m,
      double k,
      double c,
      double slope,
      double g,
      double filling,
      double area) {
    return new double[] {
      (-slope * y[0] - g * y[1]) / filling, y[2], (area * y[0] - k * y[1] - c * y[2]) / m
    };
  }

  private static double[] moved(double[] y, double[] rate, double dt) {
    return new double[] {y[0] + dt * rate[0], y[1] + dt * rate[1], y[2] + dt * rate[2]};
  }
}
