package hemline.solver.rig;

import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.rig.Rig;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Measured coefficients and comparison errors E = S − D (ASME V&V 20-2009) as one function of the
 * errors of the rig and of the prediction's grid.
 *
 * <p>Gap and suction enter both S and D, so that their errors count once, as V&V 20 asks of inputs
 * that both share. The half-width from the grid counts as two standard uncertainties; three
 * quarters of its variance are taken as common to all points and one as each point's own (judged,
 * no source), unfinished iteration as the point's own.
 */
final class ComparisonModel {
  private static final double COMMON = Math.sqrt(0.75);
  private static final double OWN = 0.5;

  private final RigModel rig;
  private final List<Prediction> predictions;
  private final ResponseSurface surface;
  private final List<Integer> usable = new ArrayList<>();
  private final List<InputQuantity> inputs;

  ComparisonModel(Rig rig, List<Prediction> predictions) throws InputException {
    this.rig = new RigModel(rig);
    this.predictions = predictions;
    if (predictions.size() != this.rig.points().size()) {
      throw new IllegalArgumentException(
          predictions.size() + " predictions for " + this.rig.points().size() + " points");
    }
    List<double[]> rows = new ArrayList<>();
    for (int k = 0; k < predictions.size(); k++) {
      Prediction p = predictions.get(k);
      if (p.discharge() != null && p.discharge().value() > 0) {
        usable.add(k);
        rows.add(new double[] {p.gap(), p.suction(), p.discharge().value()});
      }
    }
    surface = new ResponseSurface(rows);
    inputs = new ArrayList<>(this.rig.inputs());
    inputs.add(InputQuantity.normal(Source.GRID, InputQuantity.SHARED, rows.isEmpty() ? 0 : 1));
    for (int k : usable) {
      inputs.add(InputQuantity.normal(Source.GRID, k, 1));
    }
  }

  RigModel rig() {
    return rig;
  }

  /** Points with a prediction, by their number. */
  List<Integer> usable() {
    return usable;
  }

  List<InputQuantity> inputs() {
    return inputs;
  }

  /** Prediction of a usable point. */
  Estimate predicted(int point) {
    Estimate discharge = predictions.get(point).discharge();
    if (discharge == null) {
      throw new IllegalArgumentException("point " + point + " has no prediction");
    }
    return discharge;
  }

  /** D of all points, then E of the usable ones, then the mean of E / S. */
  double[] outputs(double[] x) {
    return outputs(x, FaultSizes.NONE);
  }

  /** As {@link #outputs(double[])}, with faults taken off the readings. */
  double[] outputs(double[] x, FaultSizes faults) {
    Errors errors = new Errors(Arrays.copyOf(x, rig.size()));
    double[] grid = Arrays.copyOfRange(x, rig.size(), x.length);
    List<RigModel.Reduced> reduced = scaled(rig.at(errors, faults));
    int n = reduced.size();
    double[] e = errors(reduced, grid);
    double[] out = new double[n + e.length + 1];
    for (int k = 0; k < n; k++) {
      out[k] = reduced.get(k).discharge();
    }
    double mean = 0;
    for (int i = 0; i < e.length; i++) {
      out[n + i] = e[i];
      mean += e[i] / predicted(usable.get(i)).value() / e.length;
    }
    out[n + e.length] = mean;
    return out;
  }

  /**
   * Where suction alone was read, coefficients are known up to a factor: it is taken so that they
   * agree with the prediction in the mean of their logarithms.
   */
  private List<RigModel.Reduced> scaled(List<RigModel.Reduced> reduced) {
    if (!rig.relative() || usable.isEmpty()) {
      return reduced;
    }
    double sum = 0;
    for (int k : usable) {
      RigModel.Reduced r = reduced.get(k);
      Prediction p = predictions.get(k);
      double here =
          predicted(k).value() * surface.ratio(r.gap(), r.suction(), p.gap(), p.suction());
      sum += Math.log(here / r.discharge()) / usable.size();
    }
    double factor = Math.exp(sum);
    return reduced.stream()
        .map(r -> new RigModel.Reduced(r.gap(), r.suction(), r.discharge() * factor))
        .toList();
  }

  /** E of the usable points with faults taken off the readings, all instruments exact. */
  double[] errors(FaultSizes faults) {
    Errors none = new Errors(new double[rig.size()]);
    return errors(rig.at(none, faults), new double[usable.size() + 1]);
  }

  private double[] errors(List<RigModel.Reduced> reduced, double[] grid) {
    double[] e = new double[usable.size()];
    for (int i = 0; i < e.length; i++) {
      int k = usable.get(i);
      Prediction p = predictions.get(k);
      Estimate s = predicted(k);
      RigModel.Reduced r = reduced.get(k);
      double off =
          0.5 * s.numerical() * (COMMON * grid[0] + OWN * grid[i + 1])
              + s.iteration() * 0.5 * grid[i + 1];
      double here = s.value() * surface.ratio(r.gap(), r.suction(), p.gap(), p.suction()) + off;
      e[i] = here - r.discharge();
    }
    return e;
  }
}
