package hemline.solver.rig;

import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.rig.Rig;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * Fits D = f S + o to measured and predicted coefficients, weighed by the joint covariance of their
 * difference (generalized least squares, Aitken 1935, Proc. R. Soc. Edinburgh 55, 42). The offset
 * is fitted only where the predictions differ enough to tell it from the factor.
 */
public final class CalibrationFit {
  private static final int FEWEST_FOR_OFFSET = 4;

  /** Range of the predictions over their mean from which on an offset can be told. */
  private static final double RANGE_FOR_OFFSET = 0.08;

  private CalibrationFit() {}

  /**
   * The calibration that a rig teaches.
   *
   * @return null where no point has a prediction or no flow was read
   * @throws InputException if a reading gives no flow
   */
  public static @Nullable Calibration of(Rig rig, LipProfile lip, List<Prediction> predictions)
      throws InputException {
    ComparisonModel model = new ComparisonModel(rig, predictions);
    int n = model.usable().size();
    if (n == 0 || model.rig().relative()) {
      return null;
    }
    Propagated all = Propagation.of(model.inputs(), model::outputs);
    double[] s = new double[n];
    double[] d = new double[n];
    double mean = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (int i = 0; i < n; i++) {
      Estimate predicted = model.predicted(model.usable().get(i));
      s[i] = predicted.value();
      d[i] = all.value(model.usable().get(i));
      mean += s[i] / n;
      low = Math.min(low, s[i]);
      high = Math.max(high, s[i]);
    }
    boolean two = n >= FEWEST_FOR_OFFSET && high - low > RANGE_FOR_OFFSET * mean;
    RealMatrix design = new Array2DRowRealMatrix(n, two ? 2 : 1);
    for (int i = 0; i < n; i++) {
      design.setEntry(i, 0, s[i]);
      if (two) {
        design.setEntry(i, 1, 1);
      }
    }
    RealMatrix weight =
        new CholeskyDecomposition(Distance.covariance(model, all)).getSolver().getInverse();
    RealMatrix covariance =
        MatrixUtils.inverse(design.transpose().multiply(weight).multiply(design));
    RealVector found =
        covariance.operate(design.transpose().operate(weight.operate(new ArrayRealVector(d))));
    RealVector left = new ArrayRealVector(d).subtract(design.operate(found));
    int free = n - (two ? 2 : 1);
    double rest = free > 0 ? left.getNorm() / Math.sqrt(free) : 0;
    List<RigPoint> points = model.usable().stream().map(k -> model.rig().points().get(k)).toList();
    double uf = Math.sqrt(covariance.getEntry(0, 0));
    double uo = two ? Math.sqrt(covariance.getEntry(1, 1)) : 0;
    return new Calibration(
        lip.name(),
        Calibrations.outline(lip),
        rig.name(),
        rig.invented(),
        n,
        found.getEntry(0),
        uf,
        two ? found.getEntry(1) : 0,
        uo,
        two ? Math.max(-1, Math.min(1, covariance.getEntry(0, 1) / (uf * uo))) : 0,
        rest,
        points.stream().mapToDouble(RigPoint::gap).min().orElseThrow(),
        points.stream().mapToDouble(RigPoint::gap).max().orElseThrow(),
        points.stream().mapToDouble(RigPoint::suction).min().orElseThrow(),
        points.stream().mapToDouble(RigPoint::suction).max().orElseThrow());
  }
}
