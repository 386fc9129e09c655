package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.refine.GridValues;
import hemline.solver.refine.ModelResidual;
import hemline.solver.refine.ThreeGrid;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Figures of one case over those of another, grid by grid; where both have a model band, the ratio
 * has that of ratios, see {@link ModelResidual}.
 */
final class CaseRatio {
  private CaseRatio() {}

  /** Lays the ratios of two solved cases beside their references. */
  static CaseResult of(ReferenceCase one, CaseResult upper, CaseResult lower) {
    SolveStatus status = upper.status() == SolveStatus.CONVERGED ? lower.status() : upper.status();
    List<CheckRow> rows = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      Measured a = measured(upper, expected.quantity());
      Measured b = measured(lower, expected.quantity());
      rows.add(
          new CheckRow(
              one.name(),
              status,
              a == null || b == null ? null : ratio(upper.closure(), a, b),
              expected));
    }
    return new CaseResult(
        one, status, upper.closure(), upper.gapReynolds(), upper.groundRatio(), rows, List.of());
  }

  private static @Nullable Measured measured(CaseResult result, String quantity) {
    for (CheckRow row : result.rows()) {
      if (row.expected().quantity().equals(quantity)) {
        return row.measured();
      }
    }
    return null;
  }

  private static @Nullable Measured ratio(String closure, Measured a, Measured b) {
    int n = a.grids().size();
    if (n == 0 || n != b.grids().size()) {
      return null;
    }
    double[] values = new double[n];
    double[] sizes = new double[n];
    List<Measured.GridPoint> points = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      values[k] = a.grids().get(k).value() / b.grids().get(k).value();
      sizes[k] = 1 / Math.sqrt(a.grids().get(k).cells());
      points.add(new Measured.GridPoint(a.grids().get(k).cells(), values[k]));
    }
    double noise =
        Math.hypot(
            a.estimate().iteration() / a.estimate().value(),
            b.estimate().iteration() / b.estimate().value());
    double[] iteration = new double[n];
    iteration[n - 1] = Math.abs(values[n - 1]) * noise;
    Estimate estimate = ThreeGrid.estimate(new GridValues(values, sizes, iteration), 1);
    boolean modelled = a.estimate().modelHigh() > 0 && b.estimate().modelHigh() > 0;
    double model =
        modelled
            ? ModelResidual.ratio(CaseRunner.closure(closure)) * Math.abs(estimate.value())
            : 0;
    return new Measured(a.quantity(), "1", estimate, points, a.hasBand() && b.hasBand())
        .withModel(model, model);
  }
}
