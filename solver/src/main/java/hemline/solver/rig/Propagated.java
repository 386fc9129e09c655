package hemline.solver.rig;

import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Outputs of a measurement with their joint uncertainty (JCGM 100:2008, clause 5).
 *
 * <pre>  y = f(x),  C = ∂f/∂x,  V = C U Cᵀ  (5.2.2, for several outputs H.2.3)</pre>
 */
public final class Propagated {
  private final List<InputQuantity> inputs;
  private final double[] values;
  private final double[][] sensitivities;
  private final double[][] covariance;

  /** Takes the arrays as they are; none is modified. */
  Propagated(
      List<InputQuantity> inputs,
      double[] values,
      double[][] sensitivities,
      double[][] covariance) {
    this.inputs = List.copyOf(inputs);
    this.values = values;
    this.sensitivities = sensitivities;
    this.covariance = covariance;
  }

  public double value(int output) {
    return values[output];
  }

  /** Combined standard uncertainty of an output. */
  public double standardUncertainty(int output) {
    return Math.sqrt(covariance[output][output]);
  }

  /** Covariance of two outputs. */
  public double covariance(int a, int b) {
    return covariance[a][b];
  }

  /** Correlation of two outputs; 0 where one is exact. */
  public double correlation(int a, int b) {
    double size = standardUncertainty(a) * standardUncertainty(b);
    return size > 0 ? covariance[a][b] / size : 0;
  }

  /** Derivative of an output after an input. */
  double sensitivity(int output, int input) {
    return sensitivities[output][input];
  }

  /** Share of an output's variance that comes from a source, inputs taken as uncorrelated. */
  public double share(int output, Source source) {
    double part = 0;
    double whole = 0;
    for (int i = 0; i < inputs.size(); i++) {
      double u = sensitivities[output][i] * inputs.get(i).standardUncertainty();
      whole += u * u;
      part += inputs.get(i).source() == source ? u * u : 0;
    }
    return whole > 0 ? part / whole : 0;
  }

  /**
   * Effective degrees of freedom by Welch and Satterthwaite (JCGM 100:2008, G.2b); infinite where
   * all are known.
   */
  public double degreesOfFreedom(int output) {
    double sum = 0;
    for (int i = 0; i < inputs.size(); i++) {
      double u = sensitivities[output][i] * inputs.get(i).standardUncertainty();
      sum += Math.pow(u, 4) / inputs.get(i).degreesOfFreedom();
    }
    double u = standardUncertainty(output);
    return sum > 0 ? Math.pow(u, 4) / sum : Double.POSITIVE_INFINITY;
  }

  /** Half-width of the interval that holds the output with a probability (G.4.1). */
  public double expanded(int output, double probability) {
    return factor(degreesOfFreedom(output), probability) * standardUncertainty(output);
  }

  /** Coverage factor: quantile of Student's distribution, of the normal one from 1000 on. */
  static double factor(double degreesOfFreedom, double probability) {
    double p = 0.5 * (1 + probability);
    return degreesOfFreedom < 1000
        ? new TDistribution(null, Math.max(1, degreesOfFreedom)).inverseCumulativeProbability(p)
        : new NormalDistribution(null, 0, 1).inverseCumulativeProbability(p);
  }
}
