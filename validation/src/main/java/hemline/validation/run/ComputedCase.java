package hemline.validation.run;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.validation.reference.ReferenceCase;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** A case whose set-up is made in code; it uses the solver as every section does. */
interface ComputedCase {

  /**
   * What came out.
   *
   * @param status how the solve ended
   * @param closure flow model; empty for a formula
   * @param gapReynolds see {@link CaseResult}
   * @param groundRatio see {@link CaseResult}
   * @param quantities by place of the expected quantities of the case; null where one is missing
   * @param profiles computed profiles beside published ones
   */
  record Outcome(
      SolveStatus status,
      String closure,
      OptionalDouble gapReynolds,
      OptionalDouble groundRatio,
      List<@Nullable Measured> quantities,
      List<ProfileCurve> profiles) {}

  /**
   * Solves it and measures what the case expects.
   *
   * @throws IllegalArgumentException when the case expects what nothing measures
   */
  Outcome solve(ReferenceCase one, CancelToken cancel, ProgressListener progress);
}
