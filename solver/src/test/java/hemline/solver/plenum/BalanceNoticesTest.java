package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.Tolerances;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When each notice of a balance is given and what it says, on both sides of its limit. */
class BalanceNoticesTest {
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;

  private final Machine machine = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);

  private static List<Notice> notices(Machine m, PlenumState rest) {
    return BalanceNotices.of(new PlenumBalance(m, LAWS), bands(rest), List.of(), List.of(), true);
  }

  private static Bands<PlenumState> bands(PlenumState s) {
    return new Bands<>(s, s, s, 0, 0);
  }

  private static PlenumState at(Machine m, double flow, double suction) {
    return new PlenumBalance(m, LAWS).at(flow, suction, Stand.REST);
  }

  private static @Nullable Notice first(List<Notice> notices, String code) {
    return notices.stream().filter(n -> n.code().equals(code)).findFirst().orElse(null);
  }

  private static List<Double> numbers(List<Notice> notices, NoticeKind kind) {
    return notices.stream().filter(n -> n.kind() == kind).findFirst().orElseThrow().numbers();
  }

  private static LeakPoint point(SolveStatus status, double gap) {
    return new LeakPoint(
        "lip",
        new SectionConditions(gap, 100, 0, 0),
        status,
        Regime.TURBULENT,
        Estimate.exact(0.7),
        Estimate.exact(0),
        List.of(),
        LeakGrids.NONE);
  }

  /** Sections that failed and that found no steady flow, each counted once. */
  @Test
  void countsSections() {
    List<LeakPoint> points =
        List.of(
            point(SolveStatus.CONVERGED, 1e-3),
            point(SolveStatus.FAILED, 2e-3),
            point(SolveStatus.FAILED, 2e-3),
            point(SolveStatus.FAILED, 3e-3),
            point(SolveStatus.UNSTEADY, 4e-3));
    List<Notice> told =
        BalanceNotices.of(new PlenumBalance(machine, LAWS), null, points, List.of(), false);
    assertThat(told).contains(NoticeKind.LEAK_FAILED.of(2, 4), NoticeKind.LEAK_UNSTEADY.of(1, 4));
    assertThat(
            notices(machine, at(machine, 0.05, 500)).stream()
                .map(Notice::code)
                .filter(c -> c.startsWith("leak")))
        .isEmpty();
  }

  private static OperatingPoint operating(boolean stable, boolean touching) {
    Estimate e = Estimate.exact(1);
    return new OperatingPoint(
        e, new OperatingPoint.Flows(e, e, e, e), stable, false, touching, false);
  }

  /** Why a machine does not settle: drawn down, leaks beyond the curve, or unstable. */
  @Test
  void saysWhyItDoesNotSettle() {
    PlenumBalance b = new PlenumBalance(machine, LAWS);
    assertThat(BalanceNotices.of(b, null, List.of(), List.of(operating(true, true)), false))
        .extracting(Notice::code)
        .containsExactly("machine.down");
    assertThat(BalanceNotices.of(b, null, List.of(), List.of(), false))
        .extracting(Notice::code)
        .containsExactly("machine.leaks");
    assertThat(BalanceNotices.of(b, null, List.of(), List.of(operating(false, false)), false))
        .extracting(Notice::code)
        .containsExactly("machine.unstable");
  }

  @Test
  void saysAtWhichEndOfTheLeaksItDoesNotSettle() {
    PlenumBalance b = new PlenumBalance(machine, LAWS);
    PlenumState s = at(machine, 0.05, 500);
    assertThat(
            first(
                BalanceNotices.of(b, new Bands<>(s, null, s, 0, 0), List.of(), List.of(), false),
                "machine.edge"))
        .isEqualTo(NoticeKind.MACHINE_EDGE_LOW.of());
    assertThat(
            first(
                BalanceNotices.of(b, new Bands<>(s, s, null, 0, 0), List.of(), List.of(), false),
                "machine.edge"))
        .isEqualTo(NoticeKind.MACHINE_EDGE_HIGH.of());
    assertThat(first(notices(machine, s), "machine.edge")).isNull();
  }

  /** Suction 0.15 m ahead of axles at ±0.1 m takes 1/4 of itself off the rear wheels. */
  @Test
  void namesAnAxleThatIsLifted() {
    Machine m =
        machine.withFloor(
            new FloorOutline(
                machine.floor().vertices().stream()
                    .map(v -> new hemline.shared.geometry.Vertex(v.x() + 0.15, v.y(), v.bulge()))
                    .toList(),
                machine.floor().edges(),
                0.04));
    double area = Math.PI * Machines.RADIUS * Machines.RADIUS;
    double half = 0.5 * 3 * Wheels.GRAVITY;
    double limit = half / (0.25 * area);
    assertThat(first(notices(m, at(m, 0.05, 1.02 * limit)), "machine.lifts"))
        .isEqualTo(NoticeKind.MACHINE_LIFTS.of("rear"));
    assertThat(first(notices(m, at(m, 0.05, 0.98 * limit)), "machine.lifts")).isNull();
  }

  /** Re = C_d h √(2 p / ρ) / ν from 500 to 3000. */
  @Test
  void tellsTheTransitionBand() {
    double nu = machine.duty().air().air().kinematicViscosity();
    double rho = machine.duty().air().air().density();
    for (double re : new double[] {480, 520, 2900, 3100}) {
      double jet = re * nu / (Machines.C * Machines.GAP);
      PlenumState s = at(machine, 0.05, 0.5 * rho * jet * jet);
      List<Notice> told = notices(machine, s);
      if (re == 480 || re == 3100) {
        assertThat(first(told, "regime.transition")).as("%s", re).isNull();
      } else {
        List<Double> band = numbers(told, NoticeKind.LEAK_TRANSITION);
        assertThat(band.get(0)).isCloseTo(re, withPercentage(1e-4));
        assertThat(band.get(1)).isCloseTo(re, withPercentage(1e-4));
        assertThat(band.subList(2, 4)).containsExactly(500.0, 3000.0);
      }
    }
    // unequal gaps: the range that they span
    Machine two = HoldMachines.gaps(machine, 1e-3, 2e-3);
    double jet = 800 * nu / (Machines.C * 1e-3);
    List<Double> range =
        numbers(notices(two, at(two, 0.05, 0.5 * rho * jet * jet)), NoticeKind.LEAK_TRANSITION);
    assertThat(range.get(0)).isCloseTo(800, withPercentage(1e-4));
    assertThat(range.get(1)).isCloseTo(1600, withPercentage(1e-4));
  }

  /**
   * A floor that leans spans a range: sunk by 0.5 mm, 0.4 mm more at the left, less at the right.
   */
  @Test
  void tellsTheTransitionBandOfALeaningFloor() {
    double nu = machine.duty().air().air().kinematicViscosity();
    double jet = 1600 * nu / (Machines.C * Machines.GAP);
    double p = 0.5 * machine.duty().air().air().density() * jet * jet;
    for (double[] lean : new double[][] {{5e-4, 2e-3, 0}, {5e-4, 0, 2e-3}}) {
      PlenumState s = new PlenumBalance(machine, LAWS).at(0.05, p, Stand.REST.held(lean));
      List<Double> range = numbers(notices(machine, s), NoticeKind.LEAK_TRANSITION);
      // ends of the pieces are not asked: 880 and 1520 at the very edges
      assertThat(range.get(0)).isBetween(879.5, 899.5);
      assertThat(range.get(1)).isBetween(1499.5, 1519.5);
    }
  }

  /**
   * Mach 0.3 is reached at p₀ (1 − 1.018^(−3.5)), 6058 Pa at sea level; there the mass flux of
   * isentropic air is 3.3 % less than without expansion.
   */
  @Test
  void tellsAFastJet() {
    double at = machine.duty().air().pressure() * (1 - Math.pow(1 + 0.2 * 0.09, -3.5));
    assertThat(first(notices(machine, at(machine, 0.05, 0.99 * at)), "jet.mach")).isNull();
    List<Notice> beyond = notices(machine, at(machine, 0.05, 1.01 * at));
    List<Double> jet = numbers(beyond, NoticeKind.LEAK_MACH);
    assertThat(jet.get(0)).isBetween(0.3, 0.305);
    assertThat(jet.get(1)).isBetween(0.0325, 0.0335);
    assertThat(first(notices(machine, at(machine, 0.05, 0.99 * at)), "hold.mach")).isNull();
    assertThat(beyond).contains(NoticeKind.HOLD_MACH.of(jet.get(0)));
  }

  @Test
  void tellsLeaksBeyondTheSolvedSections() {
    Machine wide = machine.withFloor(machine.floor().withGaps(6));
    assertThat(first(notices(wide, at(wide, 0.05, 500)), "leak.beyond")).isNotNull();
    assertThat(first(notices(machine, at(machine, 0.05, 500)), "leak.beyond")).isNull();
  }

  /** ½ ρ (Q / (L H))² over 2 % of the suction. */
  @Test
  void tellsALowPlenum() {
    double rho = machine.duty().air().air().density();
    double speed = Math.sqrt(2 * 0.02 * 500 / rho);
    double flow = speed * SEAL * 0.04;
    assertThat(first(notices(machine, at(machine, 0.99 * flow, 500)), "plenum.low")).isNull();
    assertThat(
            numbers(notices(machine, at(machine, 1.5 * flow, 500)), NoticeKind.PLENUM_LOW).get(0))
        .isCloseTo(0.02 * 1.5 * 1.5, withPercentage(1e-6));
  }

  @Test
  void tellsATravelFasterThanTheJets() {
    double jet = Math.sqrt(2 * 100 / machine.duty().air().air().density());
    for (double part : new double[] {0.99, 1.01}) {
      Machine m = machine.atTravelSpeed(part * jet);
      assertThat(first(notices(m, at(m, 0.05, 100)), "leak.fast") != null).isEqualTo(part > 1);
      assertThat(
              first(
                  BalanceNotices.of(
                      new PlenumBalance(m, LAWS),
                      bands(at(m, 0.05, 100)),
                      List.of(),
                      List.of(),
                      false),
                  "leak.fast"))
          .isNull();
    }
  }

  /** The peak of the humped curve lies at 0.04 m³/s; near is within 15 % above it. */
  @ParameterizedTest
  @CsvSource({"1.16, false,", "1.10, false, FAN_NEAR_STALL", "0.9, true, FAN_STALLED"})
  void tellsAFanNearItsStall(double ratio, boolean stalled, @Nullable NoticeKind kind) {
    Machine m = Machines.round(Machines.steepHump(), Machines.RIGID);
    double peak = m.fan().running(m.duty().air().air().density()).peakFlow();
    PlenumState s = at(m, ratio * peak, 600).judged(true, stalled);
    Notice told = first(notices(m, s), "fan.stall");
    assertThat(told == null ? null : told.kind()).isEqualTo(kind);
    if (kind == NoticeKind.FAN_NEAR_STALL) {
      assertThat(told.numbers().get(0)).isCloseTo(ratio - 1, withPercentage(1e-6));
    }
    // a curve that falls all the way has no stall side
    assertThat(first(notices(machine, at(machine, 0.001, 600)), "fan.stall")).isNull();
  }

  @Test
  void countsStableOperatingPoints() {
    PlenumBalance b = new PlenumBalance(machine, LAWS);
    Bands<PlenumState> rest = bands(at(machine, 0.05, 500));
    List<OperatingPoint> points =
        new ArrayList<>(
            List.of(operating(true, false), operating(false, false), operating(true, true)));
    assertThat(first(BalanceNotices.of(b, rest, List.of(), points, false), "fan.several")).isNull();
    points.add(operating(true, false));
    assertThat(BalanceNotices.of(b, rest, List.of(), points, false))
        .contains(NoticeKind.FAN_SEVERAL.of(2));
  }

  @Test
  void tellsAFanNearItsLargestSpeed() {
    for (double share : new double[] {0.89, 0.93}) {
      Fan f = machine.fan();
      Machine m =
          machine.withFan(
              new Fan(f.curve(), f.speed(), f.speed() / share, 0.5, Fan.Outlet.WITHOUT_THRUST, 0));
      List<Notice> told = notices(m, at(m, 0.05, 500));
      if (share < 0.9) {
        assertThat(first(told, "fan.speed")).isNull();
      } else {
        assertThat(numbers(told, NoticeKind.FAN_SPEED).get(0))
            .isCloseTo(share, withPercentage(1e-6));
      }
    }
  }

  private static List<HoldLimits.Limit> limits(Machine m, PlenumState s) {
    return HoldLimits.overstepped(new PlenumBalance(m, LAWS), s);
  }

  /** 500 Pa at 0.05 m³/s, efficiencies 0.5 and 0.8: 62.5 W; the drive takes 50 / 0.7 = 71.4 W. */
  @Test
  void tellsMotorAndBattery() {
    PlenumState s = at(machine, 0.05, 500);
    double[][] supplies = {{62.6, 134}, {62.4, 134}, {62.6, 133.8}, {62.6, 62.4}};
    List<List<String>> codes =
        List.of(
            List.of(), List.of("power.motor"), List.of("power.together"), List.of("power.battery"));
    for (int k = 0; k < supplies.length; k++) {
      Machine m = machine.withPower(new PowerSupply(0.8, supplies[k][0], 3600, 1, supplies[k][1]));
      assertThat(limits(m, s)).extracting(l -> l.notice().code()).isEqualTo(codes.get(k));
    }
    Machine weak = machine.withPower(new PowerSupply(0.8, 60, 3600, 1, 61));
    assertThat(limits(weak, s))
        .extracting(HoldLimits.Limit::notice)
        .containsExactly(
            NoticeKind.POWER_MOTOR.of(62.5, 60), NoticeKind.POWER_BATTERY.of(62.5, 61));
    Machine together = machine.withPower(new PowerSupply(0.8, 70, 3600, 1, 130));
    HoldLimits.Limit limit = limits(together, s).get(0);
    assertThat(limit.notice()).isEqualTo(NoticeKind.POWER_TOGETHER.of(limit.by(), 130));
    assertThat(limit.by()).isCloseTo(62.5 + 50 / 0.7, withPercentage(1e-6));
  }

  /** Leaks are known from 0.1 mm; the allowance is 0.5 mm; 2 % below either still counts as it. */
  @Test
  void tellsThinGaps() {
    for (double allowance : new double[] {1e-5, 5e-4}) {
      Machine m = machine.withTerms(new HoldTerms(false, 1, allowance, Tolerances.NONE));
      double limit = 0.98 * Math.max(1e-4, allowance);
      for (double part : new double[] {0.995, 1.005}) {
        PlenumState s =
            new PlenumBalance(m, LAWS)
                .at(0.05, 500, Stand.REST.held(new double[] {Machines.GAP - part * limit, 0, 0}));
        List<HoldLimits.Limit> told = limits(m, s);
        assertThat(told)
            .extracting(l -> l.notice().code())
            .isEqualTo(part < 1 ? List.of("hold.thin") : List.of());
        if (part < 1) {
          assertThat(told.get(0).by()).isCloseTo(-part * limit, withPercentage(1e-6));
          assertThat(told.get(0).notice()).isEqualTo(NoticeKind.HOLD_THIN.of(-told.get(0).by()));
        }
      }
    }
  }

  /** Over a ledge of 1.6 mm a gap of 2 mm leaves 0.4 mm, less than an allowance of 0.5 mm. */
  @Test
  void aLedgeLeavesLess() {
    Machine m = machine.withTerms(new HoldTerms(false, 1, 5e-4, Tolerances.NONE));
    PlenumBalance b = new PlenumBalance(m, LAWS);
    PlenumState s = at(m, 0.05, 500);
    List<@Nullable PlenumState> states = new ArrayList<>(List.of(s));
    states.add(null);
    assertThat(HoldLimits.overstepped(b, states, new Crossing(-1.6e-3, 0.1, Set.of(0), -1)))
        .singleElement()
        .satisfies(n -> assertThat(n.kind()).isEqualTo(NoticeKind.HOLD_THIN))
        .satisfies(n -> assertThat(n.numbers().get(0)).isCloseTo(4e-4, withPercentage(1e-4)));
    assertThat(HoldLimits.overstepped(b, states, new Crossing(-1.5e-3, 0.1, Set.of(0), -1)))
        .isEmpty();
    assertThat(HoldLimits.overstepped(b, states, null)).isEmpty();
  }

  /** Of several states the one overstepped most is told. */
  @Test
  void theMostOversteppedIsTold() {
    PlenumBalance b = new PlenumBalance(machine, LAWS);
    List<@Nullable PlenumState> states =
        new ArrayList<>(
            List.of(at(machine, 0.05, 7000), at(machine, 0.05, 9000), at(machine, 0.05, 8000)));
    double r = 1 - 9000 / machine.duty().air().pressure();
    double mach = Math.sqrt(5 * (Math.pow(r, -0.4 / 1.4) - 1));
    assertThat(HoldLimits.overstepped(b, states, null))
        .singleElement()
        .satisfies(n -> assertThat(n.kind()).isEqualTo(NoticeKind.HOLD_MACH))
        .satisfies(n -> assertThat(n.numbers().get(0)).isCloseTo(mach, withPercentage(1e-6)));
  }

  /** At its stop, 5 mm: A p − F₀ = k x, p = (0.2 + 100 × 5e-3) / 1e-3 = 700 Pa. */
  @Test
  void tellsAValveAtItsStop() {
    Machine m = machine.withValve(new ReliefValve(1e-3, 100, 0.2, 5e-3, 0.62, 0.01, 1));
    assertThat(limits(m, at(m, 0.05, 699))).isEmpty();
    assertThat(limits(m, at(m, 0.05, 701)))
        .extracting(HoldLimits.Limit::notice)
        .containsExactly(NoticeKind.HOLD_VALVE.of());
  }

  /** ½ ρ Q (Q / A)² beside p Q / 0.5 − p Q. */
  @Test
  void tellsAnOutletThatIsTooSmall() {
    double rho = machine.duty().air().air().density();
    double least = 0.05 / Math.sqrt(2 * 500 / rho);
    for (double part : new double[] {0.99, 1.01}) {
      Fan f = machine.fan();
      Machine m =
          machine.withFan(
              new Fan(
                  f.curve(),
                  f.speed(),
                  1e9,
                  0.5,
                  new Fan.Outlet(part * least, Math.PI / 2, 0, 0, 0),
                  0));
      assertThat(limits(m, at(m, 0.05, 500)))
          .extracting(l -> l.notice().code())
          .isEqualTo(part < 1 ? List.of("fan.outlet") : List.of());
    }
  }

  /** Within all limits nothing is told. */
  @Test
  void aSoundMachineIsToldNothing() {
    Machine m =
        machine.withRunning(
            machine
                .running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.1, 0.2, 1e11, true),
                        new Axle("rear", -0.1, 0.2, 1e11, true))));
    PlenumBalance b = new PlenumBalance(m, LAWS);
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    assertThat(BalanceNotices.of(b, rest, List.of(), Settling.points(b, Stand.REST), true))
        .isEmpty();
  }
}
