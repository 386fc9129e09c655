package hemline.validation.run;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import java.util.List;
import java.util.OptionalDouble;

/** A case whose set-up is made in code; it uses the solver as every section does. */
interface ComputedCase {

  /**
   * What came out.
   *
   * @param status how the solve ended
   * @param closure flow model; empty for a formula
   * @param gapReynolds see {@link CaseResult}
   * @param groundRatio see {@link CaseResult}
   * @param quantities the quantities the case can measure
   */
  record Outcome(
      SolveStatus status,
      String closure,
      OptionalDouble gapReynolds,
      OptionalDouble groundRatio,
      List<Measured> quantities) {}

  /** Solves it. */
  Outcome solve(CancelToken cancel, ProgressListener progress);
}
