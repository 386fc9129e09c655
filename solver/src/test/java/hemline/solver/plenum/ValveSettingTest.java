package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Every number of a valve's setting by hand: fan p = 3000 − 1e5 Q², one discharge coefficient, one
 * spring of 4e5 N/m, whose floor sinks by A p / k.
 */
class ValveSettingTest {
  private static final double P0 = 3000;
  private static final double A = 1e5;
  private static final double K = 4e5;
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;
  private static final double SEAT = 1.2e-3;
  private static final double RATE = 400;
  private static final double MASS = 0.01;
  private static final double FACTOR = 2.2;
  private static final OtherLeak HOLE = new OtherLeak("hole", 4e-4, 0.6);
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  private static ReliefValve valve(double preload, double maximumLift) {
    return new ReliefValve(SEAT, RATE, preload, maximumLift, 0.62, MASS, 0.1);
  }

  private static Machine machine(ReliefValve valve) {
    return Machines.round(Machines.quadratic(P0, A), K)
        .withOtherLeaks(List.of(HOLE))
        .withValve(valve);
  }

  private static double rho() {
    return Machines.round(Machines.quadratic(P0, A), K).duty().air().air().density();
  }

  private static double speed(double p) {
    return Math.sqrt(2 * p / rho());
  }

  private static double perimeter() {
    return Math.PI * Math.sqrt(4 * SEAT / Math.PI);
  }

  private static double fan(double p) {
    return Math.sqrt((P0 - p) / A);
  }

  private static double hole(double p) {
    return 0.6 * 4e-4 * speed(p);
  }

  private static double valveFlow(double p, double preload) {
    double lift = Math.max(0, (SEAT * p - preload) / RATE);
    return 0.62 * Math.min(perimeter() * lift, SEAT) * speed(p);
  }

  /** Half of the valve's momentum is taken from the load. */
  private static double load(double p, double preload) {
    return AREA * p - 0.5 * rho() * valveFlow(p, preload) * speed(p);
  }

  private static double seal(double p, double preload) {
    return Machines.C * SEAL * (Machines.GAP - load(p, preload) / K) * speed(p);
  }

  /** Zero of a falling function between two suctions. */
  private static double zero(double low, double high, DoubleUnaryOperator f) {
    double a = low;
    double b = high;
    for (int n = 0; n < 100; n++) {
      double m = 0.5 * (a + b);
      if (f.applyAsDouble(m) > 0) {
        a = m;
      } else {
        b = m;
      }
    }
    return a;
  }

  /** Where fan and leaks agree with a valve of some preload, Pa. */
  private static double settles(double preload) {
    return zero(500, P0, p -> fan(p) - seal(p, preload) - hole(p) - valveFlow(p, preload));
  }

  @Test
  void everyNumberOfTheSetting() {
    ReliefValve own = valve(0.25, 0.05);
    ValveSetting v = ValveStudy.of(new PlenumBalance(machine(own), LAWS), FACTOR, null);
    double cap = K * Machines.GAP / (FACTOR * AREA);
    assertThat(cap).isBetween(2800.0, 2950.0);
    assertThat(v.factor()).isEqualTo(FACTOR);
    assertThat(v.capSuction().value()).isCloseTo(cap, withPercentage(1e-6));
    double flow = fan(cap) - hole(cap);
    assertThat(v.flowAtCap().value()).isCloseTo(flow, withPercentage(0.01));
    assertThat(v.idle()).isFalse();
    ValveSetting.Setting set = Objects.requireNonNull(v.setting());
    double jet = 0.62 * speed(cap);
    double lift = flow / (jet * perimeter());
    double preload = cap * SEAT - RATE * lift;
    assertThat(set.seat().fits()).isTrue();
    assertThat(set.seat().lift()).isCloseTo(lift, withPercentage(0.01));
    assertThat(set.spring().preload()).isCloseTo(preload, withPercentage(0.02));
    assertThat(set.spring().openingSuction()).isCloseTo(preload / SEAT, withPercentage(0.02));
    assertThat(set.seat().largestFlow()).isCloseTo(jet * SEAT, withPercentage(1e-4));
    assertThat(set.seat().areaNeeded()).isCloseTo(flow / jet, withPercentage(0.01));
    // without the valve the machine settles at less than the cap
    double free = settles(1e9);
    assertThat(free).isLessThan(0.95 * cap);
    assertThat(set.spring().softRate()).isCloseTo((cap - free) * SEAT / lift, withPercentage(0.2));
    double at = settles(preload);
    assertThat(at).isLessThan(0.99 * free);
    assertThat(Objects.requireNonNull(set.settled().suction()).value())
        .isCloseTo(at, withPercentage(0.02));
    assertThat(Objects.requireNonNull(set.settled().downforce()).value())
        .isCloseTo(load(at, preload), withPercentage(0.02));
  }

