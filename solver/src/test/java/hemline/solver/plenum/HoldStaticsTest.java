package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Margins of one attitude by the equations of statics: wheels at (±0.1, ±0.1), mass 3 kg, grip 0.8
 * before and 0.6 after slip, a downforce that is given.
 */
class HoldStaticsTest {
  private static final double W = 3 * 9.80665;
  private static final double H = 0.05;

  private static Machine machine(double x, double y, double height) {
    return Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID)
        .withLoad(new Load(3, x, y, height));
  }

  private static HoldStatics statics(Machine m) {
    return new HoldStatics(new PlenumBalance(m, Machines.constant(Machines.C, 0)), true);
  }

  private static PlenumState pressing(double flow, double force, double x, double y) {
    return new PlenumState(
        500,
        new PlenumState.Flows(flow, 0, new double[2], 0, 0),
        new double[3],
        new double[] {force, force * x, force * y},
        new PlenumState.Parts(force, 0, 0, 0),
        new PlenumState.LeastGap(1e-3, 0),
        true,
        false);
  }

  private static HoldStatics.Margins margins(
      Machine m, double tilt, double downhill, double force) {
    return statics(m)
        .margins(
            new Attitude(Math.toRadians(tilt), Math.toRadians(downhill)), pressing(0, force, 0, 0));
  }

  /** μ (F + W cos α) / (W sin α) in every heading where nothing leans the machine. */
  @ParameterizedTest
  @CsvSource({"30, 0", "30, 90", "90, 180", "90, 37", "120, 0", "120, 211"})
  void slip(double tilt, double downhill) {
    double a = Math.toRadians(tilt);
    double slip = 0.8 * (60 + W * Math.cos(a)) / (W * Math.sin(a));
    HoldStatics.Margins m = margins(machine(0, 0, 0), tilt, downhill, 60);
    assertThat(m.slip()).isCloseTo(slip, withPercentage(1e-3));
    assertThat(m.sliding()).isCloseTo(0.75 * slip, withPercentage(1e-3));
    assertThat(m.brakes()).isFalse();
    assertThat(m.settles()).isTrue();
    double peel = 60 / (-W * Math.cos(a));
    if (tilt > 90) {
      assertThat(m.peel()).isCloseTo(peel, withPercentage(1e-6));
    } else {
      assertThat(m.peel()).isInfinite();
    }
  }

  /** (F + W cos α) 0.1 over W sin α h cos of the angle to the edge; the axle lifts at the same. */
  @ParameterizedTest
  @CsvSource({"0", "90", "180", "270", "30"})
  void tipAndLift(double downhill) {
    double a = Math.toRadians(60);
    double n = 60 + W * Math.cos(a);
    double turn = W * Math.sin(a) * H;
    double d = Math.toRadians(downhill);
    double across = Math.max(Math.abs(Math.cos(d)), Math.abs(Math.sin(d)));
    HoldStatics.Margins m = margins(machine(0, 0, H), 60, downhill, 60);
    assertThat(m.tip()).isCloseTo(n * 0.1 / (turn * across), withPercentage(1e-6));
    assertThat(m.lift()).isCloseTo(n * 0.1 / (turn * across), withPercentage(1e-6));
    assertThat(m.loads().axles()[0]).isCloseTo(0.5 * n + turn * Math.cos(d) / 0.2, within(1e-9));
    assertThat(m.loads().axles()[1]).isCloseTo(0.5 * n - turn * Math.cos(d) / 0.2, within(1e-9));
    double left = 0.5 * n + turn * Math.sin(d) / 0.2;
    assertThat(m.loads().wheels()[0] + m.loads().wheels()[2]).isCloseTo(left, within(1e-9));
    assertThat(m.least())
        .isEqualTo(Math.min(Math.min(m.slip(), m.tip()), Math.min(m.lift(), m.peel())));
  }

  /** Under a ceiling the weight takes off too: half of it from each axle beside what turns. */
  @Test
  void liftWhereTheWeightPullsAway() {
    double a = Math.toRadians(120);
    HoldStatics.Margins m = margins(machine(0, 0, H), 120, 180, 60);
    double taken = -0.5 * W * Math.cos(a) + W * Math.sin(a) * H / 0.2;
    assertThat(m.lift()).isCloseTo(30 / taken, withPercentage(1e-6));
    double side = -0.5 * W * Math.cos(a);
    HoldStatics.Margins flat = margins(machine(0, 0, 0), 120, 180, 60);
    assertThat(flat.lift()).isCloseTo(30 / side, withPercentage(1e-6));
  }

  /** Weight ahead and to the left, suction behind: each edge by its own lever. */
  @Test
  void tipOfALopsidedMachine() {
    Machine m = machine(0.03, 0.02, H);
    double a = Math.toRadians(70);
    double normal = W * Math.cos(a);
    double turn = W * Math.sin(a) * H;
    PlenumState s = pressing(0, 60, -0.01, -0.04);
    double[] x = {0.1 - 0.03, 0.1 + 0.03, 0.1 - 0.02, 0.1 + 0.02};
    double[] f = {0.1 + 0.01, 0.1 - 0.01, 0.1 + 0.04, 0.1 - 0.04};
    double[] downhill = {0, 180, 90, 270};
    for (int k = 0; k < 4; k++) {
      HoldStatics.Margins one = statics(m).margins(new Attitude(a, Math.toRadians(downhill[k])), s);
      assertThat(one.tip())
          .as("%s", downhill[k])
          .isCloseTo((normal * x[k] + 60 * f[k]) / turn, withPercentage(1e-6));
    }
  }

  /** Suction beyond the wheels tips the machine by itself, unless the pull holds against it. */
  @Test
  void suctionBeyondTheWheels() {
    HoldStatics s = statics(machine(0, 0, H));
    Attitude up = new Attitude(0.5 * Math.PI, Math.PI);
    double turn = W * H;
    assertThat(60 * 0.02).isLessThan(turn);
    assertThat(60 * 0.03).isGreaterThan(turn);
    HoldStatics.Margins held = s.margins(up, pressing(0, 60, 0.12, 0));
    assertThat(held.tip()).isCloseTo(60 * 0.22 / turn, withPercentage(1e-6));
    // without the pull its rear wheels carry nothing
    assertThat(held.lift()).isZero();
    assertThat(s.margins(up, pressing(0, 60, 0.13, 0)).tip()).isZero();
    HoldStatics.Margins left = s.margins(up, pressing(0, 60, 0, 0.12));
    assertThat(left.tip()).isZero();
    assertThat(left.lift()).isZero();
  }

  /** A level jet of 2 N, 60 mm up and 20 mm to the left, pushes forwards and turns. */
  @Test
  void aJetPushesAndTurns() {
    Machine base = machine(0, 0, H);
    Fan f = base.fan();
    double q = 0.04;
    double area = base.duty().air().air().density() * q * q / 2;
    Machine m =
        base.withFan(
            new Fan(f.curve(), f.speed(), 1e9, 0.3, new Fan.Outlet(area, 0, 0, 0.02, 0.06), 0));
    double turn = W * H;
    // the load of suction holds the jet's moment, which is counted with the pull
    PlenumState s = pressing(q, 60, 2 * 0.06 / 60, 0);
    HoldStatics.Margins down = statics(m).margins(new Attitude(0.5 * Math.PI, 0), s);
    assertThat(down.tip()).isCloseTo(60 * 0.1 / (turn + 0.12), withPercentage(1e-6));
    HoldStatics.Margins up = statics(m).margins(new Attitude(0.5 * Math.PI, Math.PI), s);
    assertThat(up.tip()).isCloseTo(60 * 0.1 / (turn - 0.12), withPercentage(1e-6));
    assertThat(down.loads().axles()[0]).isCloseTo(30 + (turn + 0.12) / 0.2, within(1e-9));
    // friction has W + 2 N to hold nose down and W − 2 N nose up, and a little yaw
    assertThat(down.slip()).isBetween(0.97 * 0.8 * 60 / (W + 2), 0.8 * 60 / (W + 2));
    assertThat(up.slip()).isBetween(0.97 * 0.8 * 60 / (W - 2), 0.8 * 60 / (W - 2));
    Machine central =
        base.withFan(
            new Fan(f.curve(), f.speed(), 1e9, 0.3, new Fan.Outlet(area, 0, 0, 0, 0.06), 0));
    assertThat(statics(central).margins(new Attitude(0.5 * Math.PI, 0), s).slip())
        .isCloseTo(0.8 * 60 / (W + 2), withPercentage(1e-3));
  }

  /** On level ground nothing pulls; without a state nothing holds. */
  @Test
  void nothingPullsAndNothingHolds() {
    HoldStatics.Margins level = margins(machine(0, 0, H), 0, 0, 60);
    for (ToDoubleFunction<HoldStatics.Margins> column : HoldSearch.COLUMNS) {
      assertThat(column.applyAsDouble(level)).isInfinite();
    }
    HoldStatics.Margins none = statics(machine(0, 0, H)).margins(new Attitude(1, 0), null);
    for (ToDoubleFunction<HoldStatics.Margins> column : HoldSearch.COLUMNS) {
      assertThat(column.applyAsDouble(none)).isZero();
    }
    assertThat(none.settles()).isFalse();
    assertThat(none.loads().axles()).hasSize(2);
    assertThat(none.loads().wheels()).hasSize(4);
  }

  /** Brakes of 10 N on both axles hold 20 N along, whatever the friction; without power none. */
  @Test
  void brakesThatYieldAreNamed() {
    Machine m = machine(0, 0, 0);
    m =
        m.withRunning(
            m.running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.1, 0.2, 1e11, true).withBrake(10),
                        new Axle("rear", -0.1, 0.2, 1e11, true).withBrake(10))));
    HoldStatics.Margins up = margins(m, 90, 180, 60);
    assertThat(up.slip()).isCloseTo(20 / W, withPercentage(1e-3));
    assertThat(up.sliding()).isCloseTo(20 / W, withPercentage(1e-3));
    assertThat(up.brakes()).isTrue();
    assertThat(statics(m).brakesLimited()).isTrue();
    HoldStatics.Margins across = margins(m, 90, 90, 60);
    assertThat(across.slip()).isCloseTo(0.8 * 60 / W, withPercentage(1e-3));
    assertThat(across.sliding()).isCloseTo(0.6 * 60 / W, withPercentage(1e-3));
    assertThat(across.brakes()).isFalse();
    HoldStatics parked =
        new HoldStatics(new PlenumBalance(m, Machines.constant(Machines.C, 0)), false);
    assertThat(parked.powered()).isFalse();
    assertThat(parked.brakesLimited()).isFalse();
    assertThat(parked.margins(new Attitude(0.5 * Math.PI, Math.PI), pressing(0, 60, 0, 0)).slip())
        .isCloseTo(0, within(1e-6));
    assertThat(statics(machine(0, 0, 0)).brakesLimited()).isFalse();
  }

  /** Weight turned from level: W (cos α − 1) at its place, and W sin α h downhill. */
  @Test
  void theStandOnTiltedGround() {
    HoldStatics s = statics(machine(0.03, -0.02, H));
    double a = Math.toRadians(50);
    double d = Math.toRadians(20);
    double n = W * (Math.cos(a) - 1);
    double[] load = s.stand(new Attitude(a, d), Side.HIGH).extra();
    assertThat(load[0]).isCloseTo(n, within(1e-9));
    assertThat(load[1]).isCloseTo(n * 0.03 + W * Math.sin(a) * H * Math.cos(d), within(1e-9));
    assertThat(load[2]).isCloseTo(n * -0.02 + W * Math.sin(a) * H * Math.sin(d), within(1e-9));
    assertThat(s.stand(new Attitude(a, d), Side.HIGH).side()).isEqualTo(Side.HIGH);
    assertThat(s.beyondLevel(new Attitude(a, d))).containsExactly(load);
  }

  /** The smallest margin gives its name; of axle lift and peel-off alike the latter. */
  @Test
  void namesTheSmallestMargin() {
    double no = Double.POSITIVE_INFINITY;
    assertThat(named(1, 2, 2, 2, false, true)).isEqualTo("slip");
    assertThat(named(1, 2, 2, 2, true, true)).isEqualTo("brakes");
    assertThat(named(2, 1, 2, 2, true, true)).isEqualTo("tip");
    assertThat(named(2, 2, 1, 2, true, true)).isEqualTo("axle lift");
    assertThat(named(2, 2, 1, 1, true, true)).isEqualTo("peel-off");
    assertThat(named(2, 2, 1, 1 + 1e-8, true, true)).isEqualTo("peel-off");
    assertThat(named(2, 2, 2, 1, true, true)).isEqualTo("peel-off");
    assertThat(named(no, no, no, no, false, true)).isEqualTo("nothing");
    assertThat(named(0, 0, 0, 0, false, false)).isEqualTo("no balance");
  }

  private static String named(
      double slip, double tip, double lift, double peel, boolean brakes, boolean settles) {
    return HoldStudy.limitedBy(
        new HoldStatics.Margins(
            slip,
            slip,
            tip,
            lift,
            peel,
            new HoldStatics.Loads(new double[2], new double[4]),
            brakes,
            settles));
  }
}
