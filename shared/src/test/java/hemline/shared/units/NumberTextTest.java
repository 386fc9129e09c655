package hemline.shared.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberTextTest {

  @ParameterizedTest
  @CsvSource({
    "0, 3, 0",
    "2, 4, 2",
    "0.0020000000000000001, 6, 0.002",
    "12345.678, 3, 12300",
    "-0.00012345, 3, -0.000123",
    "1.2345e-9, 3, 1.23E-9",
    "1e12, 3, 1E+12",
    "NaN, 3, not a number",
    "1.25e-6, 3, 0.00000125",
    "1.25e-7, 3, 1.25E-7",
    "1.25e9, 3, 1250000000",
    "1.25e10, 3, 1.25E+10",
  })
  void significant(double value, int digits, String text) {
    assertThat(NumberText.significant(value, digits)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "43.1234, 0.4, 43.12",
    "43.1234, 0.0123, 43.123",
    "43.1234, 5.2, 43.1",
    "1234.5, 120, 1230",
    "0.99999, 0.0095, 1.0000",
    "-3.14159, 0.05, -3.142",
    "7.5, 0, 7.5",
    "0.00001, 0.2, 0.00",
    "0, 1.2e-5, 0.000000",
    "0, 1.2e-6, 0",
    "0, 12, 0",
  })
  void decimalsSuitTheBand(double value, double halfWidth, String text) {
    assertThat(NumberText.within(value, halfWidth)).isEqualTo(text);
  }

  @Test
  void quantities() {
    assertThat(NumberText.millimetres(0.1 * 0.02)).isEqualTo("2 mm");
    assertThat(NumberText.point(0.008, 0)).isEqualTo("(8, 0) mm");
    assertThat(NumberText.pressure(600)).isEqualTo("600 Pa");
    assertThat(NumberText.pressure(9999)).isEqualTo("9999 Pa");
    assertThat(NumberText.pressure(-10000)).isEqualTo("-10 kPa");
    assertThat(NumberText.pressure(20000)).isEqualTo("20 kPa");
  }

  @Test
  void roundingNeverLeavesTheBandsSecondDigit() {
    for (int seed = 0; seed < 1000; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double value = random.nextDouble(-1e4, 1e4);
      double half = Math.pow(10, random.nextDouble(-4, 3));
      double shown = Double.parseDouble(NumberText.within(value, half));
      assertThat(Math.abs(shown - value)).as("seed %d", seed).isLessThanOrEqualTo(0.051 * half);
    }
  }
}
