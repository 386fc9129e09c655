package hemline.solver.improve;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;

/**
 * A Gaussian process through values with noise (Rasmussen & Williams 2006, Gaussian Processes for
 * Machine Learning, chapter 2): constant mean, Matérn kernel of order 5/2 (eq. 4.17) with one scale
 * per coordinate, and the noise of each value.
 *
 * <pre>
 *   x   places in the unit cube          K   correlation of the places, noise on the diagonal
 *   y   values                           μ = 1ᵀ K⁻¹ y / 1ᵀ K⁻¹ 1,   σ² = (y − μ)ᵀ K⁻¹ (y − μ) / n
 * </pre>
 *
 * <p>Scales and noise have the greatest likelihood, n ln σ² + ln |K| least (eq. 5.8, σ²
 * eliminated), found by BOBYQA.
 */
final class Surrogate {
  /** ln of scales and of the noise over the signal: least, first and most. */
  private static final double[] SCALE = {Math.log(0.03), Math.log(0.4), Math.log(6)};

  private static final double[] NOISE = {Math.log(1e-6), Math.log(1e-4), Math.log(0.1)};
  private static final int MOST_STEPS = 150;
  private static final double FLAT = 1e-12;

  private final List<double[]> places;
  private final double[] parameters;
  private final CholeskyDecomposition correlation;
  private final RealVector weights;
  private final double mean;
  private final double variance;

  private Surrogate(List<double[]> places, double[] values, double[] parameters) {
    this.places = places;
    this.parameters = parameters;
    correlation = new CholeskyDecomposition(matrix(places, parameters), 1e-9, 1e-14);
    int n = values.length;
    RealVector ones = new ArrayRealVector(n, 1.0);
    RealVector y = new ArrayRealVector(values);
    RealVector solved = correlation.getSolver().solve(ones);
    mean = solved.dotProduct(y) / solved.dotProduct(ones);
    RealVector off = y.subtract(ones.mapMultiply(mean));
    weights = correlation.getSolver().solve(off);
    variance = Math.max(FLAT, off.dotProduct(weights) / n);
  }

  /**
   * The likeliest process.
   *
   * @param places in the unit cube, at least 2, no two alike
   * @param start parameters to begin with
   */
  static Surrogate of(List<double[]> places, double[] values, double[] start) {
    int d = places.get(0).length;
    double[] low = new double[d + 1];
    double[] high = new double[d + 1];
    for (int i = 0; i <= d; i++) {
      low[i] = i < d ? SCALE[0] : NOISE[0];
      high[i] = i < d ? SCALE[2] : NOISE[2];
    }
    double[] best = start;
    double least = unlikelihood(places, values, start);
    try {
      var found =
          new BOBYQAOptimizer(2 * d + 3, 1, 1e-2)
              .optimize(
                  new MaxEval(MOST_STEPS + 10 * d),
                  new ObjectiveFunction(p -> unlikelihood(places, values, p)),
                  GoalType.MINIMIZE,
                  new InitialGuess(start),
                  new SimpleBounds(low, high));
      if (found.getValue() < least) {
        best = found.getPoint();
      }
    } catch (MathIllegalStateException e) {
      // the steps are used up; what it began with serves
      return new Surrogate(places, values, best);
    }
    return new Surrogate(places, values, best);
  }

  /** Parameters to begin with in so many coordinates. */
  static double[] usual(int coordinates) {
    double[] parameters = new double[coordinates + 1];
    for (int i = 0; i < coordinates; i++) {
      parameters[i] = SCALE[1];
    }
    parameters[coordinates] = NOISE[1];
    return parameters;
  }

  /** The same process with more places, its parameters kept. */
  static Surrogate with(List<double[]> places, double[] values, double[] parameters) {
    return new Surrogate(places, values, parameters);
  }

  double[] parameters() {
    return parameters.clone();
  }

  /** Value and its standard deviation at a place, the noise of a value left out. */
  double[] at(double[] place) {
    int n = places.size();
    RealVector k = new ArrayRealVector(n);
    for (int i = 0; i < n; i++) {
      k.setEntry(i, kernel(place, places.get(i), parameters));
    }
    double value = mean + k.dotProduct(weights);
    double rest = 1 - k.dotProduct(correlation.getSolver().solve(k));
    return new double[] {value, Math.sqrt(variance * Math.max(0, rest))};
  }

  private static double unlikelihood(List<double[]> places, double[] values, double[] parameters) {
    try {
      Surrogate s = new Surrogate(places, values, parameters);
      double determinant = 0;
      RealMatrix l = s.correlation.getL();
      for (int i = 0; i < values.length; i++) {
        determinant += 2 * Math.log(l.getEntry(i, i));
      }
      return values.length * Math.log(s.variance) + determinant;
    } catch (MathIllegalArgumentException e) {
      return 1e9;
    }
  }

  private static RealMatrix matrix(List<double[]> places, double[] parameters) {
    int n = places.size();
    double noise = Math.exp(parameters[parameters.length - 1]);
    RealMatrix k = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        double value = kernel(places.get(i), places.get(j), parameters);
        k.setEntry(i, j, value);
        k.setEntry(j, i, value);
      }
      k.setEntry(i, i, 1 + noise);
    }
    return k;
  }

  private static double kernel(double[] a, double[] b, double[] parameters) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      double t = (a[i] - b[i]) / Math.exp(parameters[i]);
      sum += t * t;
    }
    double r = Math.sqrt(5 * sum);
    return (1 + r + r * r / 3) * Math.exp(-r);
  }

  /** Places and values with one more. */
  static List<double[]> and(List<double[]> places, double[] place) {
    List<double[]> more = new ArrayList<>(places);
    more.add(place);
    return more;
  }
}
