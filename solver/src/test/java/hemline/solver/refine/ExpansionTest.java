package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExpansionTest {
  /**
   * Ideal nozzle from 101325 Pa and 1.225 kg/m³ into suction; worked out from the gas-dynamics
   * formulas apart from this project's code.
   */
  @ParameterizedTest
  @CsvSource({
    "100, 0.99947115, 0.037560425",
    "500, 0.99735295, 0.084094583",
    "1000, 0.99469887, 0.11911773",
    "2000, 0.98936937, 0.16900024",
    "5000, 0.97320652, 0.26984888",
    "10000, 0.94566029, 0.38815756",
    "20000, 0.88805882, 0.5693773"
  })
  void matchesTheIdealNozzle(double suction, double factor, double mach) {
    assertThat(Expansion.factor(suction)).isCloseTo(factor, within(1e-8));
    assertThat(Expansion.jetMach(suction)).isCloseTo(mach, within(1e-7));
  }

  @Test
  void isOneAtRestAndFallsWithSuctionEitherWay() {
    assertThat(Expansion.factor(0)).isEqualTo(1);
    assertThat(Expansion.factor(1e-6)).isCloseTo(1, within(1e-10));
    double last = 1;
    for (double suction = 50; suction < 101_000; suction *= 1.3) {
      double factor = Expansion.factor(suction);
      assertThat(factor).isLessThan(last).isPositive();
      last = factor;
    }
    assertThat(Expansion.factor(-5000)).isLessThan(1).isGreaterThan(Expansion.factor(5000));
    assertThat(Expansion.jetMach(80_000)).isCloseTo(1, within(1e-12));
  }
}
