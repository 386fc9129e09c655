package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Changes of the machine in closed form: a rigid box of 0.4 m by 0.2 m, fan p₀ n² − a Q², seal of
 * length 2 (l + w) + 4 h.
 */
class TradeValuesTest {
  private static final double P0 = 900;
  private static final double A = 6e4;
  private static final double LENGTH = 0.4;
  private static final double WIDTH = 0.2;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  private static Machine box(double stiffness) {
    return Machines.with(
        Machines.quadratic(P0, A),
        stiffness,
        List.of(
            new Vertex(0.5 * LENGTH, -0.5 * WIDTH),
            new Vertex(0.5 * LENGTH, 0.5 * WIDTH),
            new Vertex(-0.5 * LENGTH, 0.5 * WIDTH),
            new Vertex(-0.5 * LENGTH, -0.5 * WIDTH)),
        3);
  }

  private static double perRoot(double l, double w, double gap) {
    double rho = box(1).duty().air().air().density();
    return Machines.C * gap * (2 * (l + w) + 4 * gap) * Math.sqrt(2 / rho);
  }

  private static double suction(double l, double w, double speed, double gap) {
    double k = perRoot(l, w, gap);
    return P0 * speed * speed / (1 + A * k * k);
  }

  private static double value(@Nullable Estimate e) {
    return Objects.requireNonNull(e).value();
  }

  @Test
  void tradesByHand() {
    List<Trade> trades = new TradeStudy(box(Machines.RIGID), LAWS).sizes();
    assertThat(trades)
        .extracting(Trade::factor)
        .containsExactly(
            1.0, 0.8, 0.9, 1.1, 1.2, 0.7, 0.85, 1.15, 1.3, 0.8, 0.9, 1.1, 1.2, 0.6, 0.8, 0.9, 1.1,
            1.2, 1.4);
    for (Trade t : trades) {
      double f = t.factor();
      double root = Math.sqrt(f);
      double l = LENGTH;
      double w = WIDTH;
      double speed = 1;
      double gap = Machines.GAP;
      switch (t.kind()) {
        case FLOOR_SIZE -> {
          l *= f;
          w *= f;
        }
        case FLOOR_LENGTH -> {
          l *= root;
          w /= root;
        }
        case FAN_SPEED -> speed = f;
        case GAP -> gap *= f;
        default -> assertThat(f).isEqualTo(1);
      }
      double p = suction(l, w, speed, gap);
      double q = perRoot(l, w, gap) * Math.sqrt(p);
      String name = t.kind() + " " + f;
      assertThat(value(t.downforce())).as(name).isCloseTo(p * l * w, withPercentage(0.02));
      // efficiencies 0.5 of the fan and 0.8 of the motor
      assertThat(value(t.shaftPower())).as(name).isCloseTo(p * q / 0.5, withPercentage(0.03));
      assertThat(value(t.perWatt()))
          .as(name)
          .isCloseTo(p * l * w / (p * q / 0.5 / 0.8), withPercentage(0.03));
      assertThat(value(t.leastGap())).as(name).isCloseTo(gap, within(1e-9));
      assertThat(t.beyond()).isFalse();
    }
    assertThat(trades)
        .extracting(Trade::kind)
        .startsWith(Trade.Kind.AS_IT_IS)
        .endsWith(Trade.Kind.GAP);
    Trade lip = new TradeStudy(box(Machines.RIGID), LAWS).lip("a lip");
    assertThat(lip.kind()).isEqualTo(Trade.Kind.LIP);
    assertThat(lip.name()).isEqualTo("a lip");
    assertThat(value(lip.downforce())).isEqualTo(value(trades.get(0).downforce()));
  }

  /** A machine that is drawn down has a trade without figures. */
  @Test
  void aMachineThatDoesNotSettleHasNoFigures() {
    Trade t = new TradeStudy(box(2e3), LAWS).lip("a lip");
    assertThat(t).isEqualTo(new Trade(Trade.Kind.LIP, "a lip", 1, null, null, null, null, false));
    assertThat(new TradeStudy(box(2e3), LAWS).overGap().get(0).downforce()).isNull();
    assertThat(new TradeStudy(box(2e3), LAWS).overGap().get(0).suction()).isNull();
  }

