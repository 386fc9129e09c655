package hemline.solver.rig;

import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.rig.Rig;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the usual faults of a rig by their patterns over gap and suction, each alone.
 *
 * <p>A fault of size s is taken off the readings and the comparison errors E(s) are weighed by
 * their joint covariance V, that of the stated instruments and the prediction:
 *
 * <pre>  χ²(s) = E(s)ᵀ V⁻¹ E(s),  −2 ln L = χ² + const,  AIC = χ² + 2 k</pre>
 *
 * <p>(least squares by Levenberg and Marquardt; Akaike 1974, IEEE Trans. Autom. Control 19, 716).
 * So what lies within the stated accuracies is no fault. The prediction's model band counts as
 * common to all points, with half as much again that tilts with ln h (judged, no source). Nothing
 * found here is ever applied to a result.
 */
public final class FaultStudy {
  /** Fewest points that make a pattern. */
  private static final int FEWEST = 4;

  /** χ² that a fault must explain: three standard uncertainties. */
  private static final double NEEDED = 9;

  /** χ² by which the best must lead; a likelihood ratio of e². */
  private static final double LEAD = 4;

  private static final double TILT = 0.5;
  private static final int MOST_STEPS = 200;

  private final ComparisonModel model;
  private final RealMatrix whitener;

  private FaultStudy(ComparisonModel model) {
    this.model = model;
    Propagated all = Propagation.of(model.inputs(), model::outputs);
    RealMatrix covariance = Distance.covariance(model, all);
    addModel(covariance);
    whitener = MatrixUtils.inverse(new CholeskyDecomposition(covariance).getL());
  }

  /**
   * Looks for a pattern.
   *
   * @throws InputException if a reading gives no flow
   */
  public static Diagnosis of(Rig rig, List<Prediction> predictions) throws InputException {
    return of(new ComparisonModel(rig, predictions));
  }

  static Diagnosis of(ComparisonModel model) {
    int n = model.usable().size();
    if (n < FEWEST || model.rig().relative()) {
      Diagnosis.Finding why = n < FEWEST ? Diagnosis.Finding.TOO_FEW : Diagnosis.Finding.NO_FLOW;
      return new Diagnosis(List.of(), n, Double.NaN, Double.NaN, why, null, List.of());
    }
    FaultStudy study = new FaultStudy(model);
    double without = study.whitened(null, 0).getNorm();
    without *= without;
    List<FaultFit> raw = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      raw.add(study.fit(fault, without));
    }
    return judged(raw, n, without);
  }

  /**
   * Akaike's weights and what they allow to say. Where even the best fault leaves too much, all χ²
   * count for as much less (Birge 1932, Phys. Rev. 40, 207).
   */
  private static Diagnosis judged(List<FaultFit> raw, int n, double without) {
    double fewest = raw.stream().mapToDouble(FaultFit::chiSquare).min().orElse(without);
    double excess = Math.max(1, fewest / (n - 1));
    double least = Math.min(without, fewest + 2 * excess);
    double weightWithout = Math.exp(-0.5 * (without - least) / excess);
    double sum = weightWithout;
    for (FaultFit fit : raw) {
      sum += likelihood(fit, least, excess);
    }
    weightWithout /= sum;
    List<FaultFit> fits = new ArrayList<>();
    for (FaultFit f : raw) {
      double weight = likelihood(f, least, excess) / sum;
      fits.add(new FaultFit(f.fault(), f.size(), f.uncertainty(), f.chiSquare(), weight));
    }
    fits.sort(Comparator.comparingDouble(FaultFit::chiSquare));
    FaultFit best = fits.get(0);
    double lead = LEAD * excess;
    List<FaultFit> alike =
        fits.stream()
            .filter(f -> f.chiSquare() < best.chiSquare() + lead)
            .filter(f -> f == best || without - f.chiSquare() >= NEEDED)
            .toList();
    Diagnosis.Finding finding;
    if (without - best.chiSquare() < NEEDED) {
      finding =
          without <= ComparisonStudy.chiSquareLimit(n)
              ? Diagnosis.Finding.NONE
              : Diagnosis.Finding.CANNOT_TELL;
    } else {
      finding = alike.size() == 1 ? Diagnosis.Finding.NAMED : Diagnosis.Finding.CANNOT_TELL;
    }
    boolean named = finding == Diagnosis.Finding.NAMED;
    boolean open = finding == Diagnosis.Finding.CANNOT_TELL;
    return new Diagnosis(
        fits,
        n,
        without,
        weightWithout,
        finding,
        named ? best : null,
        open && without - best.chiSquare() >= NEEDED ? alike : List.of());
  }

  private static double likelihood(FaultFit fit, double least, double excess) {
    return Math.exp(-0.5 * ((fit.chiSquare() - least) / excess + 2));
  }

  /** E with a fault taken off, in units of the joint uncertainty: L⁻¹ E, V = L Lᵀ. */
  private RealVector whitened(@Nullable Fault fault, double size) {
    return whitener.operate(new ArrayRealVector(model.errors(fault, size)));
  }

  private FaultFit fit(Fault fault, double without) {
    double unit = model.rig().scale(fault);
    LeastSquaresOptimizer.Optimum optimum =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(new double[] {0})
                    .target(new double[model.usable().size()])
                    .model(point -> at(fault, unit, point.getEntry(0)))
                    .lazyEvaluation(false)
                    .maxEvaluations(MOST_STEPS)
                    .maxIterations(MOST_STEPS)
                    .build());
    double size = unit * optimum.getPoint().getEntry(0);
    double left = optimum.getResiduals().getNorm();
    RealVector slope = optimum.getJacobian().getColumnVector(0);
    double wide = Propagated.factor(Double.POSITIVE_INFINITY, ComparisonStudy.PROBABILITY);
    double unsure = wide * unit / slope.getNorm();
    if (fault.oneSided() && size < 0) {
      return new FaultFit(fault, 0, unsure, without, 0);
    }
    return new FaultFit(fault, size, unsure, left * left, 0);
  }

  private Pair<RealVector, RealMatrix> at(Fault fault, double unit, double parameter) {
    double step = 1e-4;
    RealVector above = whitened(fault, unit * (parameter + step));
    RealVector below = whitened(fault, unit * (parameter - step));
    RealMatrix slope = new Array2DRowRealMatrix(above.getDimension(), 1);
    slope.setColumnVector(0, above.subtract(below).mapDivide(2 * step));
    return new Pair<>(whitened(fault, unit * parameter), slope);
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
