package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The law of the one-equation closure's own layer. */
class VelocityLawTest {
  /**
   * Closed form of Allmaras, Johnson & Spalart 2012, ICCFD7-1902, eq. 29 (constants from memory):
   * an independent integral of the same layer.
   */
  private static double closed(double y) {
    double bar = 5.0333908790505579;
    double a1 = 8.148221580024245;
    double a2 = -6.9287093849022945;
    double b1 = 7.4600876082527945;
    double b2 = 7.468145790401841;
    double c1 = 2.5496773539754747;
    double c2 = 1.3301651588535228;
    double c3 = 3.599459109332379;
    double c4 = 3.6397531868684494;
    return bar
        + c1 * Math.log(sum(y + a1, b1))
        - c2 * Math.log(sum(y + a2, b2))
        - c3 * Math.atan2(b1, y + a1)
        - c4 * Math.atan2(b2, y + a2);
  }

  private static double sum(double a, double b) {
    return a * a + b * b;
  }

  @ParameterizedTest
  @CsvSource({"1", "3", "5", "8", "12", "20", "35", "60", "100", "300", "999"})
  void isTheClosuresLayer(double y) {
    assertThat(SpalartAllmaras.LAW.velocity(y)).isCloseTo(closed(y), within(2e-3 * closed(y)));
  }

  /** u⁺ = y⁺ in the sublayer, one more logarithm beyond the table. */
  @Test
  void goesOnBeyondItsEnds() {
    assertThat(SpalartAllmaras.LAW.velocity(0.3)).isEqualTo(0.3);
    assertThat(SpalartAllmaras.LAW.velocity(0.5)).isCloseTo(0.5, within(1e-5));
    assertThat(SpalartAllmaras.LAW.velocity(1000 * Math.E) - SpalartAllmaras.LAW.velocity(1000))
        .isCloseTo(1 / 0.41, within(1e-9));
  }

  /** Without eddies a layer is linear: u⁺ = y⁺ at every point of the table. */
  @Test
  void aLaminarLayerIsLinear() {
    VelocityLaw laminar = VelocityLaw.of(y -> 0);
    assertThat(laminar.velocity(0.5)).isCloseTo(0.5, within(1e-12));
    assertThat(laminar.velocity(1000)).isCloseTo(1000, within(1e-9));
  }
}
