package hemline.solver.rig;

import hemline.shared.result.Estimate;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/** Distances of comparison errors in units of their joint uncertainty. */
final class Distance {
  /**
   * Least uncertainty of a point of its own, as a share: keeps the joint one from being singular.
   */
  private static final double LEAST = 1e-3;

  private static final int MOST_SWEEPS = 2000;

  private Distance() {}

  /** Covariance of E of the usable points. */
  static RealMatrix covariance(ComparisonModel model, Propagated all) {
    int first = model.rig().points().size();
    int n = model.usable().size();
    RealMatrix covariance = new Array2DRowRealMatrix(n, n);
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < n; b++) {
        covariance.setEntry(a, b, all.covariance(first + a, first + b));
      }
      double least = LEAST * model.predicted(model.usable().get(a)).value();
      covariance.addToEntry(a, a, least * least);
    }
    return covariance;
  }

  /**
   * Least χ² = (E − m)ᵀ V⁻¹ (E − m) over all model errors m within the bands of the prediction:
   * coordinate by coordinate, which converges because the form is convex.
   */
  static double chiSquare(ComparisonModel model, Propagated all) {
    int n = model.usable().size();
    RealMatrix weight = new CholeskyDecomposition(covariance(model, all)).getSolver().getInverse();
    double[] left = new double[n];
    for (int i = 0; i < n; i++) {
      left[i] = all.value(model.rig().points().size() + i);
    }
    double[] taken = new double[n];
    double moved = 1;
    for (int sweep = 0; sweep < MOST_SWEEPS && moved > 1e-12; sweep++) {
      moved = 0;
      for (int i = 0; i < n; i++) {
        double pull = 0;
        for (int j = 0; j < n; j++) {
          pull += weight.getEntry(i, j) * left[j];
        }
        Estimate s = model.predicted(model.usable().get(i));
        double wanted = taken[i] + pull / weight.getEntry(i, i);
        double now = Math.max(-s.modelHigh(), Math.min(s.modelLow(), wanted));
        left[i] -= now - taken[i];
        moved = Math.max(moved, Math.abs(now - taken[i]));
        taken[i] = now;
      }
    }
    ArrayRealVector v = new ArrayRealVector(left);
    return v.dotProduct(weight.operate(v));
  }
}
