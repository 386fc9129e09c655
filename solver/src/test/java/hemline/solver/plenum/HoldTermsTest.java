package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.problem.NoticeKind;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.Tolerances;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Brakes, surfaces, ledges, limits and sensitivities, each with a number worked out by hand. */
class HoldTermsTest {
  private static final double G = 9.80665;
  private static final double NONE = Double.POSITIVE_INFINITY;

  /** Rigid, centre of gravity on the ground: only friction counts, and F does not move. */
  private static Machine rigid(double mass, double frontBrake, double rearBrake) {
    Machine p = HoldMachines.plain();
    return p.withRunning(
            p.running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.15, 0.28, 1e11, true).withBrake(frontBrake),
                        new Axle("rear", -0.15, 0.28, 1e11, true).withBrake(rearBrake))))
        .withLoad(new Load(mass, 0, 0, 0));
  }

  private static PlenumBalance balance(Machine m) {
    return new PlenumBalance(m, HoldMachines.laws("lip"));
  }

  private static Hold hold(Machine m, String place) {
    return new HoldStudy(balance(m))
        .all().stream().filter(h -> h.place().name().equals(place)).findFirst().orElseThrow();
  }

  private static double force(Machine m) {
    return Machines.settled(balance(m)).parts().sum();
  }

  /** On a wall, nose up: both brakes together over the weight; across, all the friction. */
  @Test
  void aBrakeHoldsNoMoreThanItsTorque() {
    Machine m = rigid(4, 25, 20);
    double f = force(m);
    assertThat(0.8 * 0.5 * f).isGreaterThan(25);
    HoldSearch search = HoldSearch.whole(new HoldStatics(balance(m), true));
    HoldStatics.Margins up = search.found(Attitude.noseUp(Math.PI / 2), null).margins();
    assertThat(up.slip()).isCloseTo(45 / (4 * G), withPercentage(0.01));
    assertThat(up.brakes()).isTrue();
    HoldStatics.Margins across =
        search.found(new Attitude(Math.PI / 2, Math.PI / 2), null).margins();
    // front and rear hold alike across, so nothing turns
    assertThat(across.slip()).isCloseTo(0.8 * f / (4 * G), withPercentage(0.01));
    assertThat(across.brakes()).isFalse();
    Hold wall = hold(m, "wall");
    assertThat(wall.judgement().limitedBy()).isEqualTo("brakes");
    assertThat(Objects.requireNonNull(wall.margins().slip()).value())
        .isCloseTo(45 / (4 * G), withPercentage(0.01));
    // the least friction is that at which the wheels slip before the brakes yield
    assertThat(45 / (4 * G)).isGreaterThan(1);
    HoldEnd end = end(m, "wall");
    double across1 = 4 * G / f; // friction with which the whole seal's press holds the weight
    assertThat(Objects.requireNonNull(end.grip().friction())).isGreaterThan(across1);
    SecondStatics second =
        new SecondStatics(
            m.withRunning(m.running().gripping(end.grip().friction() / 0.8)),
            HoldMachines::discharge,
            HoldMachines.LIFT);
    double least = Double.POSITIVE_INFINITY;
    for (int d = 0; d < 360; d += 15) {
      least =
          Math.min(
              least,
              second.slip(
                  Objects.requireNonNull(
                      second.settle(Math.PI / 2, Math.toRadians(d), null, null))));
    }
    assertThat(least).isCloseTo(1, withPercentage(0.3));
  }

  /** Oblique loads, yaw and one weak brake: within 0.1 % of trying ways to slide. */
  @ParameterizedTest
  @CsvSource({"12, 9, 0.03", "40, 3, -0.05", "5, 60, 0.0", "0.5, 0.5, 0.02"})
  void weakBrakesAgreeWithWaysToSlide(double front, double rear, double y) {
    Machine m = rigid(4, front, rear).withLoad(new Load(4, 0.04, y, 0.03));
    HoldSearch search = HoldSearch.whole(new HoldStatics(balance(m), true));
    SecondStatics second = new SecondStatics(m, HoldMachines::discharge, HoldMachines.LIFT);
    for (int t : new int[] {40, 90, 130}) {
      for (int d = 0; d < 360; d += 20) {
        double tilt = Math.toRadians(t);
        double downhill = Math.toRadians(d);
        SecondStatics.Found s = Objects.requireNonNull(second.settle(tilt, downhill, null, null));
        HoldStatics.Margins f = search.found(new Attitude(tilt, downhill), null).margins();
        assertThat(f.slip()).as("%d, %d", t, d).isCloseTo(second.slip(s), withPercentage(0.1));
        assertThat(f.sliding())
            .as("%d, %d", t, d)
            .isCloseTo(second.sliding(s), withPercentage(0.1));
      }
    }
  }

  /** Rolling wheels that alone press resist across only; along they hold nothing. */
  @Test
  void rollingWheelsAlone() {
    FrictionLimit f =
        new FrictionLimit(
            new double[] {0.1, 0.1, -0.1, -0.1},
            new double[] {0.15, -0.15, 0.09, -0.09},
            new double[] {0, 0, NONE, NONE});
    double[] limit = {21.7, 7.4, 0, 0};
    assertThat(f.factor(limit, 10, 3, 0.5)).isCloseTo(0, within(1e-6));
    assertThat(f.factor(limit, 0, 10, 1)).isCloseTo(2.91, withPercentage(0.01));
  }

  private static HoldEnd end(Machine m, String place) {
    PlenumBalance b = balance(m);
    return HoldEndStudy.of(b, new HoldStudy(b).all()).stream()
        .filter(e -> e.place().equals(place))
        .findFirst()
        .orElseThrow();
  }

  /** Usual frictions over the least that holds, W / F on a wall. */
  @Test
  void tellsSurfacesAsMargins() {
    Machine m = rigid(4, NONE, NONE);
    double least = 4 * G / force(m);
    List<SurfaceGrip> surfaces = end(m, "wall").grip().surfaces();
    assertThat(surfaces).extracting(SurfaceGrip::surface).containsExactly("dry", "dusty", "wet");
    assertThat(surfaces.get(1).least()).isCloseTo(0.3 / least, withPercentage(0.01));
    assertThat(surfaces.get(1).most()).isCloseTo(0.6 / least, withPercentage(0.01));
    assertThat(surfaces.get(2).least()).isCloseTo(0.4 / least, withPercentage(0.01));
  }

  /**
   * Over all tilts the margin is μ √(k² − 1), k = F / W: the columns of the worst row are those of
   * the sphere, and it ends where k = √(1 + 1/μ²), wherever that is: F ~ n², payload W ~ 1 / k.
   */
  @Test
  void theWorstOfAllEndsOverAllTilts() {
    Machine m = rigid(4, NONE, NONE).withLoad(new Load(4, 0, 0, 0.02));
    double k = force(m) / (4 * G);
    Hold worst = hold(m, "worst");
    assertThat(Objects.requireNonNull(worst.margins().slip()).value())
        .isCloseTo(0.8 * Math.sqrt(k * k - 1), withPercentage(0.05));
    assertThat(Objects.requireNonNull(worst.margins().peelOff()).value())
        .isCloseTo(k, withPercentage(0.05));
    double last = Math.sqrt(1 + 1 / 0.64);
    assertThat(k).isGreaterThan(1.1 * last);
    HoldEnd end = end(m, "worst");
    // tilts 7.5° apart see the least margin within half a percent
    assertThat(end.payload()).isCloseTo(4 * (k / last - 1), withPercentage(1));
    assertThat(end.fan().speed()).isCloseTo(400 * Math.sqrt(last / k), withPercentage(0.5));
    assertThat(Objects.requireNonNull(end.grip().friction()))
        .isCloseTo(1 / Math.sqrt(k * k - 1), withPercentage(0.05));
  }

  /** A ledge of 1.5 mm passes under 2 mm; one of 2.5 mm strikes the lip, one of 45 mm the floor. */
  @ParameterizedTest
  @CsvSource({"1.5e-3, NOTHING", "2.5e-3, LIP", "45e-3, FLOOR"})
  void saysWhatALedgeStrikes(double height, StepCrossing.Strike strikes) {
    Machine m = rigid(4, NONE, NONE).withStep(new GroundStep(height, 0.1));
    PlenumBalance b = balance(m);
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    List<StepCrossing> all = StepStudy.of(b, rest, new HoldStudy(b).all());
    assertThat(all).hasSize(2 * (4 + 2 + 4));
    for (StepCrossing c : all) {
      boolean hit = c.kind().ledge() && strikes != StepCrossing.Strike.NOTHING;
      assertThat(c.strikes()).isEqualTo(hit ? strikes : StepCrossing.Strike.NOTHING);
      Hold wall = Objects.requireNonNull(c.hold("wall"));
      if (hit) {
        assertThat(c.downforce()).isNull();
        assertThat(wall.judgement().verdict()).isEqualTo(HoldVerdict.NO);
        assertThat(wall.judgement().limitedBy()).isEqualTo("ledge");
      } else if (c.kind().ledge()) {
        assertThat(Objects.requireNonNull(c.kept()).value()).isGreaterThan(1);
        assertThat(wall.judgement().verdict()).isEqualTo(HoldVerdict.YES);
      }
    }
  }

  /** Over a ledge of 1.95 mm less than the allowance of 0.1 mm is left: nothing is shown. */
  @Test
  void showsNothingWhereALedgeLeavesLessThanTheAllowance() {
    Machine m = rigid(4, NONE, NONE).withStep(new GroundStep(1.95e-3, 0.1));
    PlenumBalance b = balance(m);
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    for (StepCrossing c : StepStudy.of(b, rest, new HoldStudy(b).all())) {
      Hold wall = Objects.requireNonNull(c.hold("wall"));
      assertThat(wall.judgement().verdict())
          .isEqualTo(c.kind().ledge() ? HoldVerdict.NOT_SHOWN : HoldVerdict.YES);
    }
  }

  /** The gap is thinnest in another heading than the one that slips first. */
  @Test
  void limitsCountInEveryHeading() {
    Machine p = HoldMachines.plain();
    Machine m =
        p.withRunning(
                p.running()
                    .withAxles(
                        List.of(
                            new Axle("front", 0.15, 0.28, 2e5, false),
                            new Axle("rear", -0.15, 0.28, 1e5, true))))
            .withLoad(new Load(4, 0, 0, 0.1));
    PlenumBalance b = balance(m);
    HoldSearch search = HoldSearch.whole(new HoldStatics(b, true));
    HoldSearch.Worst slope = search.at(m.duty().slope());
    double thinnest =
        slope.looked().stream()
            .mapToDouble(f -> Objects.requireNonNull(f.state()).least().gap())
            .min()
            .orElseThrow();
    double there = Objects.requireNonNull(slope.worst().state()).least().gap();
    assertThat(there).isGreaterThan(1.05 * thinnest);
    for (double allowance : new double[] {0.97 * thinnest, 0.5 * (there + thinnest)}) {
      Hold h = hold(m.withTerms(new HoldTerms(false, 1, allowance, Tolerances.NONE)), "slope");
      assertThat(h.judgement().verdict())
          .isEqualTo(allowance < thinnest ? HoldVerdict.YES : HoldVerdict.NOT_SHOWN);
    }
  }

  /** The most overstepped state tells the figure: the fan's power where it is largest. */
  @Test
  void aLimitIsToldWhereItIsOversteppedMost() {
    Machine p = HoldMachines.plain();
    HoldStatics statics = new HoldStatics(balance(p), true);
    double most = 0;
    for (int t = 0; t <= 180; t += 30) {
      PlenumState s =
          Objects.requireNonNull(
              balance(p).settled(statics.stand(Attitude.noseUp(Math.toRadians(t)), Side.VALUE)));
      most = Math.max(most, s.suction() * s.flows().fan() / 0.5 / 0.8);
    }
    Hold worst = hold(p.withPower(new PowerSupply(0.8, 1, 3600, 1, 1e9)), "worst");
    assertThat(worst.judgement().verdict()).isEqualTo(HoldVerdict.NOT_SHOWN);
    assertThat(worst.judgement().reasons().get(0).kind()).isEqualTo(NoticeKind.POWER_MOTOR);
    assertThat(worst.judgement().reasons().get(0).numbers().get(0))
        .isCloseTo(most, withPercentage(1));
  }

  /**
   * On a wall the margin is s = μ F / W. Up a tenth and down a tenth: friction gives s, mass (1/1.1
   * − 1/0.9) / 0.2 = −1.0101 s; F ~ n² gives 2 s for the fan's speed; and with α at the wall s + μ
   * cos α / sin α, so that two degrees more take μ tan 2° and 1 / cos 2°.
   */
  @Test
  void sensitivitiesAreDerivatives() {
    Machine m = rigid(4, NONE, NONE);
    PlenumBalance b = balance(m);
    HoldStudy study = new HoldStudy(b);
    double s =
        study.all().stream()
            .filter(h -> h.place().name().equals("wall"))
            .map(h -> Objects.requireNonNull(h.margins().least()).value())
            .findFirst()
            .orElseThrow();
    Sensitivity wall =
        study.sensitivities().stream()
            .filter(x -> x.place().equals("wall"))
            .findFirst()
            .orElseThrow();
    assertThat(derivative(wall, "friction")).isCloseTo(s, withPercentage(0.01));
    assertThat(derivative(wall, "mass")).isCloseTo(-1.0101 * s, withPercentage(0.02));
    assertThat(derivative(wall, "fan speed")).isCloseTo(2 * s, withPercentage(0.05));
    double t = Math.toRadians(2);
    double up = s / Math.cos(t) - 0.8 * Math.tan(t);
    double down = s / Math.cos(t) + 0.8 * Math.tan(t);
    assertThat(derivative(wall, "tilt of the ground"))
        .isCloseTo((up - down) / (2 * t), withPercentage(0.05));
    assertThat(derivative(wall, "stiffness of the tyres")).isCloseTo(0, within(1e-4));
    // F goes with the suction, and p = p₀ / (1 + a K²), K the leaks' conductance, changes with K²
    PlenumState rest = Machines.settled(b);
    double share = 1 - rest.suction() / 1200;
    assertThat(derivative(wall, "leak under the lips"))
        .isCloseTo(-2 * share * s, withPercentage(3));
    assertThat(wall.most().orElseThrow().input()).isEqualTo("fan speed");
    assertThat(wall.mostAssumed().orElseThrow().input()).isEqualTo("leak under the lips");
    assertThat(wall.effects()).hasSizeGreaterThan(14);
    Fan f = m.fan();
    assertThat(f.outlet().area()).isZero();
    assertThat(wall.effects()).noneMatch(e -> e.input().equals("area of the outlet"));
  }

  private static double derivative(Sensitivity s, String input) {
    return s.effects().stream()
        .filter(e -> e.input().equals(input))
        .findFirst()
        .orElseThrow()
        .derivative();
  }

  /** Over a dip the depth and the length count too: both open the seal, and lower the margin. */
  @Test
  void sensitivitiesOverADip() {
    Machine m = rigid(4, NONE, NONE).withStep(new GroundStep(2e-3, 0.1));
    PlenumBalance b = balance(m);
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    StepStudy study = new StepStudy(b, rest, new HoldStudy(b).all());
    Sensitivity wall =
        study.sensitivities().stream()
            .filter(x -> x.place().equals("wall"))
            .findFirst()
            .orElseThrow();
    assertThat(wall.over()).startsWith("dip across two edges, edges");
    for (String input : List.of("height of the step", "length of the step")) {
      double[] slip = new double[2];
      for (int k = 0; k < 2; k++) {
        double part = k == 0 ? 0.9 : 1.1;
        boolean high = input.startsWith("height");
        SecondStatics.Dip dip =
            new SecondStatics.Dip(
                (high ? part : 1) * 2e-3, (high ? 1 : part) * 0.1, List.of(0, 2), -1);
        SecondStatics second = new SecondStatics(m, HoldMachines::discharge, HoldMachines.LIFT);
        slip[k] =
            second.slip(Objects.requireNonNull(second.settle(Math.PI / 2, Math.PI, dip, null)));
      }
      assertThat(derivative(wall, input)).isCloseTo((slip[1] - slip[0]) / 0.2, withPercentage(1));
    }
  }
}
