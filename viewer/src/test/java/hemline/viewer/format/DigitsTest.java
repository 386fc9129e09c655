package hemline.viewer.format;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class DigitsTest {

  private static Estimate band(double value, double half) {
    return new Estimate(value, half, 0, 0, 0, Trend.MONOTONE);
  }

  @ParameterizedTest
  @CsvSource({
    "0.0431, 0.0004, 1000, 43.1 ± 0.4",
    "0.681, 0.012, 1, 0.681 ± 0.012",
    "0.681, 0.03, 1, 0.68 ± 0.03",
    "-3.456, 0.2, 1, −3.46 ± 0.20",
    "1234.5, 80, 1, 1234 ± 80",
    "1, 0, 1, 1",
    "1, 1e-14, 1, 1",
    "0, 1e-14, 1, 0",
    "0, 0.5, 1, 0.0 ± 0.5"
  })
  void bandSetsTheDigits(double value, double half, double factor, String text) {
    assertThat(Digits.withBand(band(value, half), factor)).isEqualTo(text);
  }

  @Test
  void lopsidedBandShowsBothSides() {
    Estimate estimate = new Estimate(0.75, 0.06, 0, 0.08, 0, Trend.MONOTONE);
    assertThat(Digits.withBand(estimate, 1)).isEqualTo("0.75 (+0.06/−0.10)");
    assertThat(Digits.range(estimate, 1)).isEqualTo("0.65 to 0.81");
  }

  @Test
  void partsOfABandAreNamedWhereThereIsAModelPart() {
    Estimate estimate = new Estimate(0.75, 0.01, 0.002, 0.1, 0.02, Trend.MONOTONE);
    assertThat(Digits.parts(estimate, 1000)).isEqualTo("grid ± 12, model ± 60");
    assertThat(Digits.parts(band(0.75, 0.01), 1)).isEmpty();
  }

  @Test
  void negativeFactorTurnsTheBandRound() {
    Estimate estimate = new Estimate(0.75, 0.06, 0, 0.08, 0, Trend.MONOTONE);
    assertThat(Digits.withBand(estimate, -1)).isEqualTo("−0.75 (+0.10/−0.06)");
  }

  @Test
  void shownBandIsNeverNarrowerThanTheRealOneByMoreThanATwentiethOfADigit() {
    for (long seed = 1; seed <= 500; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double value = Math.pow(10, random.nextDouble(-4, 4));
      double half = value * Math.pow(10, random.nextDouble(-3, 0));
      String shown = Digits.band(band(value, half), 1).substring(2);
      double unit = Math.pow(10, -Digits.decimals(band(value, half), 1));
      assertThat(Double.parseDouble(shown))
          .as("seed %d", seed)
          .isGreaterThanOrEqualTo(half - 0.051 * unit);
    }
  }

  @ParameterizedTest
  @CsvSource({"2, 2", "0.5, 0.5", "1.23456, 1.235", "600, 600", "-0.0001, −0.0001", "0, 0"})
  void plainNumbersCarryNoNeedlessZeros(double value, String text) {
    assertThat(Digits.plain(value, 4)).isEqualTo(text);
  }

  @Test
  void noNegativeZero() {
    assertThat(Digits.fixed(-0.0004, 2)).isEqualTo("0.00");
  }
}
