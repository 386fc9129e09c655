package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;
import hemline.solver.turbulence.EddyViscosity;

/**
 * The discrete equations of one problem and the state they are evaluated at.
 *
 * <p>Owns all work arrays; nothing is allocated while iterating.
 */
final class FlowEquations {
  final FlowProblem problem;
  final FlowState state;
  final VelocityGradients gradients;
  final PressureField pressure;
  final Momentum momentum;
  final PressureCorrection correction;
  final EddyViscosity closure;
  final Runnable checkpoint;

  /** Momentum residual before the last step: Σ |u| + |v| over gap times reference pressure. */
  double momentumResidual = Double.MAX_VALUE;

  /** Krylov steps of Newton's method so far. */
  int krylovSteps;

  /**
   * Prepares the equations.
   *
   * @param problem what to solve
   * @param state start; becomes the answer
   * @param checkpoint run again and again, here and in the iterations; what it throws ends the work
   *     and leaves the state of no use
   */
  FlowEquations(FlowProblem problem, FlowState state, Runnable checkpoint) {
    this.problem = problem;
    this.state = state;
    this.checkpoint = checkpoint;
    checkpoint.run();
    gradients =
        new VelocityGradients(
            problem.geometry(), problem.boundary(), problem.momentum().spanwise());
    checkpoint.run();
    pressure = new PressureField(problem.geometry(), problem.boundary());
    checkpoint.run();
    closure = Closures.of(problem);
    checkpoint.run();
    momentum = new Momentum(problem, closure.wallViscosity(), closure.faceRatio());
    checkpoint.run();
    correction = new PressureCorrection(problem, checkpoint);
    checkpoint.run();
    closure.initialise(state);
    correction.openPressures(state, pressure);
  }

  /** Cycles of the pressure multigrid and Krylov steps so far. */
  int linearIterations() {
    return correction.cycles() + krylovSteps;
  }

  /**
   * Closes mass to round-off and brings gradients and pressures up to date with the state.
   *
   * @return largest mass defect left, m²/s
   */
  double finish() {
    double worst = correction.closeMass(state);
    gradients.update(state);
    correction.openPressures(state, pressure);
    pressure.update(state.p);
    return worst;
  }

  /** The state with wall forces and streamfunction; call after {@link #finish}. */
  FlowSolution solution(SolveOutcome outcome) {
    FaceGeometry geometry = problem.geometry();
    Mesh mesh = geometry.mesh;
    double[] wall = closure.wallViscosity();
    double[] x = new double[mesh.boundaryFaces];
    double[] y = new double[mesh.boundaryFaces];
    double[] w = new double[mesh.boundaryFaces];
    boolean laminar = problem.closure() == Closure.LAMINAR;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().kind[b] == Boundary.WALL) {
        int c = mesh.bCell[b];
        double a = wall[b] * geometry.bConductance[b];
        double du = state.u[c] - gradients.bu[b];
        double dv = state.v[c] - gradients.bv[b];
        double normal = laminar ? 0 : du * geometry.bux[b] + dv * geometry.buy[b];
        x[b] = a * (du - normal * geometry.bux[b]);
        y[b] = a * (dv - normal * geometry.buy[b]);
        w[b] = a * (state.w[c] - gradients.bw[b]);
      }
    }
    return new FlowSolution(
        problem,
        state,
        outcome,
        pressure.onBoundary.clone(),
        x,
        y,
        w,
        outcome.status() == SolveStatus.FAILED
            ? new double[(mesh.lines.nx() + 1) * (mesh.lines.ny() + 1)]
            : Streamfunction.of(mesh, state));
  }
}
