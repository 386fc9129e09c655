package hemline.shared.fluid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AirTest {
  /** Rows of a table in the resources, without comments and heading. */
  private static List<double[]> rows(String name) throws IOException {
    try (InputStream in = AirTest.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(l -> !l.isBlank() && (Character.isDigit(l.charAt(0)) || l.charAt(0) == '-'))
          .map(l -> Stream.of(l.split(",")).mapToDouble(Double::parseDouble).toArray())
          .toList();
    }
  }

  static List<double[]> air() throws IOException {
    return rows("air_properties.csv");
  }

  static List<double[]> suctions() throws IOException {
    return rows("compressibility_of_suction.csv");
  }

  @ParameterizedTest
  @MethodSource("air")
  void agreesWithTheTable(double[] row) {
    Percentage digits = Percentage.withPercentage(1e-5);
    double temperature = row[0] + 273.15;
    FluidState air = Air.at(temperature, 101325);
    assertThat(air.density()).isCloseTo(row[1], digits);
    assertThat(Air.viscosity(temperature)).isCloseTo(row[2], digits);
    assertThat(air.kinematicViscosity()).isCloseTo(row[3], digits);
  }

  @ParameterizedTest
  @MethodSource("suctions")
  void expansibilityAgreesWithTheTable(double[] row) {
    assertThat(Expansibility.jetSpeed(row[0], 1.225)).isCloseTo(row[1], within(1e-5 * row[1]));
    assertThat(Expansibility.factor(row[0], 101325)).isCloseTo(row[4], within(1e-7));
    assertThat(Expansibility.factor(-row[0], 101325)).isCloseTo(row[4], within(1e-7));
    assertThat(Expansibility.jetMach(row[0], 101325)).isCloseTo(row[5], within(1e-7));
  }

  @Test
  void tablesAreThere() throws IOException {
    assertThat(air()).hasSize(8);
    assertThat(suctions()).hasSize(7);
  }

  @Test
  void seriesMeetsTheClosedForm() {
    double below = Expansibility.factor(0.99e-6 * 101325, 101325);
    double above = Expansibility.factor(1.01e-6 * 101325, 101325);
    assertThat(above - below).isCloseTo(-0.75 / 1.4 * 0.02e-6, within(1e-9));
    assertThat(Expansibility.factor(0, 101325)).isEqualTo(1);
  }

  @Test
  void jetChokesAtTheCriticalRatio() {
    assertThat(Expansibility.criticalRatio()).isCloseTo(0.5283, within(1e-4));
    assertThat(Expansibility.jetMach(90000, 101325)).isCloseTo(1, within(1e-12));
    assertThat(Expansibility.factor(90000, 101325) * Math.sqrt(90000))
        .isCloseTo(Expansibility.factor(60000, 101325) * Math.sqrt(60000), within(1e-9));
  }

  /** ISO 2533 table, from memory: 89875 Pa at 1000 m and 22632 Pa at 11000 m. */
  @Test
  void standardAtmosphere() {
    assertThat(Air.pressureAtAltitude(0)).isEqualTo(101325);
    assertThat(Air.pressureAtAltitude(1000)).isCloseTo(89875, within(1.0));
    assertThat(Air.pressureAtAltitude(11000)).isCloseTo(22632, within(1.0));
  }

  @Test
  void refusesNonsense() {
    assertThatIllegalArgumentException().isThrownBy(() -> Air.at(-1, 101325));
    assertThatIllegalArgumentException().isThrownBy(() -> Air.pressureAtAltitude(20000));
    assertThatIllegalArgumentException().isThrownBy(() -> Expansibility.factor(100, 0));
  }
}
