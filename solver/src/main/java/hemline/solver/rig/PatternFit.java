package hemline.solver.rig;

import hemline.shared.result.Estimate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.Pair;
import org.jspecify.annotations.Nullable;

/**
 * Fits faults to the comparison errors of a rig.
 *
 * <p>Faults of sizes s are taken off the readings and the comparison errors E(s) are weighed by
 * their joint covariance V, that of the stated instruments and the prediction:
 *
 * <pre>  χ²(s) = E(s)ᵀ V⁻¹ E(s),  −2 ln L = χ² + const</pre>
 *
 * <p>(least squares by Levenberg and Marquardt). So what lies within the stated accuracies is no
 * fault. The prediction's model band counts as common to all points, with half as much again that
 * tilts with ln h (judged, no source).
 */
final class PatternFit {
  private static final double TILT = 0.5;
  private static final int MOST_STEPS = 200;

  /** Step of slopes, in units of the scale of a fault. */
  private static final double STEP = 1e-4;

  private static final double SINGULAR = 1e-12;

  private final ComparisonModel model;
  private final RealMatrix whitener;

  /**
   * Fits with the uncertainties of the readings as they stand.
   *
   * @param model of the rig
   */
  PatternFit(ComparisonModel model) {
    this(model, FaultSizes.NONE);
  }

  private PatternFit(ComparisonModel model, FaultSizes off) {
    this.model = model;
    Propagated all = Propagation.of(model.inputs(), x -> model.outputs(x, off));
    RealMatrix covariance = Distance.covariance(model, all);
    addModel(covariance);
    whitener = MatrixUtils.inverse(new CholeskyDecomposition(covariance).getL());
  }

  /** χ² with no fault at all. */
  double without() {
    double norm = whitened(FaultSizes.NONE).getNorm();
    return norm * norm;
  }

  /**
   * Fits faults together.
   *
   * @return each with what all of them leave, weights 0; null where one comes out with a size that
   *     has no meaning, or the points do not tell the sizes
   */
  @Nullable List<FaultFit> of(List<Fault> faults) {
    try {
      return fitted(faults);
    } catch (MathIllegalStateException | SingularMatrixException e) {
      return null;
    }
  }

  private @Nullable List<FaultFit> fitted(List<Fault> faults) {
    double[] units = faults.stream().mapToDouble(model.rig()::scale).toArray();
    LeastSquaresOptimizer.Optimum optimum =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(new double[faults.size()])
                    .target(new double[model.usable().size()])
                    .model(point -> at(faults, units, point))
                    .lazyEvaluation(false)
                    .maxEvaluations(MOST_STEPS)
                    .maxIterations(MOST_STEPS)
                    .build());
    double left = optimum.getResiduals().getNorm();
    double wide = Propagated.factor(Double.POSITIVE_INFINITY, ComparisonStudy.PROBABILITY);
    RealVector unsure = optimum.getSigma(SINGULAR);
    List<FaultFit> fits = new ArrayList<>();
    for (int i = 0; i < units.length; i++) {
      double size = units[i] * optimum.getPoint().getEntry(i);
      Fault fault = faults.get(i);
      if (fault.oneSided() && size < 0) {
        return null;
      }
      fits.add(new FaultFit(fault, size, wide * units[i] * unsure.getEntry(i), left * left, 0));
    }
    return fits;
  }

  /**
   * Sizes anew with the uncertainties that the readings have once the faults are taken off: a gap
   * that is a fifth smaller than set is known a fifth worse. What is left stays that of the
   * readings as they stand, so that it compares.
   */
  List<FaultFit> refined(List<FaultFit> fits) {
    List<Fault> faults = fits.stream().map(FaultFit::fault).toList();
    double[] sizes = fits.stream().mapToDouble(FaultFit::size).toArray();
    List<FaultFit> anew = new PatternFit(model, FaultSizes.of(faults, sizes)).of(faults);
    if (anew == null) {
      return fits;
    }
    List<FaultFit> refined = new ArrayList<>();
    for (int i = 0; i < sizes.length; i++) {
      FaultFit f = fits.get(i);
      FaultFit now = anew.get(i);
      refined.add(
          new FaultFit(f.fault(), now.size(), now.uncertainty(), f.chiSquare(), f.weight()));
    }
    return refined;
  }

  /** E with faults taken off, in units of the joint uncertainty: L⁻¹ E, V = L Lᵀ. */
  private RealVector whitened(FaultSizes faults) {
    return whitener.operate(new ArrayRealVector(model.errors(faults)));
  }

  private Pair<RealVector, RealMatrix> at(
      List<Fault> faults, double[] units, RealVector parameters) {
    double[] sizes = parameters.toArray();
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] *= units[i];
    }
    RealMatrix slope = new Array2DRowRealMatrix(model.usable().size(), sizes.length);
    for (int i = 0; i < sizes.length; i++) {
      double[] moved = sizes.clone();
      moved[i] = sizes[i] + STEP * units[i];
      RealVector above = whitened(FaultSizes.of(faults, moved));
      moved[i] = sizes[i] - STEP * units[i];
      RealVector below = whitened(FaultSizes.of(faults, moved));
      slope.setColumnVector(i, above.subtract(below).mapDivide(2 * STEP));
    }
    return new Pair<>(whitened(FaultSizes.of(faults, sizes)), slope);
  }

  /** Adds what the flow model leaves open. */
  private void addModel(RealMatrix covariance) {
    int n = model.usable().size();
    double[] common = new double[n];
    double[] tilted = new double[n];
    double middle = 0;
    for (int k : model.usable()) {
      middle += Math.log(model.rig().points().get(k).gap()) / n;
    }
    double reach = 0;
    for (int k : model.usable()) {
      reach = Math.max(reach, Math.abs(Math.log(model.rig().points().get(k).gap()) - middle));
    }
    for (int i = 0; i < n; i++) {
      int k = model.usable().get(i);
      Estimate s = model.predicted(k);
      common[i] = 0.5 * s.model();
      double off = Math.log(model.rig().points().get(k).gap()) - middle;
      tilted[i] = reach > 0 ? TILT * common[i] * off / reach : 0;
    }
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < n; b++) {
        covariance.addToEntry(a, b, common[a] * common[b] + tilted[a] * tilted[b]);
      }
    }
  }
}