  /**
   * Fan −1/p′ = 1 / (2 a Q), seal, hole and valve q / (2 p); the valve's slope C_d √(2 p / ρ) π d A
   * / k. Damping as told puts the linearised motion on its bound: the coefficients of s³ C m + s²
   * (C c + G m) + s (C k + G c) + (G k + g A) meet a₂ a₁ = a₃ a₀.
   */
  @Test
  void chatterOfAnOpenValve() {
    double preload = 0.25;
    Machine m = machine(valve(preload, 0.05));
    double p = settles(preload);
    ValveSetting.Chatter c = chatter(m);
    double lift = (SEAT * p - preload) / RATE;
    assertThat(perimeter() * lift).isLessThan(SEAT);
    assertThat(c.open()).isTrue();
    assertThat(c.warns()).isEqualTo(c.dampingNeeded() > 0.1);
    assertThat(c.damping()).isEqualTo(0.1);
    assertThat(c.naturalFrequency()).isCloseTo(31.831, withPercentage(0.001));
    double own = 1 / (2 * A * fan(p)) + (seal(p, preload) + hole(p)) / (2 * p);
    double g = 0.62 * speed(p) * perimeter();
    assertThat(c.slopes()).isCloseTo(g * SEAT / RATE / own, withPercentage(0.1));
    double all = own + valveFlow(p, preload) / (2 * p);
    double filling = AREA * 0.04 / (1.4 * m.duty().air().pressure());
    double damping = c.dampingNeeded() * 2 * Math.sqrt(RATE * MASS);
    assertThat((filling * damping + all * MASS) * (filling * RATE + all * damping))
        .isCloseTo(filling * MASS * (all * RATE + g * SEAT), withPercentage(0.1));
  }

  private static ValveSetting.Chatter chatter(Machine m) {
    ValveSetting v = ValveStudy.of(new PlenumBalance(m, LAWS), FACTOR, null);
    return Objects.requireNonNull(v.setting()).chatter();
  }

  /**
   * A closed valve and one against its stop do not chatter; neither does one that never settles.
   */
  @Test
  void chatterNeedsAValveThatMoves() {
    double p = settles(1e9);
    ValveSetting.Chatter closed = chatter(machine(valve(1.01 * p * SEAT, 0.05)));
    assertThat(closed)
        .isEqualTo(new ValveSetting.Chatter(false, 0, 0.1, closed.naturalFrequency(), 0));
    assertThat(closed.naturalFrequency()).isCloseTo(31.831, withPercentage(0.001));
    assertThat(chatter(machine(valve(0.97 * p * SEAT, 0.05))).slopes()).isPositive();
    ValveSetting.Chatter full = chatter(machine(valve(0.25, 1e-4)));
    assertThat(full).isEqualTo(new ValveSetting.Chatter(true, 0, 0.1, full.naturalFrequency(), 0));
    Machine soft =
        Machines.round(Machines.quadratic(P0, A), 2e3).withValve(valve(1.01 * P0 * SEAT, 0.05));
    ValveSetting v = ValveStudy.of(new PlenumBalance(soft, LAWS), FACTOR, null);
    ValveSetting.Setting set = Objects.requireNonNull(v.setting());
    assertThat(set.chatter().open()).isFalse();
    assertThat(set.spring().softRate()).isZero();
  }

  /** Open with too little damping warns; closed, or with enough, it does not. */
  @Test
  void warnsOfTooLittleDamping() {
    assertThat(new ValveSetting.Chatter(true, 0.2, 0.1, 30, 1).warns()).isTrue();
    assertThat(new ValveSetting.Chatter(true, 0.1, 0.1, 30, 1).warns()).isFalse();
    assertThat(new ValveSetting.Chatter(false, 0.2, 0.1, 30, 1).warns()).isFalse();
  }

  /** Without a valve in the file its need follows from the margin's low end. */
  @Test
  void isNeededBelowTheFactor() {
    PlenumBalance none = new PlenumBalance(Machines.round(Machines.quadratic(P0, A), K), LAWS);
    ValveSetting v = ValveStudy.of(none, FACTOR, margin(2.4, 0.3));
    assertThat(v.needed()).isTrue();
    assertThat(v.setting()).isNull();
    assertThat(v.idle()).isFalse();
    assertThat(ValveStudy.of(none, FACTOR, margin(2.4, 0.1)).needed()).isFalse();
    assertThat(ValveStudy.of(none, FACTOR, null).needed()).isFalse();
    assertThat(ValveStudy.of(none, 1.5, margin(9, 0)).idle()).isTrue();
  }

  private static Estimate margin(double value, double width) {
    return new Estimate(value, width, 0, 0, 0, Estimate.Trend.UNKNOWN);
  }

  /** More leaks low or high move the cap through the lips' forces alone, here not at all. */
  @Test
  void bandsOfTheCap() {
    ValveSetting v =
        ValveStudy.of(new PlenumBalance(machine(valve(0.25, 0.05)), LAWS), FACTOR, null);
    assertThat(v.capSuction().high() - v.capSuction().low()).isCloseTo(0, within(1e-3));
  }
}
