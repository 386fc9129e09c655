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
 * difference (generalized least squares, Aitken 1935, Proc. R. Soc. Edinburgh 55, 42). It is a
 * factor alone; an offset comes to it only where the predictions differ enough to tell the two
 * apart and it reaches twice its standard uncertainty.
 */
public final class CalibrationFit {
  private static final int FEWEST_FOR_OFFSET = 4;

  /** Range of the predictions over their mean from which on an offset can be told. */
  private static final double RANGE_FOR_OFFSET = 0.08;

  /** Standard uncertainties that an offset must reach to count. */
  private static final double SIGNIFICANT = 2;

  /** Factors beyond these are faults of a rig or of a lip file, no calibration (judged). */
  private static final double LEAST_FACTOR = 0.5;

  private static final double MOST_FACTOR = 2;

  private CalibrationFit() {}

  /**
   * The calibration that a rig teaches.
   *
   * @return null where no point has a prediction, no flow was read, or the factor lies beyond 0.5
   *     to 2
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
    RealMatrix weight =
        new CholeskyDecomposition(Distance.covariance(model, all)).getSolver().getInverse();
    boolean two = n >= FEWEST_FOR_OFFSET && high - low > RANGE_FOR_OFFSET * mean;
    Calibration.Line line = line(s, d, weight, two);
    if (two && Math.abs(line.offset()) <= SIGNIFICANT * line.offsetUncertainty()) {
      line = line(s, d, weight, false);
    }
    if (!(line.factor() >= LEAST_FACTOR && line.factor() <= MOST_FACTOR)) {
      return null;
    }
    List<RigPoint> points = model.usable().stream().map(k -> model.rig().points().get(k)).toList();
    return new Calibration(
        lip.name(),
        Calibrations.outline(lip),
        rig.name(),
        rig.invented(),
        n,
        line,
        new Calibration.Range(
            points.stream().mapToDouble(RigPoint::gap).min().orElseThrow(),
            points.stream().mapToDouble(RigPoint::gap).max().orElseThrow(),
            points.stream().mapToDouble(RigPoint::suction).min().orElseThrow(),
            points.stream().mapToDouble(RigPoint::suction).max().orElseThrow()));
  }

  /** A fitted line; offset, its uncertainty and correlation are 0 where it is a factor alone. */
  private static Calibration.Line line(double[] s, double[] d, RealMatrix weight, boolean two) {
    RealMatrix design = new Array2DRowRealMatrix(s.length, two ? 2 : 1);
    for (int i = 0; i < s.length; i++) {
      design.setEntry(i, 0, s[i]);
      if (two) {
        design.setEntry(i, 1, 1);
      }
    }
    RealMatrix covariance =
        MatrixUtils.inverse(design.transpose().multiply(weight).multiply(design));
    RealVector found =
        covariance.operate(design.transpose().operate(weight.operate(new ArrayRealVector(d))));
    RealVector left = new ArrayRealVector(d).subtract(design.operate(found));
    int free = s.length - (two ? 2 : 1);
    double rest = free > 0 ? left.getNorm() / Math.sqrt(free) : 0;
    double uf = Math.sqrt(covariance.getEntry(0, 0));
    if (!two) {
      return new Calibration.Line(found.getEntry(0), uf, 0, 0, 0, rest);
    }
    double uo = Math.sqrt(covariance.getEntry(1, 1));
    double correlation = covariance.getEntry(0, 1) / (uf * uo);
    return new Calibration.Line(
        found.getEntry(0), uf, found.getEntry(1), uo, Math.max(-1, Math.min(1, correlation)), rest);
  }
}
