package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.Measured;
import hemline.validation.run.ProfileCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Invented answers to reference cases. */
public final class InventedChecks {
  private InventedChecks() {}

  /**
   * An answer whose values miss the references.
   *
   * @param solved false for a case that a cancel kept from being solved
   * @param miss in tolerances
   */
  public static CaseResult answer(ReferenceCase one, boolean solved, double miss) {
    SolveStatus status = solved ? SolveStatus.CONVERGED : SolveStatus.CANCELLED;
    List<CheckRow> rows = new ArrayList<>();
    List<ProfileCurve> curves = new ArrayList<>();
    if (solved) {
      one.expected().forEach(e -> rows.add(row(one, e, miss)));
      one.profiles().forEach(p -> curves.add(new ProfileCurve(p, true, "u", p.points())));
    }
    return new CaseResult(
        one, status, "laminar", OptionalDouble.of(20), OptionalDouble.of(1), rows, curves);
  }

  private static CheckRow row(ReferenceCase one, ExpectedFigure e, double miss) {
    double step =
        e.tolerance().largest() == 0 ? 0.05 * e.tolerance().scale() : e.tolerance().largest();
    double value = e.reference().value() + miss * step;
    List<Measured.GridPoint> grids = new ArrayList<>();
    for (int k = 2; k <= 4; k++) {
      grids.add(new Measured.GridPoint(400 * k * k, value + step / k / k));
    }
    Estimate estimate = new Estimate(value, 0.5 * step, 0, 0, 0, Estimate.Trend.MONOTONE);
    return new CheckRow(
        one.name(),
        SolveStatus.CONVERGED,
        new Measured(e.quantity(), "1", estimate, grids, true),
        e);
  }
}
