package hemline.validation.run;

import hemline.shared.result.SolveStatus;
import hemline.validation.reference.ReferenceCase;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A case that was run.
 *
 * @param one the case
 * @param status how the solve ended
 * @param closure flow model used; empty for a formula
 * @param gapReynolds leak flow, or half the wall speed times the gap, over viscosity; empty where
 *     it means nothing
 * @param groundRatio ground speed over the mean speed through the gap, positive with the leak;
 *     empty where it means nothing
 * @param rows one for each expected quantity, in their order
 * @param profiles computed profiles beside published ones
 */
public record CaseResult(
    ReferenceCase one,
    SolveStatus status,
    String closure,
    OptionalDouble gapReynolds,
    OptionalDouble groundRatio,
    List<CheckRow> rows,
    List<ProfileCurve> profiles) {
  public CaseResult {
    rows = List.copyOf(rows);
    profiles = List.copyOf(profiles);
  }

  /** True when no row fails. */
  public boolean ok() {
    return rows.stream().noneMatch(row -> row.verdict() == CheckRow.Verdict.FAIL);
  }
}
