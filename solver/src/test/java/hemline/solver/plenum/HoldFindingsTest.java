package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.problem.NoticeKind;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.ReliefValve;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What once was told too hopefully, each with a number worked out by hand. */
class HoldFindingsTest {
  private static final double G = 9.80665;

  /** So stiff that gaps, suction and downforce F are the same in every attitude. */
  private static Machine stiff(double mass, boolean frontDriven, double height) {
    return HoldMachines.plain()
        .withRunning(
            HoldMachines.plain()
                .running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.15, 0.28, 1e11, frontDriven),
                        new Axle("rear", -0.15, 0.28, 1e11, true))))
        .withLoad(new Load(mass, 0, 0, height));
  }

  private static PlenumBalance balance(Machine m) {
    return new PlenumBalance(m, HoldMachines.laws("lip"));
  }

  private static Hold hold(Machine m, String place) {
    return new HoldStudy(balance(m))
        .all().stream().filter(h -> h.place().name().equals(place)).findFirst().orElseThrow();
  }

  private static double value(hemline.shared.result.@Nullable Estimate e) {
    return Objects.requireNonNull(e).value();
  }

  /** Rolling front wheels hold nothing along: μ N_rear = μ (N/2 + W sin α H / base), nose up. */
  @Test
  void rollingWheelsHoldOnlySideways() {
    Machine m = stiff(4, false, 0.05);
    double f = Machines.settled(balance(m)).parts().sum();
    double w = 4 * G;
    double s = Math.sqrt(0.5);
    double normal = f + w * s;
    double moved = w * s * 0.05 / 0.3;
    Attitude up = Attitude.noseUp(Math.PI / 4);
    HoldSearch search = HoldSearch.whole(new HoldStatics(balance(m), true));
    assertThat(search.found(up, null).margins().slip())
        .isCloseTo(0.8 * (0.5 * normal + moved) / (w * s), withPercentage(0.01));
    assertThat(search.found(new Attitude(Math.PI / 4, 0), null).margins().slip())
        .isCloseTo(0.8 * (0.5 * normal - moved) / (w * s), withPercentage(0.01));
    // across the machine all four hold
    assertThat(search.found(new Attitude(Math.PI / 4, Math.PI / 2), null).margins().slip())
        .isCloseTo(0.8 * normal / (w * s), withPercentage(0.01));
    Hold slope = hold(m, "slope");
    assertThat(slope.place().heading()).isEqualTo("nose down");
    assertThat(value(slope.margins().slip()))
        .isCloseTo(0.8 * (0.5 * normal - moved) / (w * s), withPercentage(0.01));
  }

  /**
   * F / W = k: slip on ground tilted by α is μ (k + cos α) / sin α, least where cos α = −1 / k:
   * there μ √(k² − 1). With k = 1.35 and μ = 0.8 wall and ceiling hold (1.08, 1.35), 138° does not
   * (0.73).
   */
  @Test
  void findsTheWorstTiltBetweenWallAndCeiling() {
    Machine light = stiff(4, true, 0.0);
    double f = Machines.settled(balance(light)).parts().sum();
    Machine m = stiff(f / 1.35 / G, true, 0.0);
    assertThat(hold(m, "wall").holds()).isTrue();
    assertThat(hold(m, "ceiling").holds()).isTrue();
    Hold worst = hold(m, "worst");
    assertThat(worst.holds()).isFalse();
    assertThat(value(worst.margins().least()))
        .isCloseTo(0.8 * Math.sqrt(1.35 * 1.35 - 1), withPercentage(0.05));
    assertThat(worst.place().angle()).isCloseTo(Math.acos(-1 / 1.35), within(0.01));
    assertThat(new HoldStudy(balance(m)).overTilt())
        .hasSize(25)
        .anySatisfy(p -> assertThat(value2(p)).isLessThan(0.75));
  }

  private static double value2(HoldPoint p) {
    return p.margin() == null ? 9 : p.margin().value();
  }

  /** A level jet T at the height of the ground pulls along: nose down μ N / (W + T). */
  @Test
  void aSidewaysJetPulls() {
    Machine m = HoldMachines.jet(stiff(4, true, 0.0), 1.5e-3, 0, 0);
    Fan fan = m.fan();
    m =
        m.withFan(
            new Fan(
                fan.curve(),
                fan.speed(),
                fan.maximumSpeed(),
                0.3,
                new Fan.Outlet(fan.outlet().area(), 0, 0, 0, 0),
                0));
    PlenumBalance b = balance(m);
    PlenumState s = Machines.settled(b);
    double t = b.air().density() * s.flows().fan() * s.flows().fan() / 1.5e-3;
    assertThat(t).isGreaterThan(1);
    Hold wall = hold(m, "wall");
    assertThat(wall.place().heading()).isEqualTo("nose down");
    assertThat(value(wall.margins().slip()))
        .isCloseTo(0.8 * s.parts().sum() / (4 * G + t), withPercentage(0.02));
  }

  /** ½ ρ q v² = P − q Δp bounds the jet, whatever the outlet; and then no hold is shown. */
  @Test
  void aJetNeedsPower() {
    Machine m = HoldMachines.jet(stiff(4, true, 0.02), 2e-4, Math.PI / 2, 0);
    PlenumState s = Machines.settled(balance(m));
    double q = s.flows().fan();
    double power = q * s.suction() / 0.5;
    double rho = m.duty().air().air().density();
    double v = Math.sqrt(2 * (power - q * s.suction()) / (rho * q));
    assertThat(q / 2e-4).isGreaterThan(3 * v);
    assertThat(s.parts().thrust()).isCloseTo(rho * q * v, withPercentage(1e-6));
    Hold wall = hold(m, "wall");
    assertThat(wall.judgement().verdict()).isEqualTo(HoldVerdict.NOT_SHOWN);
    assertThat(wall.holds()).isFalse();
    assertThat(wall.judgement().reasons()).containsExactly(NoticeKind.FAN_OUTLET.of());
  }

  /**
   * Nose up or down nothing turns; left side up, the weight e = 0.06 m ahead of four alike wheels
   * at (±a, ±b) turns the machine. Sliding about a centre at (−c, 0) dissipates μ N/4 Σ |r_i − c|
   * against W (e + c); the least over c is the margin.
   */
  @Test
  void yawTakesFriction() {
    Machine m = stiff(4, true, 0.0).withLoad(new Load(4, 0.06, 0, 0));
    double f = Machines.settled(balance(m)).parts().sum();
    double least = Double.POSITIVE_INFINITY;
    for (double c = -0.05; c < 3; c += 1e-4) {
      double front = Math.hypot(0.15 + c, 0.14);
      double rear = Math.hypot(c - 0.15, 0.14);
      least = Math.min(least, 0.8 * 0.25 * f * 2 * (front + rear) / (4 * G * (0.06 + c)));
    }
    HoldSearch search = HoldSearch.whole(new HoldStatics(balance(m), true));
    double slip = search.found(new Attitude(Math.PI / 2, 1.5 * Math.PI), null).margins().slip();
    assertThat(slip).isCloseTo(least, withPercentage(0.02));
    assertThat(slip).isLessThan(0.97 * 0.8 * f / (4 * G));
  }

  /** Every column has its own worst heading: over the narrow side the machine tips first. */
  @Test
  void columnsHaveTheirOwnWorstHeading() {
    Machine m = stiff(4, false, 0.05);
    double f = Machines.settled(balance(m)).parts().sum();
    Hold wall = hold(m, "wall");
    assertThat(wall.place().heading()).isEqualTo("nose down");
    assertThat(wall.headings().tip()).isEqualTo("left side up");
    assertThat(value(wall.margins().tip()))
        .isCloseTo(f * 0.14 / (4 * G * 0.05), withPercentage(0.01));
    assertThat(value(wall.margins().axleLift()))
        .isCloseTo(f * 0.14 / (4 * G * 0.05), withPercentage(0.01));
  }

  /** On a wall no part of the weight presses: a dip there leaves less than one on level ground. */
  @Test
  void dipsAreJudgedInTheirAttitude() {
    Machine m =
        HoldMachines.plain()
            .withLoad(new Load(4.5, 0, 0, 0.03))
            .withStep(new GroundStep(3e-3, 0.25));
    PlenumBalance b = balance(m);
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    List<Hold> whole = new HoldStudy(b).all();
    StepCrossing dip = StepStudy.of(b, rest, whole).get(0);
    Hold wall = Objects.requireNonNull(dip.hold("wall"));
    SecondStatics second = new SecondStatics(m, HoldMachines::discharge, HoldMachines.LIFT);
    SecondStatics.Dip over = new SecondStatics.Dip(3e-3, 0.25, List.of(0), -1);
    double least = Double.POSITIVE_INFINITY;
    for (int d = 0; d < 360; d += 15) {
      double downhill = Math.toRadians(d);
      SecondStatics.Found before =
          Objects.requireNonNull(second.settle(Math.PI / 2, downhill, null, null));
      for (double[] keep : new double[][] {before.plane(), null}) {
        SecondStatics.Found s = second.settle(Math.PI / 2, downhill, over, keep);
        least = Math.min(least, second.slip(Objects.requireNonNull(s)));
      }
    }
    assertThat(value(wall.margins().slip())).isCloseTo(least, withPercentage(0.2));
    Hold intact =
        whole.stream().filter(h -> h.place().name().equals("wall")).findFirst().orElseThrow();
    assertThat(value(wall.margins().slip())).isLessThan(0.97 * value(intact.margins().slip()));
  }

  /** Motor, battery, fan and drive together, valve at its stop: the margins stand, the yes goes. */
  @Test
  void nothingIsShownBeyondALimit() {
    Machine m = stiff(4, true, 0.02);
    assertThat(hold(m, "wall").judgement().verdict()).isEqualTo(HoldVerdict.YES);
    PlenumState s = Machines.settled(balance(m));
    double fan = s.flows().fan() * s.suction() / 0.5 / 0.8;
    Machine motor = m.withPower(new PowerSupply(0.8, 0.99 * fan, 3600, 1, 1e9));
    Machine battery = m.withPower(new PowerSupply(0.8, 1e9, 3600, 1, 0.99 * fan));
    // the drive takes 30 W / 0.7 beside the fan
    Machine both = m.withPower(new PowerSupply(0.8, 1e9, 3600, 1, fan + 42.8));
    Machine enough = m.withPower(new PowerSupply(0.8, 1e9, 3600, 1, fan + 43));
    Machine stop = m.withValve(new ReliefValve(1e-4, 10, 0, 1e-3, 0.62, 0.01, 0.3));
    for (Machine one : List.of(motor, battery, both, stop)) {
      Hold wall = hold(one, "wall");
      assertThat(wall.judgement().verdict()).isEqualTo(HoldVerdict.NOT_SHOWN);
      assertThat(value(wall.margins().least())).isGreaterThan(1);
    }
    assertThat(hold(enough, "wall").judgement().verdict()).isEqualTo(HoldVerdict.YES);
  }

  /** Four wheels, one much softer: the centre of gravity lies inside, yet one wheel hangs free. */
  @Test
  void standsOnThreeWheels() {
    Machine m = stiff(4, true, 0.02).withLoad(new Load(4, 0.08, 0.08, 0.02));
    Wheels wheels = balance(m).wheels();
    double[] n = wheels.pressed(wheels.weight());
    assertThat(n[3]).isZero();
    // moments about the line of the two left wheels, and of the two front wheels
    assertThat(n[1] * 0.28).isCloseTo(4 * G * (0.14 - 0.08), within(1e-6));
    assertThat(n[2] * 0.3).isCloseTo(4 * G * (0.15 - 0.08), within(1e-6));
    assertThat(n[0] + n[1] + n[2]).isCloseTo(4 * G, within(1e-6));
  }
}
