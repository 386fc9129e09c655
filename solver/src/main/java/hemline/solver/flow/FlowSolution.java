package hemline.solver.flow;

import hemline.solver.field.FlowState;

/**
 * A finished flow with what its figures are measured from. Read-only by agreement.
 *
 * @param problem that was solved
 * @param state the flow; mass closes to round-off
 * @param outcome how the solve ended
 * @param boundaryPressure static pressure over density on boundary faces, m²/s²
 * @param shearX force of the fluid on the wall along x, over density and per metre of span, by
 *     boundary face, m³/s²; zero where there is no wall
 * @param shearY along y
 * @param shearW along the span
 * @param streamfunction on grid corners, m²/s
 */
public record FlowSolution(
    FlowProblem problem,
    FlowState state,
    SolveOutcome outcome,
    double[] boundaryPressure,
    double[] shearX,
    double[] shearY,
    double[] shearW,
    double[] streamfunction) {

  /** The same with the work of earlier attempts added to the outcome. */
  FlowSolution after(Effort earlier) {
    return new FlowSolution(
        problem,
        state,
        outcome.after(earlier),
        boundaryPressure,
        shearX,
        shearY,
        shearW,
        streamfunction);
  }

  /**
   * The fields in physical units.
   *
   * @param density kg/m³
   * @param referencePressure taken off the pressure, over density
   */
  public FlowField field(double density, double referencePressure) {
    double[] p = new double[state.p.length];
    for (int c = 0; c < p.length; c++) {
      p[c] = density * (state.p[c] - referencePressure);
    }
    return new FlowField(
        problem.geometry().mesh,
        state.u,
        state.v,
        state.w,
        p,
        state.eddyViscosity,
        new FlowField.Flux(state.flux, state.boundaryFlux),
        streamfunction);
  }
}
