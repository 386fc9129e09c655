package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.fluid.Air;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * Figures of a settled machine by hand: a round floor of 0.2 m, its centre of gravity 30 mm ahead,
 * axles at ±0.1 m, a supply of 3600 J of which a half may be drawn.
 */
class SettlingTest {
  private static final double MASS = 3;
  private static final double AHEAD = 0.03;
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;

  /** Discharge 0.7: 0.05 down, 0.03 up, of it 0.02 from the grid and 0.01 from iteration. */
  private static Map<String, LeakLaw> laws() {
    List<Double> gaps = List.of(1e-4, 1e-2);
    List<Double> suctions = List.of(1.0, 1e4);
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : gaps) {
      for (double suction : suctions) {
        points.add(
            Machines.point(
                gap, suction, new Estimate(Machines.C, 0.02, 0.01, 0.04, 0, Trend.MONOTONE)));
      }
    }
    return Map.of("lip", new LeakLaw(new LeakTable(gaps, suctions, points)));
  }

  private final Machine machine =
      Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID)
          .withLoad(new Load(MASS, AHEAD, 0, 0.05))
          .withPower(new PowerSupply(0.8, 1e9, 3600, 0.5, 1e9));
  private final PlenumBalance balance = new PlenumBalance(machine, laws());

  /** Fan p₀ − a Q² against seal C L h √(2 p / ρ), where the springs do not give. */
  private double suction() {
    double rho = machine.duty().air().air().density();
    double perRoot = Machines.C * SEAL * Machines.GAP * Math.sqrt(2 / rho);
    return 900 / (1 + 6e4 * perRoot * perRoot);
  }

  @Test
  void figuresByHand() {
    Bands<PlenumState> b = Objects.requireNonNull(Settling.settled(balance, Stand.REST));
    SettledFigures f = Settling.figures(balance, b);
    double p = suction();
    double q = Math.sqrt((900 - p) / 6e4);
    assertThat(f.get(MachineFigure.SUCTION).value()).isCloseTo(p, withPercentage(0.02));
    assertThat(f.get(MachineFigure.FAN_FLOW).value()).isCloseTo(q, withPercentage(0.02));
    assertThat(f.get(MachineFigure.AIR_POWER).value()).isCloseTo(p * q, withPercentage(0.05));
    // fan efficiency 0.5, motor 0.8, drive 0.7 of 50 W
    double shaft = p * q / 0.5;
    assertThat(f.get(MachineFigure.SHAFT_POWER).value()).isCloseTo(shaft, withPercentage(0.05));
    assertThat(f.get(MachineFigure.ELECTRICAL_POWER).value())
        .isCloseTo(shaft / 0.8, withPercentage(0.05));
    assertThat(f.get(MachineFigure.RUN_TIME).value())
        .isCloseTo(1800 / (shaft / 0.8), withPercentage(0.05));
    assertThat(f.get(MachineFigure.RUN_TIME_DRIVING).value())
        .isCloseTo(1800 / (shaft / 0.8 + 50 / 0.7), withPercentage(0.05));
    double force = p * AREA;
    assertThat(f.get(MachineFigure.DOWNFORCE).value()).isCloseTo(force, withPercentage(0.05));
    assertThat(f.get(MachineFigure.FLOOR_FORCE).value()).isCloseTo(force, withPercentage(0.05));
    assertThat(f.get(MachineFigure.LIP_FORCE).value()).isZero();
    assertThat(f.get(MachineFigure.FAN_THRUST).value()).isZero();
    assertThat(f.get(MachineFigure.VALVE_FORCE).value()).isZero();
    assertThat(f.get(MachineFigure.CENTRE_X).value()).isCloseTo(0, within(1e-6));
    assertThat(f.get(MachineFigure.CENTRE_Y).value()).isCloseTo(0, within(1e-6));
    // weight 30 mm ahead of the middle of the wheelbase of 0.2 m, suction in the middle
    double weight = MASS * Air.GRAVITY;
    assertThat(f.axleLoads()).hasSize(2);
    assertThat(f.axleLoads().get(0).value())
        .isCloseTo(0.5 * force + weight * 0.13 / 0.2, withPercentage(0.05));
    assertThat(f.axleLoads().get(1).value())
        .isCloseTo(0.5 * force + weight * 0.07 / 0.2, withPercentage(0.05));
    assertThat(f.edgeGaps()).extracting(Estimate::value).hasSize(2);
    assertThat(f.edgeGaps().get(0).value()).isCloseTo(Machines.GAP, within(1e-9));
    assertThat(f.edgeLeaks().get(0).value()).isCloseTo(0.5 * q, withPercentage(0.05));
    assertThat(f.edgeLeaks().get(1).value()).isCloseTo(0.5 * q, withPercentage(0.05));
    assertThat(f.get(MachineFigure.LEAST_GAP).value()).isCloseTo(Machines.GAP, within(1e-9));
    assertThat(f.get(MachineFigure.HEAVE).value()).isCloseTo(0, within(1e-6));
  }

  /**
   * The band of the leak is shared out as in the coefficient, 0.02 grid to 0.01 iteration of 0.04;
   * the allowance for the length of the seal around a curve makes both shares smaller.
   */
  @Test
  void bandsAreSharedOutAsInTheLeak() {
    Bands<PlenumState> b = Objects.requireNonNull(Settling.settled(balance, Stand.REST));
    assertThat(b.numerical()).isCloseTo(2 * b.iteration(), within(1e-9));
    assertThat(b.numerical()).isBetween(0.3, 0.4);
    // more leak, less suction: C from 0.65 to 0.73 at least
    double per = (900 / suction() - 1) / (Machines.C * Machines.C);
    assertThat(Objects.requireNonNull(b.low()).suction())
        .isGreaterThan(0.9995 * 900 / (1 + per * 0.65 * 0.65));
    assertThat(Objects.requireNonNull(b.high()).suction())
        .isLessThan(1.0005 * 900 / (1 + per * 0.73 * 0.73));
  }

  /** One point of a fan that falls all the way, with the bands of both sides. */
  @Test
  void pointsAreThoseOfTheSettledState() {
    List<OperatingPoint> points = Settling.points(balance, Stand.REST);
    assertThat(points).hasSize(1);
    OperatingPoint point = points.get(0);
    assertThat(point.stable()).isTrue();
    assertThat(point.suction().value()).isCloseTo(suction(), withPercentage(0.02));
    Bands<PlenumState> b = Objects.requireNonNull(Settling.settled(balance, Stand.REST));
    assertThat(point.suction().low())
        .isCloseTo(Objects.requireNonNull(b.high()).suction(), withPercentage(1e-6));
    assertThat(point.suction().high())
        .isCloseTo(Objects.requireNonNull(b.low()).suction(), withPercentage(1e-6));
  }

  /** Weight and suction on the wheels; without either nothing. */
  @Test
  void wheelsCarryWeightAndSuction() {
    double[] wheels = Settling.wheelLoads(balance, new double[] {100, 100 * 0.05, 0});
    double sum = 0;
    for (double w : wheels) {
      sum += w;
    }
    assertThat(sum).isCloseTo(100 + MASS * Air.GRAVITY, within(1e-6));
    double[] axles = Settling.axleLoads(balance, new double[] {100, 100 * 0.05, 0});
    assertThat(axles[0])
        .isCloseTo(100 * 0.15 / 0.2 + MASS * Air.GRAVITY * 0.13 / 0.2, within(1e-6));
    assertThat(machine.floor().vertices().get(0)).isEqualTo(new Vertex(Machines.RADIUS, 0, 1));
  }

  /** Each point of a humped curve has its own band: from the point of its kind on either side. */
  @Test
  void everyPointHasItsBand() {
    Machine m = Machines.round(Machines.steepHump(), Machines.RIGID);
    double p = m.fan().running(m.duty().air().air().density()).pressureAt(0.035);
    double jet = Math.sqrt(2 * p / m.duty().air().air().density());
    double gap = 0.035 / (Machines.C * SEAL * jet);
    Machine at = m.withFloor(m.floor().withGaps(gap / Machines.GAP));
    PlenumBalance b = new PlenumBalance(at, laws());
    List<PlenumState> low = b.points(Stand.REST.at(Side.LOW));
    List<PlenumState> high = b.points(Stand.REST.at(Side.HIGH));
    List<OperatingPoint> points = Settling.points(b, Stand.REST);
    assertThat(points).hasSize(3);
    assertThat(low).hasSize(3);
    assertThat(high).hasSize(3);
    for (int k = 0; k < 3; k++) {
      Estimate q = points.get(k).flows().fan();
      double one = low.get(k).flows().fan();
      double other = high.get(k).flows().fan();
      assertThat(q.low()).isCloseTo(Math.min(Math.min(one, other), q.value()), within(1e-12));
      assertThat(q.high()).isCloseTo(Math.max(Math.max(one, other), q.value()), within(1e-12));
      assertThat(points.get(k).stable()).isEqualTo(k != 1);
      assertThat(points.get(k).settled()).isEqualTo(k == 2);
    }
  }

  /** States are alike by suction, flow and sink; a gap of 0 touches. */
  @Test
  void statesAreAlikeByWhatTheyAre() {
    PlenumState s = balance.at(0.05, 500, Stand.REST);
    PlenumState same = balance.at(0.05, 500, Stand.REST).judged(true, true);
    assertThat(same).isEqualTo(s).hasSameHashCodeAs(s);
    assertThat(same.stable() && same.stalled()).isTrue();
    assertThat(List.of(balance.at(0.06, 500, Stand.REST), balance.at(0.05, 600, Stand.REST)))
        .doesNotContain(s)
        .noneMatch(other -> other.hashCode() == s.hashCode());
    assertThat(balance.at(0.05, 500, Stand.REST.held(new double[] {1e-4, 0, 0}))).isNotEqualTo(s);
    assertThat(s.equals("state")).isFalse();
    double[] down = {Machines.GAP, 0, 0};
    assertThat(balance.at(0.05, 500, Stand.REST.held(down)).touches()).isTrue();
    assertThat(s.touches()).isFalse();
    assertThat(s.demand()).isEqualTo(s.flows().leak());
  }
}
