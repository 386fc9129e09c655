package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Operating points against a fine walk along the fan's curve and against formulas. */
class PointSearchTest {
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  /** A curve with a hump at 0.0461 m³/s, between two steps of the search. */
  private static FanCurve hump() {
    List<FanCurve.Point> points = new ArrayList<>();
    double middle = 0.0461;
    for (int k = 0; k <= 400; k++) {
      double q = 0.08 * k / 400;
      double t = (q - middle) / 0.006;
      double fall = Math.max(0, q - middle) * 2500;
      points.add(new FanCurve.Point(q, 100 + 300 * Math.exp(-t * t) - fall, Double.NaN));
    }
    return new FanCurve(points, 400, 1.225);
  }

  private static double perRoot(double gap, double rho) {
    return Machines.C * gap * SEAL * Math.sqrt(2 / rho);
  }

  /** Zeros of K √p(Q) − Q by steps of a hundred-thousandth. */
  private static List<Double> walk(FanCurve fan, double k) {
    List<Double> zeros = new ArrayList<>();
    int n = 100_000;
    double before = k * Math.sqrt(fan.pressureAt(0));
    for (int i = 1; i <= n; i++) {
      double q = fan.largestFlow() * i / n;
      double r = k * Math.sqrt(fan.pressureAt(q)) - q;
      if (r > 0 != before > 0) {
        zeros.add(fan.largestFlow() * (i - r / (r - before)) / n);
      }
      before = r;
    }
    return zeros;
  }

  /** Wide and narrow pairs, also those that fall between two steps, above and below zero. */
  @ParameterizedTest
  @ValueSource(
      doubles = {
        1.2e-3, 2.1e-3, 2.279e-3, 2.282e-3, 2.285e-3, 2.6e-3, 3.336e-3, 3.338e-3, 3.34e-3, 4e-3
      })
  void findsAllZeros(double k) {
    Machine m = Machines.round(hump(), Machines.RIGID);
    double rho = m.duty().air().air().density();
    Machine at = m.withFloor(m.floor().withGaps(k / perRoot(Machines.GAP, rho)));
    PlenumBalance balance = new PlenumBalance(at, LAWS);
    List<Double> zeros = walk(balance.fan(), k);
    List<PlenumState> points = balance.points(Stand.REST);
    assertThat(points).hasSameSizeAs(zeros);
    for (int i = 0; i < zeros.size(); i++) {
      assertThat(points.get(i).flows().fan()).isCloseTo(zeros.get(i), within(1e-8));
      assertThat(points.get(i).demand())
          .isCloseTo(points.get(i).flows().fan(), withPercentage(1e-7));
    }
  }

  /** How many zeros the walk finds: one, a pair beside one, one. */
  @Test
  void theCurveHasPairs() {
    FanCurve fan = hump().scaled(400, Machines.round(hump(), 1).duty().air().air().density());
    List<Integer> counts = new ArrayList<>();
    for (double k = 1.2e-3; k < 5e-3; k += 1e-5) {
      int n = walk(fan, k).size();
      if (counts.isEmpty() || counts.get(counts.size() - 1) != n) {
        counts.add(n);
      }
    }
    assertThat(counts).startsWith(1, 3, 1);
  }

  /** Close to a known flow the same point is found; a tenth and more away none is looked for. */
  @Test
  void looksCloseToAFlow() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    PlenumBalance balance = new PlenumBalance(m, LAWS);
    double q = Machines.settled(balance).flows().fan();
    PointSearch search = new PointSearch(balance, Stand.REST);
    for (double off : new double[] {-0.1, -0.03, -0.004, 0, 0.004, 0.03, 0.1}) {
      PlenumState near = Objects.requireNonNull(search.near((1 + off) * q), "off " + off);
      assertThat(near.flows().fan()).isCloseTo(q, within(1e-10));
    }
    assertThat(search.near(1.2 * q)).isNull();
    assertThat(search.near(0.8 * q)).isNull();
  }

  /** Near the end of the curve the search stays on it; an unstable point is no answer. */
  @Test
  void looksOnTheCurveAndForStablePoints() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    Machine wide = m.withFloor(m.floor().withGaps(12));
    PlenumBalance balance = new PlenumBalance(wide, LAWS);
    double q = Machines.settled(balance).flows().fan();
    double last = balance.fan().largestFlow();
    assertThat(q).isBetween(0.98 * last, last);
    assertThat(
            Objects.requireNonNull(new PointSearch(balance, Stand.REST).near(0.98 * q))
                .flows()
                .fan())
        .isCloseTo(q, within(1e-10));

    Machine hump = Machines.round(Machines.steepHump(), Machines.RIGID);
    FanCurve curve = hump.fan().running(hump.duty().air().air().density());
    double rho = hump.duty().air().air().density();
    double k = 0.035 / Math.sqrt(curve.pressureAt(0.035));
    Machine at = hump.withFloor(hump.floor().withGaps(k / perRoot(Machines.GAP, rho)));
    PointSearch search = new PointSearch(new PlenumBalance(at, LAWS), Stand.REST);
    List<PlenumState> points = search.all();
    assertThat(points).hasSize(3);
    assertThat(points).extracting(p -> p.flows().fan()).isSorted();
    assertThat(search.near(0.035)).isNull();
    assertThat(
            Objects.requireNonNull(search.near(1.002 * points.get(2).flows().fan())).flows().fan())
        .isCloseTo(points.get(2).flows().fan(), within(1e-10));
    // running up the fan settles at the largest stable flow
    assertThat(Objects.requireNonNull(search.settled()).flows().fan())
        .isCloseTo(points.get(2).flows().fan(), within(1e-12));
  }

  /**
   * With the springs following, dD/dp = Q / 2p − (Q / h) A / k; on the falling side of the curve,
   * p′ = −2 a Q, a machine held close to the ground by soft springs runs away: p′ dD/dp > 1.
   */
  @Test
  void aFloorCloseToTheGroundIsUnstable() {
    double p0 = 3000;
    double a = 1e5;
    double k = 1e5;
    double p = 2900;
    double q = Math.sqrt((p0 - p) / a);
    for (double h : new double[] {1e-4, 2e-4, 2.8e-4, 6e-4}) {
      Machine m = Machines.round(Machines.quadratic(p0, a), k);
      double rho = m.duty().air().air().density();
      // leak coefficient for which this gap takes just this flow
      double c = q / (h * SEAL * Math.sqrt(2 * p / rho));
      double free = q / (2 * p) - q / h * AREA / k;
      boolean stable = -2 * a * q * free < 1;
      assertThat(stable).isEqualTo(h > 2.4e-4);
      Machine at = m.withFloor(m.floor().withGaps((h + AREA * p / k) / Machines.GAP));
      List<PlenumState> points = new PlenumBalance(at, Machines.constant(c, 0)).points(Stand.REST);
      PlenumState there =
          points.stream()
              .filter(s -> Math.abs(s.flows().fan() - q) < 1e-3 * q)
              .findFirst()
              .orElseThrow();
      assertThat(there.stable()).as("%s", h).isEqualTo(stable);
      assertThat(there.stalled()).isFalse();
      assertThat(there.least().gap()).isCloseTo(h, withPercentage(1));
    }
  }
}
