package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.fluid.Air;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.Tolerances;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class HoldEndTest {
  private static final double G = 9.80665;
  private static final double INERTIA = 2e-5;

  /** Rigid, centre of gravity on the ground: only friction counts, and F does not move. */
  private static Machine rigid(boolean frontHeld, boolean parked) {
    Machine p = HoldMachines.plain();
    Fan f = p.fan();
    return p.withRunning(
            p.running()
                .withAxles(
                    List.of(
                        frontHeld
                            ? braked("front", 0.15)
                            : new Axle("front", 0.15, 0.28, 1e11, false),
                        braked("rear", -0.15))))
        .withLoad(new Load(4, 0, 0, 0))
        .withFan(
            new Fan(
                f.curve(), f.speed(), f.maximumSpeed(), 0.5, Fan.Outlet.WITHOUT_THRUST, INERTIA))
        .withPower(new PowerSupply(0.8, 1e9, 3600, 1, 1e9, 24, 0.7))
        .withTerms(new HoldTerms(parked, 1, 1e-4, Tolerances.NONE));
  }

  private static Axle braked(String name, double x) {
    return new Axle(name, x, 0.28, 1e11, true).withBrake(Double.POSITIVE_INFINITY);
  }

  private static PlenumBalance balance(Machine m) {
    return new PlenumBalance(m, HoldMachines.laws("lip"));
  }

  /** Suction goes with n², so a margin s ends at n / √s; friction at μ / s; mass at s times it. */
  @Test
  void endsWhereTheLawsSay() {
    Machine m = rigid(true, true);
    PlenumBalance b = balance(m);
    PlenumState s = Machines.settled(b);
    double margin = 0.8 * s.parts().sum() / (4 * G);
    HoldEnd end =
        HoldEndStudy.of(b, new HoldStudy(b).all()).stream()
            .filter(e -> e.place().equals("wall"))
            .findFirst()
            .orElseThrow();
    double factor = 1 / Math.sqrt(margin);
    assertThat(end.fan().speed()).isCloseTo(factor * m.fan().speed(), withPercentage(0.05));
    assertThat(Objects.requireNonNull(end.fan().voltage()))
        .isCloseTo(24 * factor, withPercentage(0.05));
    assertThat(Objects.requireNonNull(end.grip().friction()))
        .isCloseTo(0.8 / margin, withPercentage(0.05));
    assertThat(end.payload()).isCloseTo(4 * (margin - 1), withPercentage(0.2));
    // gap: the second computation lets go where the gaps are a little wider, and not before
    double wider = Objects.requireNonNull(end.wider());
    for (double part : new double[] {0.99, 1.01}) {
      Machine at = m.withFloor(m.floor().withGapsWider(part * wider));
      boolean falls =
          new SecondStatics(at, HoldMachines::discharge, HoldMachines.LIFT)
              .letsGo(Math.PI / 2, 0, null, null);
      assertThat(falls).isEqualTo(part > 1);
    }
    assertThat(end.times().plenum()).isCloseTo(filling(m, s, factor), withPercentage(0.5));
    assertThat(Objects.requireNonNull(end.times().rotor()))
        .isCloseTo(runningDown(m, s, factor), withPercentage(0.5));
  }

  /** Small steps in time of V / (κ p) dΔp = −q₀ √(Δp / Δp₀) dt. */
  private static double filling(Machine m, PlenumState s, double factor) {
    double c = m.floor().area() * 0.04 / (Air.HEAT_RATIO * m.duty().air().pressure());
    double p = s.suction();
    double t = 0;
    double dt = 1e-7;
    while (p > factor * factor * s.suction()) {
      p -= s.flows().fan() * Math.sqrt(p / s.suction()) / c * dt;
      t += dt;
    }
    return t;
  }

  /** Small steps in time of J dω = −P / ω dt with P ~ ω³. */
  private static double runningDown(Machine m, PlenumState s, double factor) {
    double first = 2 * Math.PI * m.fan().speed();
    double power = s.flows().fan() * s.suction() / 0.5;
    double omega = first;
    double t = 0;
    double dt = 1e-6;
    while (omega > factor * first) {
      omega -= power * Math.pow(omega / first, 3) / (INERTIA * omega) * dt;
      t += dt;
    }
    return t;
  }

  /** Parked on all wheels: tan α = μ. On the rear ones: half of it. No parked brake: nothing. */
  @Test
  void holdsWithoutTheFan() {
    assertThat(HoldEndStudy.steepestWithoutFan(balance(rigid(true, true))))
        .isCloseTo(Math.atan(0.8), within(1e-4));
    assertThat(HoldEndStudy.steepestWithoutFan(balance(rigid(false, true))))
        .isCloseTo(Math.atan(0.4), within(1e-4));
    assertThat(HoldEndStudy.steepestWithoutFan(balance(rigid(true, false)))).isZero();
  }

  /** All wheels hold: μ (F + W) / m; rear ones alone climb and brake with half of the load. */
  @Test
  void movesWithinItsGripAndPower() {
    for (boolean all : new boolean[] {true, false}) {
      PlenumBalance b = balance(rigid(all, true));
      Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
      double f = rest.value().parts().sum();
      Manoeuvres v = ManoeuvreStudy.of(b, rest);
      double part = all ? 1 : 0.5;
      double brakes = part * 0.8 * (f + 4 * G) / 4;
      assertThat(v.braking().level().value()).isCloseTo(brakes, withPercentage(0.01));
      assertThat(v.braking().distance().value())
          .isCloseTo(0.5 * 0.5 / (2 * brakes), withPercentage(0.01));
      assertThat(v.turning().acceleration().value())
          .isCloseTo(0.8 * (f + 4 * G) / 4, withPercentage(0.01));
      assertThat(v.turning().endsIn()).isEqualTo("slip");
      assertThat(Objects.requireNonNull(v.wall().grip()).value())
          .isCloseTo(part * 0.8 * f / (4 * G), withPercentage(0.01));
      double s = Math.sqrt(0.5);
      assertThat(Objects.requireNonNull(v.braking().slope()).value())
          .isCloseTo(part * 0.8 * (f + 4 * G * s) / 4 - G * s, withPercentage(0.01));
      assertThat(v.slope().speed()).isEqualTo(0.5);
      assertThat(v.wall().speed()).isEqualTo(0.5);
    }
    // half of the height over the half track: tips at (F + W) y / (m h)
    PlenumBalance high = balance(rigid(true, true).withLoad(new Load(4, 0, 0, 0.28)));
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(high, Stand.REST));
    Manoeuvres v = ManoeuvreStudy.of(high, rest);
    assertThat(v.turning().acceleration().value())
        .isCloseTo((rest.value().parts().sum() + 4 * G) * 0.14 / (4 * 0.28), withPercentage(0.01));
    assertThat(v.turning().endsIn()).isEqualTo("tip");
  }

  /**
   * A load P at (x, y) sinks that corner by P (1/Σk + x²/Σkx² + y²/Σky²); at a suction that hardly
   * moves it ends where this and the sink by the suction use up the gap.
   */
  @Test
  void bearsLeastAtACorner() {
    Machine base = HoldMachines.plain();
    double k = 2e5;
    Fan f = base.fan();
    Machine m =
        base.withFan(f.withCurve(Machines.quadratic(500, 0.5)))
            .withLoad(new Load(40, 0.05, 0, 0.05));
    PlenumBalance b = balance(m);
    PlenumState s = Machines.settled(b);
    RideHeight r = HeightStability.of(b, Stand.REST);
    double left = 2e-3 - s.parts().sum() / k;
    double corner =
        left / (1 / k + 0.2 * 0.2 / (k * 0.15 * 0.15) + 0.15 * 0.15 / (k * 0.14 * 0.14));
    double gravity = left / (1 / k + 0.05 * 0.2 / (k * 0.15 * 0.15));
    assertThat(Objects.requireNonNull(r.bears().force()).value())
        .isCloseTo(left * k, withPercentage(1.5));
    assertThat(Objects.requireNonNull(r.bears().atGravity()).value())
        .isCloseTo(gravity, withPercentage(1.5));
    assertThat(Objects.requireNonNull(r.bears().atCorner()).value())
        .isCloseTo(corner, withPercentage(1.5));
  }

  /** Tolerances add like independent errors: samples spread as wide as the band says. */
  @Tag("many")
  @Test
  void totalBandsHoldWhatSamplesSpread() {
    Tolerances t = new Tolerances(0.1, 0.06, 0.04, 1.5e-4);
    Machine m = rigid(true, true).withTerms(new HoldTerms(true, 1, 1e-4, t));
    Hold wall =
        new HoldStudy(balance(m))
            .all().stream().filter(h -> h.place().name().equals("wall")).findFirst().orElseThrow();
    var total = Objects.requireNonNull(wall.margins().total());
    SplittableRandom r = new SplittableRandom(41);
    int n = 500;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double[] u = new double[4];
      for (int k = 0; k < 4; k++) {
        u[k] = 2 * r.nextDouble() - 1;
      }
      Machine one =
          m.withRunning(m.running().gripping(1 + t.friction() * u[0]))
              .withFan(m.fan().withCurve(m.fan().curve().stronger(1 + t.fanPressure() * u[1])))
              .withLoad(new Load(4 * (1 + t.mass() * u[2]), 0, 0, 0))
              .withFloor(m.floor().withGapsWider(t.gap() * u[3]));
      HoldSearch search = HoldSearch.whole(new HoldStatics(balance(one), true));
      double margin = search.found(Attitude.noseUp(Math.PI / 2), null).margins().least();
      sum += margin;
      squares += margin * margin;
    }
    // errors spread evenly over ± t have the standard deviation t / √3
    double deviation = Math.sqrt(squares / n - sum / n * (sum / n));
    double half = 0.5 * (total.high() - total.low());
    assertThat(half / Math.sqrt(3)).isCloseTo(deviation, withPercentage(8));
    assertThat(sum / n).isCloseTo(total.value(), withPercentage(1));
  }

  /** With a safety factor beyond the low end it does not hold any more. */
  @Test
  void asksForTheSafetyFactor() {
    Machine m = rigid(true, true);
    double low =
        new HoldStudy(balance(m))
            .all().stream()
                .filter(h -> h.place().name().equals("wall"))
                .map(h -> Objects.requireNonNull(h.margins().least()).low())
                .findFirst()
                .orElseThrow();
    for (double part : new double[] {0.99, 1.01}) {
      Machine asked = m.withTerms(new HoldTerms(true, part * low, 1e-4, Tolerances.NONE));
      Hold wall =
          new HoldStudy(balance(asked))
              .all().stream()
                  .filter(h -> h.place().name().equals("wall"))
                  .findFirst()
                  .orElseThrow();
      assertThat(wall.holds()).isEqualTo(part < 1);
    }
  }

  @Test
  void solvesThinGapsDownToTheAllowance() {
    assertThat(LeakLattice.thinned(List.of(1e-3, 1.732e-3), 1e-4))
        .containsExactly(1.111e-4, 3.333e-4, 1e-3, 1.732e-3);
  }
}
