package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friction of wheels against pushes and turns, each by the equations of statics. */
class FrictionLimitTest {
  private static final double HELD = Double.POSITIVE_INFINITY;

  /** Four wheels at (±0.2, ±0.1) about a centre. */
  private static FrictionLimit four(double x, double y, double... holding) {
    return new FrictionLimit(
        new double[] {x + 0.2, x + 0.2, x - 0.2, x - 0.2},
        new double[] {y + 0.1, y - 0.1, y + 0.1, y - 0.1},
        holding);
  }

  private static double[] even(double limit) {
    return new double[] {limit, limit, limit, limit};
  }

  /** Every wheel slides the same way: all friction over the push. */
  @ParameterizedTest
  @CsvSource({"8, 0", "0, 8", "-4.8, 6.4", "3, -4"})
  void aPushThroughTheMiddle(double fx, double fy) {
    double all = 40 / Math.hypot(fx, fy);
    assertThat(four(0, 0, HELD, HELD, HELD, HELD).factor(even(10), fx, fy, 0))
        .isCloseTo(all, within(1e-6 * all));
    // the same about a place elsewhere
    assertThat(
            four(0.3, -0.2, HELD, HELD, HELD, HELD).factor(even(10), fx, fy, 0.3 * fy + 0.2 * fx))
        .isCloseTo(all, within(1e-6 * all));
  }

  /** A turn alone: Σ of friction times distance from the middle over the moment. */
  @Test
  void aTurnAlone() {
    double r = Math.hypot(0.2, 0.1);
    for (double moment : new double[] {2, -2}) {
      assertThat(four(0.1, 0.4, HELD, HELD, HELD, HELD).factor(even(10), 0, 0, moment))
          .isCloseTo(40 * r / 2, within(1e-5));
    }
  }

  /** Two wheels on a line, pushed across it: the nearer one bears more, by the lever. */
  @ParameterizedTest
  @CsvSource({"0, 0.5", "0.5, 0.75", "1, 1", "-0.5, 0.75"})
  void aPushAcrossTwoWheels(double at, double share) {
    FrictionLimit f =
        new FrictionLimit(new double[] {1, -1}, new double[] {0, 0}, new double[] {HELD, HELD});
    assertThat(f.factor(new double[] {10, 10}, 0, 4, 4 * at))
        .isCloseTo(10 / (share * 4), within(1e-5));
  }

  /** A wheel that rolls bears only across; one that is held bears both ways. */
  @Test
  void rollingWheels() {
    FrictionLimit rolls = four(0, 0, 0, 0, 0, 0);
    assertThat(rolls.factor(even(10), 8, 0, 0)).isCloseTo(0, within(1e-6));
    assertThat(rolls.factor(even(10), 0, 8, 0)).isCloseTo(5, within(1e-5));
    FrictionLimit rear = four(0, 0, 0, 0, HELD, HELD);
    assertThat(rear.factor(even(10), 8, 0, 0)).isCloseTo(20.0 / 8, within(1e-5));
    assertThat(rear.factor(even(10), 0, 8, 0)).isCloseTo(5, within(1e-5));
    // rolling wheels turn about the middle by what they bear across, at 0.2 m
    assertThat(rolls.factor(even(10), 0, 0, 2)).isCloseTo(40 * 0.2 / 2, within(1e-5));
  }

  /**
   * A brake that yields at 6 N beside a friction of 10 N: the force along is held to 6, so a push
   * at angle t bears the lesser of 10 and 6 / cos t each.
   */
  @ParameterizedTest
  @CsvSource({"1, 0, 6", "0.8, 0.6, 7.5", "0.6, 0.8, 10", "0, 1, 10", "-0.8, 0.6, 7.5"})
  void brakesThatYield(double fx, double fy, double each) {
    assertThat(four(0, 0, 6, 6, 6, 6).factor(even(10), 5 * fx, 5 * fy, 0))
        .isCloseTo(4 * each / 5, within(1e-4));
    // stronger than the friction they do not matter
    assertThat(four(0, 0, 12, 12, 12, 12).factor(even(10), 5 * fx, 5 * fy, 0))
        .isCloseTo(4 * 10 / 5.0, within(1e-4));
  }

  /** Unequal friction: the resultant may lie anywhere between, here over the front wheels. */
  @Test
  void unequalWheels() {
    FrictionLimit f = four(0, 0, HELD, HELD, HELD, HELD);
    double[] front = {10, 10, 0, 0};
    assertThat(f.factor(front, 0, 8, 0.2 * 8)).isCloseTo(20.0 / 8, within(1e-5));
    assertThat(f.factor(front, 8, 0, 0)).isCloseTo(20.0 / 8, within(1e-5));
  }

  @Test
  void nothingPushesOrNothingHolds() {
    FrictionLimit f = four(0, 0, HELD, HELD, HELD, HELD);
    assertThat(f.factor(even(10), 0, 0, 0)).isInfinite();
    assertThat(f.factor(even(0), 1, 0, 0)).isZero();
  }
}
