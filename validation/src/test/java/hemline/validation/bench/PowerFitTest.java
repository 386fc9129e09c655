package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PowerFitTest {
  @Test
  void aLawIsFoundFromItsPoints() {
    double[] size = {5e3, 2e4, 1e5, 3e5};
    double[] value = new double[4];
    for (int i = 0; i < 4; i++) {
      value[i] = 3e-6 * Math.pow(size[i], 1.15);
    }
    PowerFit fit = PowerFit.of(size, value);
    assertThat(fit.exponent()).isCloseTo(1.15, within(1e-12));
    assertThat(fit.at(1e4)).isCloseTo(3e-6 * Math.pow(1e4, 1.15), within(1e-9));
    assertThat(fit.worst()).isLessThan(1e-10);
  }

  @Test
  void scatterIsToldByTheWorstPoint() {
    // logarithms 0, 1, 0 at -1, 0, 1: a flat law at exp(1/3)
    PowerFit fit = PowerFit.of(new double[] {1 / Math.E, 1, Math.E}, new double[] {1, Math.E, 1});
    assertThat(fit.exponent()).isCloseTo(0, within(1e-12));
    assertThat(fit.worst()).isCloseTo(Math.exp(2.0 / 3) - 1, within(1e-12));
  }

  @Test
  void tooLittleIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PowerFit.of(new double[] {1}, new double[] {1}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PowerFit.of(new double[] {2, 2}, new double[] {1, 3}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PowerFit.of(new double[] {2, 3}, new double[] {1, 0}));
  }
}
