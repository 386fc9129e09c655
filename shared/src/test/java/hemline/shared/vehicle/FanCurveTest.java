package hemline.shared.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FanCurveTest {
  private static FanCurve.Point point(double flow, double pressure, double power) {
    return new FanCurve.Point(flow, pressure, power);
  }

  private static final List<FanCurve.Point> HUMP =
      List.of(
          point(0, 800, 30),
          point(0.02, 850, 40),
          point(0.04, 700, 50),
          point(0.06, 400, 55),
          point(0.07, 50, 56));

  /** Fan laws: q ~ n, p ~ ρ n², P ~ ρ n³ (ISO 5801, from memory). */
  @Test
  void followsTheFanLaws() {
    FanCurve slow = new FanCurve(HUMP, 400, 1.2);
    FanCurve fast = slow.scaled(600, 0.9);
    for (double q = 0; q <= 0.07; q += 0.005) {
      assertThat(fast.pressureAt(1.5 * q))
          .isCloseTo(0.75 * 1.5 * 1.5 * slow.pressureAt(q), within(1e-9));
      assertThat(fast.powerAt(1.5 * q))
          .isCloseTo(0.75 * 1.5 * 1.5 * 1.5 * slow.powerAt(q), within(1e-9));
      // the static efficiency q p / P of a point does not change
      assertThat(1.5 * q * fast.pressureAt(1.5 * q) / fast.powerAt(1.5 * q))
          .isCloseTo(q * slow.pressureAt(q) / slow.powerAt(q), within(1e-12));
    }
    assertThat(fast.peakFlow()).isCloseTo(0.03, within(1e-15));
    assertThat(fast.largestFlow()).isCloseTo(0.105, within(1e-15));
  }

  @Test
  void knowsItsStallSide() {
    FanCurve fan = new FanCurve(HUMP, 400, 1.2);
    assertThat(fan.peakPressure()).isEqualTo(850);
    assertThat(fan.slopeAt(0.01)).isPositive();
    assertThat(fan.slopeAt(0.03)).isNegative();
  }

  @Test
  void tellsWhatIsWrongWithACurve() {
    assertFault(List.of(point(0, 1, 1), point(1, 0, 2)), "fan.points");
    assertFault(changed(0, point(0.01, 800, 30)), "fan.shutOff");
    assertFault(changed(2, point(0.02, 700, 50)), "fan.twoValued");
    assertFault(changed(3, point(0.06, 750, 56)), "fan.monotone");
    assertFault(changed(3, point(0.06, 400, Double.NaN)), "fan.power");
    assertFault(changed(3, point(0.06, 400, -1)), "fan.power");
    assertFault(changed(3, point(0.06, 400, 20)), "fan.efficiency");
    assertFault(changed(4, point(0.07, -50, 56)), "fan.negative");
    assertThat(FanCurve.check(changed(4, point(0.07, -50, 56)), "curve").get(0).text())
        .startsWith("point 5 has the static pressure -50 Pa, ");
    assertThat(FanCurve.check(changed(4, point(0.07, 0, 56)), "curve")).isEmpty();
    assertFault(changed(3, point(0.06, Double.NaN, 20)), "fan.number");
    assertThat(FanCurve.check(HUMP, "curve")).isEmpty();
  }

  private static List<FanCurve.Point> changed(int i, FanCurve.Point point) {
    List<FanCurve.Point> points = new ArrayList<>(HUMP);
    points.set(i, point);
    return points;
  }

  private static void assertFault(List<FanCurve.Point> points, String code) {
    List<Problem> problems = FanCurve.check(points, "curve");
    assertThat(problems).extracting(Problem::code).first().isEqualTo(code);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void aMonotoneCurveStaysBetweenItsPoints(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int n = 3 + random.nextInt(8);
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = (i == 0 ? 0 : x[i - 1]) + 0.05 + random.nextDouble();
      y[i] = 10 * random.nextDouble();
    }
    MonotoneCurve curve = new MonotoneCurve(x, y);
    for (int i = 0; i + 1 < n; i++) {
      assertThat(curve.at(x[i])).as("seed %d", seed).isCloseTo(y[i], within(1e-12));
      for (int k = 1; k < 20; k++) {
        double at = x[i] + (x[i + 1] - x[i]) * k / 20;
        assertThat(curve.at(at))
            .as("seed %d", seed)
            .isBetween(Math.min(y[i], y[i + 1]) - 1e-12, Math.max(y[i], y[i + 1]) + 1e-12);
        double d = 1e-6;
        assertThat(curve.slopeAt(at))
            .as("seed %d", seed)
            .isCloseTo((curve.at(at + d) - curve.at(at - d)) / (2 * d), within(1e-4));
      }
    }
    assertThat(curve.at(x[0] - 1)).isEqualTo(y[0]);
    assertThat(curve.at(x[n - 1] + 1)).isEqualTo(y[n - 1]);
  }
}
