package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.ReliefValve;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Leaks, smallest gaps, loads and moments of a floor that leans and lies beside the origin. */
class PlenumTiltTest {
  private static final double P = 500;
  private static final double CX = 0.05;
  private static final double CY = -0.02;
  private static final double LENGTH = 0.4;
  private static final double WIDTH = 0.2;

  /** Down at the nose and to the left: 1.1 mm at (0.25, 0.08), the lowest corner. */
  private static final double[] LEANING = {2e-4, 2e-3, 5e-3};

  private static final double LIFT = -4e-3;

  private static Machine box(double stiffness) {
    double a = 0.5 * LENGTH;
    double b = 0.5 * WIDTH;
    return Machines.with(
        Machines.quadratic(900, 6e4),
        stiffness,
        List.of(
            new Vertex(CX + a, CY - b),
            new Vertex(CX + a, CY + b),
            new Vertex(CX - a, CY + b),
            new Vertex(CX - a, CY - b)),
        3);
  }

  private static double sink(double x, double y) {
    return LEANING[0] + LEANING[1] * x + LEANING[2] * y;
  }

  private static double perGap(Machine m) {
    return Machines.C * Math.sqrt(2 * P / m.duty().air().air().density());
  }

  /** A gap that varies along an edge leaks by its mean; corners add half their gap to each edge. */
  @Test
  void leaksOfALeaningFloor() {
    Machine m = box(Machines.RIGID);
    PlenumBalance balance = new PlenumBalance(m, Machines.constant(Machines.C, 0));
    PlenumState s = balance.at(0.05, P, Stand.REST.held(LEANING));
    double[][] corner = {
      {CX + 0.2, CY - 0.1}, {CX + 0.2, CY + 0.1}, {CX - 0.2, CY + 0.1}, {CX - 0.2, CY - 0.1}
    };
    double all = 0;
    for (int e = 0; e < 4; e++) {
      double[] from = corner[e];
      double[] to = corner[(e + 1) % 4];
      double first = Machines.GAP - sink(from[0], from[1]);
      double last = Machines.GAP - sink(to[0], to[1]);
      double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      double area = length * 0.5 * (first + last) + 0.5 * (first * first + last * last);
      assertThat(s.flows().edgeLeaks()[e]).as("%d", e).isCloseTo(perGap(m) * area, within(1e-12));
      assertThat(balance.leastGap(e, s.sink())).isCloseTo(Math.min(first, last), within(1e-12));
      all += perGap(m) * area;
    }
    assertThat(s.flows().leak()).isCloseTo(all, within(1e-12));
    assertThat(s.least().gap()).isCloseTo(Machines.GAP - sink(CX + 0.2, CY + 0.1), within(1e-12));
    assertThat(s.least().edge()).isIn(0, 1);
  }

  /** Each corner in turn is the lowest; where a lip touches, nothing leaks there. */
  @Test
  void theLowestCornerHasTheSmallestGap() {
    Machine m = HoldMachines.gaps(box(Machines.RIGID), 2e-3, 3e-3, 4e-3, 5e-3);
    PlenumBalance balance = new PlenumBalance(m, Machines.constant(Machines.C, 0));
    PlenumState flat = balance.at(0.05, P, Stand.REST.held(new double[3]));
    assertThat(flat.least().edge()).isZero();
    assertThat(flat.least().gap()).isCloseTo(2e-3, within(1e-12));
    // the rear sinks by 1.5 mm, where the edge on the left has its 3 mm; the nose rises by 2.5 mm
    PlenumState rear = balance.at(0.05, P, Stand.REST.held(new double[] {0, -0.01, 0}));
    assertThat(rear.least().edge()).isEqualTo(1);
    assertThat(rear.least().gap()).isCloseTo(1.5e-3, within(1e-12));
    PlenumState down = balance.at(0.05, P, Stand.REST.held(new double[] {4.5e-3, 0, 0}));
    assertThat(down.touches()).isTrue();
    assertThat(down.least().gap()).isCloseTo(-2.5e-3, within(1e-12));
    assertThat(down.flows().edgeLeaks()[0]).isZero();
    assertThat(down.flows().edgeLeaks()[3]).isGreaterThan(0);
  }

