package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlenumBalanceTest {
  private static final double P0 = 900;
  private static final double A = 6e4;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  /** Q = K √p with K = C h L √(2/ρ), and p = p₀ − a Q²: Q = √(p₀ / (a + 1/K²)). */
  @Test
  void balancesAQuadraticFanAgainstAnOrifice() {
    Machine m = Machines.round(Machines.quadratic(P0, A), Machines.RIGID);
    PlenumBalance balance = new PlenumBalance(m, LAWS);
    double rho = m.duty().air().air().density();
    double k = Machines.C * Machines.GAP * 2 * Math.PI * Machines.RADIUS * Math.sqrt(2 / rho);
    double q = Math.sqrt(P0 / (A + 1 / (k * k)));
    PlenumState s = Machines.settled(balance);
    assertThat(balance.points(Stand.REST)).hasSize(1);
    assertThat(s.flows().fan()).isCloseTo(q, withPercentage(0.002));
    assertThat(s.suction()).isCloseTo(q * q / (k * k), withPercentage(0.005));
    assertThat(s.parts().sum())
        .isCloseTo(Math.PI * Machines.RADIUS * Machines.RADIUS * s.suction(), within(1e-9));
    assertThat(s.stable()).isTrue();
    assertThat(s.stalled()).isFalse();
  }

  /** A rectangle's corners count as one more gap of seal each. */
  @Test
  void countsCornersByTheirAllowanceAndTheOuterEdgeOfTheLip() {
    List<Vertex> box =
        List.of(
            new Vertex(0.2, -0.1),
            new Vertex(0.2, 0.1),
            new Vertex(-0.2, 0.1),
            new Vertex(-0.2, -0.1));
    Machine m = Machines.with(Machines.quadratic(P0, A), Machines.RIGID, box, 3);
    PlenumBalance balance = new PlenumBalance(m, LAWS);
    PlenumState s = Machines.settled(balance);
    double jet = Math.sqrt(2 * s.suction() / m.duty().air().air().density());
    double length = s.flows().leak() / (Machines.C * Machines.GAP * jet);
    assertThat(length).isCloseTo(1.2 + 4 * Machines.GAP, within(1e-6));
    double high = balance.at(0.01, 100, Stand.REST.at(Side.HIGH)).flows().leak();
    double low = balance.at(0.01, 100, Stand.REST.at(Side.LOW)).flows().leak();
    assertThat(high / low)
        .isCloseTo((1.2 + 8 * Machines.GAP + 2 * Math.PI * 8e-3) / 1.2, within(1e-6));
    // mirrored edges leak alike: each corner belongs half to either edge
    assertThat(s.flows().edgeLeaks()[0]).isCloseTo(s.flows().edgeLeaks()[2], within(1e-12));
    assertThat(s.flows().edgeLeaks()[1]).isCloseTo(s.flows().edgeLeaks()[3], within(1e-12));
  }

  /** With one discharge coefficient everything goes by the fan laws: q ~ n, p ~ n². */
  @Test
  void followsTheFanLaws() {
    Machine m = Machines.round(Machines.quadratic(P0, A), Machines.RIGID);
    PlenumState slow = Machines.settled(new PlenumBalance(m, LAWS));
    Machine faster = m.withFan(m.fan().atSpeed(1.3 * m.fan().speed()));
    PlenumState fast = Machines.settled(new PlenumBalance(faster, LAWS));
    assertThat(fast.flows().fan() / slow.flows().fan()).isCloseTo(1.3, within(1e-7));
    assertThat(fast.suction() / slow.suction()).isCloseTo(1.69, within(1e-7));
  }

  /** A humped curve against a flat valve-like leak meets it three times; the middle is unstable. */
  @Test
  void findsAllOperatingPointsOfAHumpedCurve() {
    List<FanCurve.Point> hump =
        List.of(
            new FanCurve.Point(0, 300, Double.NaN),
            new FanCurve.Point(0.02, 400, Double.NaN),
            new FanCurve.Point(0.04, 800, Double.NaN),
            new FanCurve.Point(0.06, 600, Double.NaN),
            new FanCurve.Point(0.08, 10, Double.NaN));
    Machine m = Machines.round(new FanCurve(hump, 400, 1.225), Machines.RIGID);
    // opens at 350 Pa: little flow below, as much as it takes above
    ReliefValve steep = new ReliefValve(4e-3, 20, 350 * 4e-3, 0.1, 0.62, 0.01, 0.1);
    Machine tight = m.withFloor(m.floor().withGaps(0.15)).withValve(steep);
    PlenumBalance balance = new PlenumBalance(tight, LAWS);
    List<PlenumState> points = balance.points(Stand.REST);
    assertThat(points.size() % 2).isOne();
    for (PlenumState p : points) {
      assertThat(p.demand()).isCloseTo(p.flows().fan(), within(1e-9));
    }
    assertThat(points.stream().filter(PlenumState::stalled)).isNotEmpty();
    PlenumState settled = balance.settled(Stand.REST);
    assertThat(settled).isNotNull();
  }

  /** On the rising side of the curve steeper than the system the fan surges. */
  @Test
  void callsASteepStallSideUnstable() {
    Machine m = Machines.round(Machines.steepHump(), Machines.RIGID);
    // K chosen so that the leak crosses the steep part at 0.035 m³/s
    FanCurve curve = m.fan().running(m.duty().air().air().density());
    double p = curve.pressureAt(0.035);
    double jet = Math.sqrt(2 * p / m.duty().air().air().density());
    double gap = 0.035 / (Machines.C * 2 * Math.PI * Machines.RADIUS * jet);
    Machine at = m.withFloor(m.floor().withGaps(gap / Machines.GAP));
    List<PlenumState> points = new PlenumBalance(at, LAWS).points(Stand.REST);
    assertThat(points).hasSize(3);
    assertThat(points.get(1).flows().fan()).isCloseTo(0.035, within(1e-8));
    assertThat(points.get(1).stable()).isFalse();
    assertThat(points.get(1).stalled()).isTrue();
    assertThat(points.get(0).stable()).isTrue();
    assertThat(points.get(2).stable()).isTrue();
  }

  @Test
  void doesNotSettleBeyondTheMeasuredCurve() {
    FanCurve small =
        new FanCurve(
            List.of(
                new FanCurve.Point(0, 500, Double.NaN),
                new FanCurve.Point(1e-3, 480, Double.NaN),
                new FanCurve.Point(2e-3, 450, Double.NaN)),
            400,
            1.2);
    PlenumBalance balance = new PlenumBalance(Machines.round(small, Machines.RIGID), LAWS);
    assertThat(balance.points(Stand.REST)).isEmpty();
    assertThat(balance.settled(Stand.REST)).isNull();
  }

  /** Thrust of the jet: ρ Q² / A straight up. */
  @Test
  void addsTheThrustOfTheFan() {
    Machine m = Machines.round(Machines.quadratic(P0, A), Machines.RIGID);
    var f = m.fan();
    Machine up =
        m.withFan(
            new hemline.shared.vehicle.Fan(
                f.curve(),
                f.speed(),
                f.maximumSpeed(),
                0.5,
                new hemline.shared.vehicle.Fan.Outlet(4e-3, Math.PI / 2, 0.05, 0, 0),
                0));
    PlenumState s = Machines.settled(new PlenumBalance(up, LAWS));
    FluidState air = m.duty().air().air();
    double thrust = air.density() * s.flows().fan() * s.flows().fan() / 4e-3;
    assertThat(s.parts().thrust()).isCloseTo(thrust, within(1e-9));
    assertThat(s.load()[1]).isCloseTo(thrust * 0.05, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
  void keepsItsPromisesForAnyMachine(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double p0 = 200 + 3000 * random.nextDouble();
    double most = 0.02 + 0.1 * random.nextDouble();
    Machine base = Machines.round(Machines.quadratic(p0, p0 / (most * most)), Machines.RIGID);
    double preload = 0.5 * p0 * 1e-3 * random.nextDouble();
    Machine m =
        base.withValve(new ReliefValve(1e-3, 100, preload, 5e-3, 0.62, 0.01, 1))
            .withOtherLeaks(List.of(new OtherLeak("hole", 1e-4 * random.nextDouble(), 0.6)));
    Map<String, LeakLaw> laws = Machines.constant(0.5 + 0.4 * random.nextDouble(), 0.03);
    PlenumBalance balance = new PlenumBalance(m, laws);
    PlenumState s = Machines.settled(balance);
    // energy: air power of the fan is the sum of leak flow times suction
    assertThat(s.suction() * (s.flows().leak() + s.flows().valve() + s.flows().other()))
        .as("seed %d", seed)
        .isCloseTo(s.suction() * s.flows().fan(), withPercentage(1e-6));
    double before = Double.POSITIVE_INFINITY;
    for (double f = 0.4; f < 2; f += 0.2) {
      PlenumBalance wider = balance.changed(m.withFloor(m.floor().withGaps(f)));
      PlenumState at = wider.settled(Stand.REST);
      double suction = at == null ? 0 : at.suction();
      assertThat(suction).as("more gap, less suction; seed %d", seed).isLessThan(before);
      before = suction;
    }
    Bands<PlenumState> b = Settling.settled(balance, Stand.REST);
    assertThat(b).isNotNull();
    SettledFigures figures = Settling.figures(balance, b);
    for (Estimate e :
        List.of(
            figures.get(MachineFigure.SUCTION),
            figures.get(MachineFigure.FAN_FLOW),
            figures.get(MachineFigure.DOWNFORCE),
            figures.get(MachineFigure.RUN_TIME))) {
      assertThat(e.low()).as("seed %d", seed).isLessThan(e.value());
      assertThat(e.high()).as("seed %d", seed).isGreaterThan(e.value());
    }
  }

  /** At the same ride height the opened part of one edge leaks with gap plus step. */
  @Test
  void opensOneEdgeOverAStep() {
    Machine m = Machines.round(Machines.quadratic(P0, A), 1e5).withStep(new GroundStep(1e-3, 0.1));
    PlenumBalance balance = new PlenumBalance(m, LAWS);
    PlenumState before = Machines.settled(balance);
    PlenumState over =
        balance.at(
            before.flows().fan(),
            before.suction(),
            Stand.REST.over(new Crossing(1e-3, 0.1, Set.of(0), -1)).held(before.sink()));
    double jet = Math.sqrt(2 * before.suction() / m.duty().air().air().density());
    assertThat(over.flows().leak() - before.flows().leak())
        .isCloseTo(Machines.C * 1e-3 * 0.1 * jet, within(1e-9));
    List<StepCrossing> steps =
        StepStudy.of(
            balance,
            java.util.Objects.requireNonNull(Settling.settled(balance, Stand.REST)),
            new HoldStudy(balance).all());
    assertThat(steps).filteredOn(c -> c.kind() == StepCrossing.Kind.DIP).hasSize(2);
    assertThat(java.util.Objects.requireNonNull(steps.get(0).kept()).value()).isBetween(0.5, 0.999);
  }
}
