package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.shared.result.Termination;

/**
 * How a solve ended.
 *
 * @param status converged, unsteady or failed
 * @param iterations spent
 * @param linearIterations spent within them: cycles of the pressure multigrid, Krylov steps
 * @param momentumResidual of the last state
 * @param massResidual largest cell defect after closing, over gap times velocity
 * @param figure mean of the monitored figure over the closing window
 * @param halfSpread half the spread of the figure over the closing window
 * @param termination last attempt and why it stopped
 */
public record SolveOutcome(
    SolveStatus status,
    int iterations,
    int linearIterations,
    double momentumResidual,
    double massResidual,
    double figure,
    double halfSpread,
    Termination termination) {

  /** What was spent. */
  Effort effort() {
    return new Effort(iterations, linearIterations);
  }

  /** The same with the work of earlier attempts added. */
  SolveOutcome after(Effort earlier) {
    Effort all = earlier.plus(effort());
    return new SolveOutcome(
        status,
        all.iterations(),
        all.linearIterations(),
        momentumResidual,
        massResidual,
        figure,
        halfSpread,
        termination);
  }
}
