package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;
import hemline.solver.turbulence.EddyViscosity;

/**
 * One pass of the segregated iteration: turbulence, momentum, mass.
 *
 * <p>SIMPLEC on a collocated mesh (van Doormaal & Raithby 1984). The object owns all work arrays; a
 * pass allocates nothing.
 */
final class FlowIteration {
  private final FlowProblem problem;
  private final FlowState state;
  private final VelocityGradients gradients;
  private final PressureField pressure;
  private final Momentum momentum;
  private final PressureCorrection correction;
  private final EddyViscosity closure;
  private double momentumResidual = Double.POSITIVE_INFINITY;
  private double massResidual = Double.POSITIVE_INFINITY;

  FlowIteration(FlowProblem problem, FlowState state) {
    this.problem = problem;
    this.state = state;
    gradients = new VelocityGradients(problem.geometry(), problem.boundary(), problem.spanwise());
    pressure = new PressureField(problem.geometry(), problem.boundary());
    closure = Closures.of(problem);
    momentum = new Momentum(problem, closure.wallViscosity());
    correction = new PressureCorrection(problem);
    correction.openPressures(state, pressure);
  }

  /** Starts the closure's fields where the state has none. */
  void initialiseClosure() {
    closure.initialise(state);
  }

  /**
   * One pass.
   *
   * @param settings relaxation
   */
  void step(IterationSettings settings) {
    double alpha = settings.velocityFactor();
    gradients.update(state);
    closure.update(state, gradients, settings.closureFactor());
    correction.openPressures(state, pressure);
    pressure.update(state.p);
    correction.remember(state, gradients);
    momentum.assemble(state, gradients, pressure);
    FlowProblem.Scales scales = problem.scales();
    momentumResidual = momentum.residual(state) / (scales.length() * scales.pressure());
    correction.coefficients(momentum, alpha);
    momentum.solve(state, alpha, settings.momentumSweeps());
    massResidual =
        correction.apply(
                state,
                gradients,
                pressure,
                alpha,
                settings.pressureFactor(),
                settings.pressureReduction())
            / (scales.length() * scales.velocity());
  }

  /** Closes mass to round-off and brings gradients and pressures up to date with the state. */
  double finish() {
    double worst = correction.closeMass(state);
    gradients.update(state);
    correction.openPressures(state, pressure);
    pressure.update(state.p);
    return worst;
  }

  /** Sum of |residual| of u and v over gap times velocity scale squared, before the last pass. */
  double momentumResidual() {
    return momentumResidual;
  }

  /** Largest mass defect of the last prediction over gap times velocity scale. */
  double massResidual() {
    return massResidual;
  }

  /** The state with wall forces and streamfunction; call after {@link #finish}. */
  FlowSolution solution(SteadyFlowSolver.Outcome outcome) {
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
