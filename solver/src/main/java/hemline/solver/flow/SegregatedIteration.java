package hemline.solver.flow;

import hemline.solver.field.FlowState;

/**
 * One pass of the segregated iteration: turbulence, momentum, mass.
 *
 * <p>SIMPLEC on a collocated mesh (van Doormaal and Raithby 1984, Numer. Heat Transfer 7, 147).
 */
final class SegregatedIteration {
  /** Eddy viscosity over velocity times gap that no flow has: about a hundredth is usual. */
  private static final double ABSURD = 1e5;

  private final FlowEquations equations;

  SegregatedIteration(FlowEquations equations) {
    this.equations = equations;
  }

  /** Does one pass. */
  void step(IterationSettings settings) {
    FlowState state = equations.state;
    double alpha = settings.velocityFactor();
    equations.gradients.update(state);
    equations.checkpoint.run();
    equations.closure.update(state, equations.gradients, settings.closureFactor());
    equations.checkpoint.run();
    equations.correction.openPressures(state, equations.pressure);
    equations.pressure.update(state.p);
    equations.correction.prediction.remember(state, equations.gradients);
    equations.momentum.assemble(state, equations.gradients, equations.pressure);
    FlowProblem.Scales scales = equations.problem.scales();
    equations.momentumResidual =
        equations.momentum.residual(state) / (scales.length() * scales.pressure());
    if (hasRunAway(state, scales)) {
      // no pressure can be found for such a flow
      equations.momentumResidual = Double.POSITIVE_INFINITY;
      return;
    }
    equations.checkpoint.run();
    equations.correction.coefficients(equations.momentum, alpha);
    equations.momentum.solve(state, alpha, settings.momentumSweeps());
    equations.checkpoint.run();
    equations.correction.apply(
        state,
        equations.gradients,
        equations.pressure,
        alpha,
        settings.pressureFactor(),
        settings.pressureReduction());
  }

  private static boolean hasRunAway(FlowState state, FlowProblem.Scales scales) {
    double most = ABSURD * scales.velocity() * scales.length();
    for (double eddy : state.eddyViscosity) {
      if (!(eddy <= most)) {
        return true;
      }
    }
    return false;
  }
}
