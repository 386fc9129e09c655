package hemline.solver.rig;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * First-order propagation of uncertainty (JCGM 100:2008, 5.1.2 and 5.2.2). Derivatives come from
 * the function itself a standard uncertainty either way (5.1.3, note 2).
 */
public final class Propagation {
  private Propagation() {}

  /** What is measured as a function of what it depends on. */
  @FunctionalInterface
  public interface Model {
    /**
     * The outputs.
     *
     * @param inputs SI; not modified
     */
    double[] at(double[] inputs);
  }

  /** Propagates uncorrelated inputs; errors that outputs share correlate the outputs. */
  public static Propagated of(List<InputQuantity> inputs, Model model) {
    return of(inputs, null, model);
  }

  /**
   * Propagates inputs.
   *
   * @param correlation of each input with each; null where there is none
   */
  public static Propagated of(
      List<InputQuantity> inputs, double @Nullable [][] correlation, Model model) {
    double[] x = inputs.stream().mapToDouble(InputQuantity::estimate).toArray();
    double[] values = model.at(x);
    int m = values.length;
    int n = x.length;
    double[][] sensitivity = new double[m][n];
    for (int i = 0; i < n; i++) {
      double u = inputs.get(i).standardUncertainty();
      if (u == 0) {
        continue;
      }
      double middle = x[i];
      x[i] = middle + u;
      double[] above = model.at(x);
      x[i] = middle - u;
      double[] below = model.at(x);
      x[i] = middle;
      for (int k = 0; k < m; k++) {
        sensitivity[k][i] = (above[k] - below[k]) / (2 * u);
      }
    }
    double[][] covariance = new double[m][m];
    for (int a = 0; a < m; a++) {
      for (int b = 0; b < m; b++) {
        covariance[a][b] = covariance(inputs, correlation, sensitivity[a], sensitivity[b]);
      }
    }
    return new Propagated(inputs, values, sensitivity, covariance);
  }

  /** V_ab = Σ_i Σ_j c_ai u_i r_ij u_j c_bj. */
  private static double covariance(
      List<InputQuantity> inputs, double @Nullable [][] correlation, double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      double left = a[i] * inputs.get(i).standardUncertainty();
      if (correlation == null) {
        sum += left * inputs.get(i).standardUncertainty() * b[i];
        continue;
      }
      for (int j = 0; j < b.length; j++) {
        sum += left * correlation[i][j] * inputs.get(j).standardUncertainty() * b[j];
      }
    }
    return sum;
  }
}