  private static Map<String, LeakLaw> lifting() {
    List<Double> gaps = List.of(1e-4, 1e-2);
    List<Double> suctions = List.of(1.0, 1e4);
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : gaps) {
      for (double suction : suctions) {
        LeakPoint p = Machines.point(gap, suction, Estimate.exact(Machines.C));
        points.add(p.with(p.discharge(), Estimate.exact(LIFT)));
      }
    }
    return Map.of("lip", new LeakLaw(new LeakTable(gaps, suctions, points)));
  }

  private static final double LIPS = -LIFT * P * 2 * (LENGTH + WIDTH);

  /** Floor and lips press at the centre, the jet at its outlet, and its level part turns. */
  @Test
  void momentsOfFloorLipsAndJet() {
    double area = 3e-3;
    double angle = 0.4;
    double q = 0.05;
    Machine m = box(Machines.RIGID);
    Fan f = m.fan();
    m =
        m.withFan(
            new Fan(
                f.curve(), f.speed(), 1e9, 0.3, new Fan.Outlet(area, angle, -0.07, 0.03, 0.06), 0));
    PlenumBalance balance = new PlenumBalance(m, lifting());
    PlenumState s = balance.at(q, P, Stand.REST);
    double jet = balance.air().density() * q * q / area;
    double down = jet * Math.sin(angle);
    double ahead = jet * Math.cos(angle);
    double floor = P * LENGTH * WIDTH;
    assertThat(s.parts().floor()).isCloseTo(floor, within(1e-9));
    assertThat(s.parts().lips()).isCloseTo(LIPS, within(1e-9));
    assertThat(s.parts().thrust()).isCloseTo(down, within(1e-12));
    assertThat(balance.forwardThrust(q, P)).isCloseTo(ahead, within(1e-12));
    assertThat(s.load()[0]).isCloseTo(floor + LIPS + down, within(1e-9));
    assertThat(s.load()[1])
        .isCloseTo((floor + LIPS) * CX - 0.07 * down + 0.06 * ahead, within(1e-9));
    assertThat(s.load()[2]).isCloseTo((floor + LIPS) * CY + 0.03 * down, within(1e-9));
  }

  /** Springs of 2 k: an extra load sinks the floor by N / 2k, N x / Σ k x² and N y / Σ k y². */
  @Test
  void extraLoadsAddToTheSink() {
    double k = 1e5;
    PlenumBalance balance = new PlenumBalance(box(k), Machines.constant(Machines.C, 0));
    double[] none = balance.sink(new double[3], Stand.REST);
    assertThat(none).containsExactly(new double[3], within(1e-12));
    double[] load = {20, 0.3, -0.2};
    double[] extra = {10, 0.4, 0.1};
    double[] s = balance.sink(load, Stand.REST.loaded(extra).softened(2));
    // axles at ±0.1 m, wheels at ±0.1 m, a quarter of the stiffness each
    assertThat(s[0]).isCloseTo(2 * 30 / k, within(1e-12));
    assertThat(s[1]).isCloseTo(2 * 0.7 / (k * 0.01), within(1e-12));
    assertThat(s[2]).isCloseTo(2 * -0.1 / (k * 0.01), within(1e-12));
  }

  /** Guesses scale what they name: leaks, lip force, corner allowance, the valve's jet. */
  @Test
  void guessesScaleWhatTheyName() {
    Machine m =
        box(Machines.RIGID).withValve(new ReliefValve(1.2e-3, 400, 0.25, 0.05, 0.62, 0.01, 0.1));
    PlenumBalance usual = new PlenumBalance(m, lifting());
    PlenumState s = usual.at(0.05, P, Stand.REST);
    double h = Machines.GAP;
    assertThat(s.flows().leak())
        .isCloseTo(perGap(m) * h * (2 * (LENGTH + WIDTH) + 4 * h), withPercentage(1e-5));
    Guessed g = Guessed.USUAL;
    assertThat(usual.guessing(g.withLeak(1.2)).at(0.05, P, Stand.REST).flows().leak())
        .isCloseTo(1.2 * s.flows().leak(), withPercentage(1e-5));
    assertThat(usual.guessing(g.withLipForce(0.8)).at(0.05, P, Stand.REST).parts().lips())
        .isCloseTo(0.8 * LIPS, within(1e-9));
    PlenumBalance corner = usual.guessing(g.withCorner(1.5));
    assertThat(corner.at(0.05, P, Stand.REST).flows().leak())
        .isCloseTo(perGap(m) * h * (2 * (LENGTH + WIDTH) + 6 * h), withPercentage(1e-5));
    // the ends of the band are no guesses
    for (Side side : List.of(Side.LOW, Side.HIGH)) {
      assertThat(corner.at(0.05, P, Stand.REST.at(side)).flows().leak())
          .isEqualTo(usual.at(0.05, P, Stand.REST.at(side)).flows().leak());
    }
    double jet = s.parts().valve();
    assertThat(usual.guessing(g.withValveJet(0.9)).at(0.05, P, Stand.REST).parts().valve())
        .isCloseTo(1.8 * jet, withPercentage(1e-9));
    assertThat(usual.at(0.05, P, Stand.REST.at(Side.LOW)).parts().valve()).isZero();
    assertThat(usual.at(0.05, P, Stand.REST.at(Side.HIGH)).parts().valve())
        .isCloseTo(2 * jet, withPercentage(1e-9));
  }

  /** A corner over a dip opens with it: its allowance is a gap of the opened seal. */
  @Test
  void aCornerOverADip() {
    Machine m = box(Machines.RIGID);
    PlenumBalance balance = new PlenumBalance(m, Machines.constant(Machines.C, 0));
    Crossing dip = new Crossing(1e-3, 0.05, java.util.Set.of(0, 1), 1);
    PlenumState s = balance.at(0.05, P, Stand.REST.over(dip));
    PlenumState flat = balance.at(0.05, P, Stand.REST);
    double h = Machines.GAP;
    double opened = (h + 1e-3) * (h + 1e-3) - h * h;
    assertThat(s.flows().leak() - flat.flows().leak())
        .isCloseTo(perGap(m) * (2 * 0.05 * 1e-3 + opened), withPercentage(1e-4));
    // a ledge as high as the gap shuts it
    PlenumState shut =
        balance.at(0.05, P, Stand.REST.over(new Crossing(-h, 9, java.util.Set.of(0), -1)));
    assertThat(flat.flows().leak() - shut.flows().leak())
        .isCloseTo(perGap(m) * h * WIDTH, withPercentage(1e-4));
  }

  /**
   * Settled figures of the same machine with jet and valve: parts, centre of pressure without the
   * jet's moment, axle loads and ride height, all from suction and flow.
   */
  @Test
  void settledFiguresOfALopsidedMachine() {
    double k = 1e5;
    Fan f = box(k).fan();
    Machine m =
        box(k)
            .withFan(
                new Fan(
                    f.curve(),
                    f.speed(),
                    1e9,
                    0.3,
                    new Fan.Outlet(3e-3, 0.4, -0.07, 0.03, 0.06),
                    0))
            .withLoad(new Load(3, 0.01, 0.005, 0.05))
            .withValve(new ReliefValve(1.2e-3, 400, 0.25, 0.05, 0.62, 0.01, 0.1));
    PlenumBalance balance = new PlenumBalance(m, lifting());
    Bands<PlenumState> b = Objects.requireNonNull(Settling.settled(balance, Stand.REST));
    SettledFigures s = Settling.figures(balance, b);
    double p = s.get(MachineFigure.SUCTION).value();
    double q = s.get(MachineFigure.FAN_FLOW).value();
    double rho = balance.air().density();
    double jet = rho * q * q / 3e-3;
    double floor = p * LENGTH * WIDTH;
    double lips = -LIFT * p * 2 * (LENGTH + WIDTH);
    double lift = (1.2e-3 * p - 0.25) / 400;
    double speed = Math.sqrt(2 * p / rho);
    double valve = -0.5 * rho * 0.62 * 2 * Math.sqrt(Math.PI * 1.2e-3) * lift * speed * speed;
    double down = jet * Math.sin(0.4);
    double sum = floor + lips + down + valve;
    assertThat(s.get(MachineFigure.FLOOR_FORCE).value()).isCloseTo(floor, within(1e-9));
    assertThat(s.get(MachineFigure.LIP_FORCE).value()).isCloseTo(lips, within(1e-9));
    assertThat(s.get(MachineFigure.FAN_THRUST).value()).isCloseTo(down, within(1e-9));
    assertThat(s.get(MachineFigure.VALVE_FORCE).value()).isCloseTo(valve, within(1e-9));
    assertThat(s.get(MachineFigure.DOWNFORCE).value()).isCloseTo(sum, within(1e-9));
    double momentX = (floor + lips + valve) * CX - 0.07 * down;
    double momentY = (floor + lips + valve) * CY + 0.03 * down;
    assertThat(s.get(MachineFigure.CENTRE_X).value()).isCloseTo(momentX / sum, within(1e-9));
    assertThat(s.get(MachineFigure.CENTRE_Y).value()).isCloseTo(momentY / sum, within(1e-9));
    // the level part of the jet turns it about the ground
    double turned = momentX + 0.06 * jet * Math.cos(0.4);
    double weight = 3 * Wheels.GRAVITY;
    assertThat(s.axleLoads().get(0).value())
        .isCloseTo(0.5 * (sum + weight) + (turned + 0.01 * weight) / 0.2, within(1e-6));
    assertThat(s.axleLoads().get(1).value())
        .isCloseTo(0.5 * (sum + weight) - (turned + 0.01 * weight) / 0.2, within(1e-6));
    assertThat(s.get(MachineFigure.HEAVE).value()).isCloseTo(sum / k, within(1e-9));
    assertThat(s.get(MachineFigure.PITCH).value()).isCloseTo(turned / (k * 0.01), within(1e-9));
    double[] wheels = Settling.wheelLoads(balance, new double[] {sum, turned, momentY});
    double left = wheels[0] + wheels[1] + wheels[2] + wheels[3];
    assertThat(left).isCloseTo(sum + weight, within(1e-6));
  }
}
