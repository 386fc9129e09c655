package hemline.solver.scheme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimiterTest {

  /** ψ(r) of Koren 1993: 2 r up to r = 0.4, (2 + r) / 3 up to r = 4, then 2. */
  @ParameterizedTest
  @CsvSource({
    "-1, 0",
    "0, 0",
    "0.1, 0.2",
    "0.39, 0.78",
    "0.7, 0.9",
    "1, 1",
    "2.5, 1.5",
    "4, 2",
    "9, 2"
  })
  void isKorensLimiter(double r, double psi) {
    for (double b : new double[] {1, -1, 7, -0.01}) {
      assertThat(Limiter.step(r * b, b)).isCloseTo(psi * b, within(1e-14 * Math.abs(b)));
    }
  }

  /** The face value of a parabola on an even grid is exact: third order. */
  @Test
  void parabolasAreExact() {
    double behind = mean(4);
    double upwind = mean(5);
    double down = mean(6);
    double face = upwind + 0.5 * Limiter.step(upwind - behind, down - upwind);
    assertThat(face).isCloseTo(5.5 * 5.5, within(1e-12));
  }

  /** Mean of x² over a cell of width 1. */
  private static double mean(double middle) {
    return middle * middle + 1.0 / 12;
  }

  /**
   * Without bound: cell means of x² give the value at the face to the last digit, also where the
   * bounded step cuts it off.
   */
  @Test
  void isOfThirdOrderEverywhereWithoutBound() {
    for (double face : new double[] {-0.6, -0.1, 0, 0.1, 0.6, 3}) {
      double behind = mean(face - 1.5);
      double upwind = mean(face - 0.5);
      double down = mean(face + 0.5);
      double value = upwind + 0.5 * Limiter.unbounded(upwind - behind, down - upwind);
      assertThat(value).isCloseTo(face * face, within(1e-14));
    }
    assertThat(Limiter.unbounded(-1, 2)).isEqualTo(1);
    assertThat(Limiter.step(-1, 2)).isZero();
  }
}
