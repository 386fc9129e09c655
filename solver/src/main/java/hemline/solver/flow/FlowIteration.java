package hemline.solver.flow;

import hemline.solver.scheme.VelocityGradients;
import hemline.solver.field.FlowState;
import hemline.solver.turbulence.EddyViscosity;

/**
 * One pass of the segregated iteration: turbulence, momentum, mass.
 *
 * <p>SIMPLEC on a collocated mesh (van Doormaal & Raithby 1984). The object owns all work arrays;
 * a pass allocates nothing.
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

  VelocityGradients gradients() {
    return gradients;
  }

  PressureField pressure() {
    return pressure;
  }

  EddyViscosity closure() {
    return closure;
  }
}