  /** Leaks known from 0.1 to 10 mm and 1 Pa to 10 kPa: beyond is what lies outside by over 2 %. */
  @Test
  void tellsWhatLiesBeyondTheSolvedSections() {
    Machine m = box(Machines.RIGID);
    for (double gap : new double[] {0.09e-3, 0.11e-3, 9e-3, 11e-3}) {
      PlenumBalance b =
          new PlenumBalance(m.withFloor(m.floor().withGaps(gap / Machines.GAP)), LAWS);
      PlenumState s = b.at(0.01, 100, Stand.REST);
      assertThat(TradeStudy.beyond(b, s)).as("%s", gap).isEqualTo(gap < 1e-4 || gap > 1e-2);
    }
    PlenumBalance b = new PlenumBalance(m, LAWS);
    assertThat(TradeStudy.beyond(b, b.at(0.01, 1.1e4, Stand.REST))).isTrue();
    assertThat(TradeStudy.beyond(b, b.at(0.01, 0.9e4, Stand.REST))).isFalse();
    // the nose sinks below the solved gaps, the rear does not; below the ground nothing leaks
    double[] tilted = {0, 1.92e-3 / 0.2, 0};
    assertThat(TradeStudy.beyond(b, b.at(0.01, 100, Stand.REST.held(tilted)))).isTrue();
    double[][] down = {{1.92e-3, 0, 0}, {0, 0, 1.92e-3 / 0.1}, {0, 0, -1.92e-3 / 0.1}};
    for (double[] sink : down) {
      assertThat(TradeStudy.beyond(b, b.at(0.01, 100, Stand.REST.held(sink)))).isTrue();
    }
    double[] touching = {2.1e-3, 0, 0};
    assertThat(TradeStudy.beyond(b, b.at(0.01, 100, Stand.REST.held(touching)))).isFalse();
    double[] half = {0, 0.95e-3 / 0.2, 0};
    assertThat(TradeStudy.beyond(b, b.at(0.01, 100, Stand.REST.held(half)))).isFalse();
  }

  @Test
  void leakCurvesByHand() {
    List<FlowCurve> curves = new TradeStudy(box(2e3), LAWS).leakCurves();
    assertThat(curves).extracting(FlowCurve::factor).containsExactly(0.5, 0.75, 1.0, 1.25, 1.5);
    for (FlowCurve c : curves) {
      double gap = c.factor() * Machines.GAP;
      assertThat(c.gap()).isCloseTo(gap, within(1e-12));
      assertThat(c.flow()).hasSize(40);
      for (int k = 0; k < 40; k++) {
        // even steps of the flow up to 1.05 of the fan's peak
        double p = 1.05 * P0 * (k + 1) * (k + 1) / 1600.0;
        assertThat(c.pressure()[k]).isCloseTo(p, within(1e-9));
        assertThat(c.flow()[k])
            .isCloseTo(perRoot(LENGTH, WIDTH, gap) * Math.sqrt(p), within(1e-12));
      }
    }
  }

  @Test
  void theSmallestGapNamesACurve() {
    Machine m = HoldMachines.gaps(box(Machines.RIGID), 3e-3, 2e-3, 1e-3, 4e-3);
    assertThat(new TradeStudy(m, LAWS).leakCurves().get(2).gap()).isEqualTo(1e-3);
  }

  @Test
  void theFansCurveAsItRuns() {
    Machine m = box(Machines.RIGID);
    Machine fast = m.withFan(m.fan().atSpeed(1.5 * m.fan().speed()));
    FlowCurve c = new TradeStudy(fast, LAWS).fanCurve();
    assertThat(c.flow()).hasSize(81);
    double most = 1.5 * Math.sqrt(P0 / A);
    for (int k = 0; k <= 80; k++) {
      double q = most * k / 80;
      assertThat(c.flow()[k]).isCloseTo(q, within(1e-12));
      assertThat(c.pressure()[k]).isCloseTo(2.25 * P0 - A * q * q, within(0.02));
    }
    assertThat(c.factor()).isEqualTo(1);
    assertThat(c.gap()).isZero();
  }

  @Test
  void seriesByHand() {
    TradeStudy study = new TradeStudy(box(Machines.RIGID), LAWS);
    List<DownforcePoint> gaps = study.overGap();
    List<DownforcePoint> speeds = study.overSpeed();
    assertThat(gaps).hasSize(11);
    assertThat(speeds).hasSize(11);
    for (int k = 0; k <= 10; k++) {
      double f = 0.5 + 0.1 * k;
      double p = suction(LENGTH, WIDTH, 1, f * Machines.GAP);
      assertThat(gaps.get(k).factor()).isCloseTo(f, within(1e-12));
      assertThat(value(gaps.get(k).suction())).isCloseTo(p, withPercentage(0.02));
      assertThat(value(gaps.get(k).downforce()))
          .isCloseTo(p * LENGTH * WIDTH, withPercentage(0.02));
      double n = 0.5 + 0.07 * k;
      double at = suction(LENGTH, WIDTH, n, Machines.GAP);
      assertThat(speeds.get(k).factor()).isCloseTo(n, within(1e-12));
      assertThat(value(speeds.get(k).suction())).isCloseTo(at, withPercentage(0.02));
      assertThat(value(speeds.get(k).downforce()))
          .isCloseTo(at * LENGTH * WIDTH, withPercentage(0.02));
    }
  }
}
