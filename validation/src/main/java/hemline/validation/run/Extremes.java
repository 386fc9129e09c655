package hemline.validation.run;

import hemline.solver.flow.FlowField;
import java.util.function.IntToDoubleFunction;

/**
 * Highest and lowest values, refined by a parabola through the extreme point and its neighbours.
 */
final class Extremes {
  private Extremes() {}

  /** Extreme of a component along the line x = at (along y) or y = at. */
  static double onLine(
      FlowField field, double[] component, boolean alongY, double at, boolean max) {
    FieldSampler sampler = new FieldSampler(field);
    double[] place = alongY ? sampler.rows() : sampler.columns();
    double[] value = new double[place.length];
    int best = -1;
    for (int k = 0; k < place.length; k++) {
      value[k] = alongY ? sampler.at(component, at, place[k]) : sampler.at(component, place[k], at);
      if (!Double.isNaN(value[k])
          && (best < 0 || (max ? value[k] > value[best] : value[k] < value[best]))) {
        best = k;
      }
    }
    return best < 0
        ? Double.NaN
        : value[best] + gain(place.length, best, i -> place[i], i -> value[i]);
  }

  /** First place beyond another where a component changes sign along x = at or y = at. */
  static double zeroOnLine(
      FlowField field, double[] component, boolean alongY, double at, double beyond) {
    FieldSampler sampler = new FieldSampler(field);
    double lastPlace = Double.NaN;
    double last = Double.NaN;
    for (double place : alongY ? sampler.rows() : sampler.columns()) {
      double value = alongY ? sampler.at(component, at, place) : sampler.at(component, place, at);
      if (lastPlace >= beyond && last * value < 0) {
        return lastPlace + (place - lastPlace) * last / (last - value);
      }
      lastPlace = place;
      last = value;
    }
    return Double.NaN;
  }

  /** Extreme of the streamfunction inside the fluid. */
  static double streamfunction(FlowField field, boolean max) {
    double[] psi = field.streamfunction();
    double[] x = field.mesh().lines.x();
    double[] y = field.mesh().lines.y();
    int best = 0;
    for (int k = 1; k < psi.length; k++) {
      if (max ? psi[k] > psi[best] : psi[k] < psi[best]) {
        best = k;
      }
    }
    int i = best % x.length;
    int j = best / x.length;
    return psi[best]
        + gain(x.length, i, k -> x[k], k -> psi[j * x.length + k])
        + gain(y.length, j, k -> y[k], k -> psi[k * x.length + i]);
  }

  /** What the vertex of the parabola through three neighbours adds to the middle value. */
  private static double gain(
      int count, int k, IntToDoubleFunction place, IntToDoubleFunction value) {
    if (k == 0 || k == count - 1) {
      return 0;
    }
    double a = place.applyAsDouble(k - 1) - place.applyAsDouble(k);
    double b = place.applyAsDouble(k + 1) - place.applyAsDouble(k);
    double fa = value.applyAsDouble(k - 1) - value.applyAsDouble(k);
    double fb = value.applyAsDouble(k + 1) - value.applyAsDouble(k);
    // f = s t + c t²
    double c = (fb / b - fa / a) / (b - a);
    double s = fa / a - c * a;
    boolean extreme = Double.isFinite(c) && c != 0 && fa * fb > 0;
    return extreme ? -0.25 * s * s / c : 0;
  }
}
