package hemline.shared.result;

/**
 * One solve on one grid of a family.
 *
 * @param cells fluid cells
 * @param iterations outer iterations spent
 * @param status how it ended
 * @param massResidual largest continuity defect over the leak flow
 * @param momentumResidual momentum residual over gap times jet speed squared
 * @param figures measured figures: last state, or mean over the last cycles when unsteady
 * @param leakSpread half the spread of the leak flow over the closing window, m²/s
 * @param termination last attempt and why it stopped
 */
public record GridRun(
    int cells,
    int iterations,
    SolveStatus status,
    double massResidual,
    double momentumResidual,
    RawFigures figures,
    double leakSpread,
    Termination termination) {

  /** A run of which no more than the status is known about its end. */
  public GridRun(
      int cells,
      int iterations,
      SolveStatus status,
      double massResidual,
      double momentumResidual,
      RawFigures figures,
      double leakSpread) {
    this(
        cells,
        iterations,
        status,
        massResidual,
        momentumResidual,
        figures,
        leakSpread,
        Termination.of(status));
  }
}
