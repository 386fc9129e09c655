package hemline.solver.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of JCGM 100:2008, annex H. All their values are from memory; the tests below
 * check that they are consistent in themselves: means and deviations of H.2 follow from its five
 * sets, the parts of H.1 from their factors.
 */
final class PropagationTest {
  /** Voltage V, current mA, phase rad: table H.2. */
  private static final double[][] SETS = {
    {5.007, 19.663, 1.0456},
    {4.994, 19.639, 1.0438},
    {5.005, 19.640, 1.0468},
    {4.990, 19.685, 1.0428},
    {4.999, 19.678, 1.0433}
  };

  /** H.2: resistance, reactance and impedance of a circuit, inputs correlated by their readings. */
  @Test
  void resistanceAndReactanceOfACircuit() {
    int n = SETS.length;
    double[] mean = new double[3];
    for (double[] set : SETS) {
      for (int i = 0; i < 3; i++) {
        mean[i] += set[i] / n;
      }
    }
    assertThat(mean[0]).isEqualTo(4.9990, within(5e-5));
    assertThat(mean[1]).isEqualTo(19.6610, within(5e-5));
    assertThat(mean[2]).isEqualTo(1.04446, within(5e-6));
    double[][] covariance = new double[3][3];
    for (double[] set : SETS) {
      for (int a = 0; a < 3; a++) {
        for (int b = 0; b < 3; b++) {
          covariance[a][b] += (set[a] - mean[a]) * (set[b] - mean[b]) / (n * (n - 1.0));
        }
      }
    }
    double[][] correlation = new double[3][3];
    List<InputQuantity> inputs = new ArrayList<>();
    for (int a = 0; a < 3; a++) {
      inputs.add(
          new InputQuantity(
              Source.SCATTER,
              InputQuantity.SHARED,
              mean[a],
              Math.sqrt(covariance[a][a]),
              n - 1,
              InputQuantity.Shape.STUDENT));
      for (int b = 0; b < 3; b++) {
        correlation[a][b] = covariance[a][b] / Math.sqrt(covariance[a][a] * covariance[b][b]);
      }
    }
    assertThat(inputs.get(0).standardUncertainty()).isEqualTo(0.0032, within(5e-5));
    assertThat(inputs.get(1).standardUncertainty()).isEqualTo(0.0095, within(5e-5));
    assertThat(inputs.get(2).standardUncertainty()).isEqualTo(0.00075, within(5e-6));
    assertThat(correlation[0][1]).isEqualTo(-0.36, within(5e-3));
    assertThat(correlation[0][2]).isEqualTo(0.86, within(5e-3));
    assertThat(correlation[1][2]).isEqualTo(-0.65, within(5e-3));

    Propagated circuit =
        Propagation.of(
            inputs,
            correlation,
            x -> {
              double impedance = x[0] / (1e-3 * x[1]);
              return new double[] {
                impedance * Math.cos(x[2]), impedance * Math.sin(x[2]), impedance
              };
            });

    // table H.3
    assertThat(circuit.value(0)).isEqualTo(127.732, within(5e-4));
    assertThat(circuit.value(1)).isEqualTo(219.847, within(5e-4));
    assertThat(circuit.value(2)).isEqualTo(254.260, within(5e-4));
    // a unit of the last place: the example goes on with rounded values
    assertThat(circuit.standardUncertainty(0)).isEqualTo(0.071, within(1e-3));
    assertThat(circuit.standardUncertainty(1)).isEqualTo(0.295, within(1e-3));
    assertThat(circuit.standardUncertainty(2)).isEqualTo(0.236, within(1e-3));
    assertThat(circuit.correlation(0, 1)).isEqualTo(-0.588, within(1e-3));
    assertThat(circuit.correlation(0, 2)).isEqualTo(-0.485, within(1e-3));
    assertThat(circuit.correlation(1, 2)).isEqualTo(0.993, within(1e-3));
  }

  /** H.1: an end gauge of 50 mm; all in nm, but δα in 1/°C and δθ in °C. */
  @Test
  void endGauge() {
    double length = 50_000_623;
    double expansion = 11.5e-6;
    double off = -0.1;
    List<InputQuantity> inputs =
        List.of(
            input(length, 25, 18),
            input(215, 9.7, 25.6),
            input(0, 0.58e-6, 50),
            input(0, 0.029, 2),
            input(expansion, 1.2e-6, Double.POSITIVE_INFINITY),
            input(off, 0.41, Double.POSITIVE_INFINITY));
    // l = l_s + d − l_s (δα θ + α_s δθ)
    Propagated gauge =
        Propagation.of(
            inputs, x -> new double[] {x[0] + x[1] - x[0] * (x[2] * x[5] + x[4] * x[3])});

    assertThat(gauge.value(0)).isEqualTo(50_000_838, within(0.5));
    assertThat(Math.abs(gauge.sensitivity(0, 2)) * 0.58e-6).isEqualTo(2.9, within(0.05));
    assertThat(Math.abs(gauge.sensitivity(0, 3)) * 0.029).isEqualTo(16.6, within(0.1));
    assertThat(gauge.standardUncertainty(0)).isEqualTo(32, within(0.5));
    assertThat(gauge.degreesOfFreedom(0)).isEqualTo(16.7, within(0.2));
    // the example rounds 16.7 down to 16: t = 2.92 and 93 nm
    assertThat(Propagated.factor(16, 0.99)).isEqualTo(2.92, within(5e-3));
    assertThat(Propagated.factor(16, 0.99) * 32).isEqualTo(93, within(0.5));
  }

  /** What two outputs share correlates them; what each has alone does not. */
  @Test
  void sharedErrorsCorrelate() {
    List<InputQuantity> inputs = List.of(input(0, 3, 1e9), input(0, 4, 1e9), input(0, 4, 1e9));
    Propagated both =
        Propagation.of(inputs, x -> new double[] {x[0] + x[1], x[0] + x[2], x[1] - x[2]});
    assertThat(both.standardUncertainty(0)).isEqualTo(5, within(1e-12));
    assertThat(both.correlation(0, 1)).isEqualTo(9.0 / 25, within(1e-12));
    assertThat(both.covariance(0, 2)).isEqualTo(16, within(1e-12));
    assertThat(both.share(0, Source.SCATTER)).isEqualTo(1, within(1e-12));
    assertThat(both.expanded(0, 0.95)).isEqualTo(5 * 1.959964, within(1e-5));
  }

  private static InputQuantity input(double estimate, double uncertainty, double freedom) {
    return new InputQuantity(
        Source.SCATTER,
        InputQuantity.SHARED,
        estimate,
        uncertainty,
        freedom,
        InputQuantity.Shape.NORMAL);
  }
}
