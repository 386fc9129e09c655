package hemline.solver.flow;

import hemline.solver.linear.BlockLu;

/**
 * Solves for the spanwise velocity on a finished laminar flow, which it does not act back on.
 *
 * <p>Upwind matrix factorised once, the bounded correction iterated.
 */
final class SpanwiseTransport {
  private static final int MOST = 60;
  private static final double REDUCTION = 1e-8;

  private SpanwiseTransport() {}

  /**
   * Solves.
   *
   * @param equations with the flow's state; w is changed
   */
  static void solve(FlowEquations equations) {
    int n = equations.state.w.length;
    double[] residual = new double[n];
    BlockLu lu =
        CoupledJacobian.directSolver(equations.problem.geometry(), 1, equations.checkpoint);
    double first = 0;
    for (int i = 0; i < MOST; i++) {
      equations.checkpoint.run();
      equations.gradients.update(equations.state);
      equations.momentum.assemble(equations.state, equations.gradients, equations.pressure);
      equations.momentum.spanwiseResidual(equations.state, residual);
      if (i == 0) {
        double[] diagonal = equations.momentum.diagonal();
        double[] neighbours = equations.momentum.neighbours();
        double[] entry = new double[neighbours.length];
        for (int e = 0; e < entry.length; e++) {
          entry[e] = -neighbours[e];
        }
        if (!lu.factor(diagonal, entry)) {
          return;
        }
      }
      double norm = 0;
      for (double r : residual) {
        norm = Math.max(norm, Math.abs(r));
      }
      first = Math.max(first, norm);
      if (norm <= REDUCTION * first) {
        return;
      }
      lu.solve(residual);
      for (int c = 0; c < n; c++) {
        equations.state.w[c] += residual[c];
      }
    }
  }
}
