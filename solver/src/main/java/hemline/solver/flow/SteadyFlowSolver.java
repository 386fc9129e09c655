package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;

/**
 * Iterates a flow problem until residuals and figure have settled, or says why they have not.
 *
 * <p>Converged: over the closing window the drive's figure moves by less than {@link
 * Limits#figureWindow}, its operating point is met to {@link Limits#drive}, and the momentum
 * residual is below {@link Limits#momentum}. Otherwise, when the budget is spent, the mean flow
 * over the last cycles is taken and the outcome is unsteady.
 */
public final class SteadyFlowSolver {

  /**
   * When to stop.
   *
   * @param most most iterations
   * @param window iterations over which the figure must stand still
   * @param figureWindow largest relative spread of the figure in the window
   * @param momentum largest momentum residual, over gap times reference pressure
   * @param drive largest relative miss of the operating point
   * @param average last iterations over which a flow that does not settle is averaged
   */
  public record Limits(
      int most, int window, double figureWindow, double momentum, double drive, int average) {
    public static final Limits DEFAULT = new Limits(1500, 50, 5e-4, 1e-3, 5e-4, 500);
  }

  /**
   * How a solve ended.
   *
   * @param status converged, unsteady, failed or cancelled
   * @param iterations spent
   * @param momentumResidual of the last state
   * @param massResidual largest cell defect after closing, over gap times velocity
   * @param figure mean of the monitored figure over the closing window
   * @param halfSpread half the spread of the figure over the closing window
   */
  public record Outcome(
      SolveStatus status,
      int iterations,
      double momentumResidual,
      double massResidual,
      double figure,
      double halfSpread) {
    Outcome withIterations(int all) {
      return new Outcome(status, all, momentumResidual, massResidual, figure, halfSpread);
    }
  }

  private final FlowProblem problem;
  private final FlowState state;
  private final FlowIteration iteration;
  private final Limits limits;

  /**
   * Prepares a solve.
   *
   * @param problem what to solve
   * @param state start; becomes the answer
   * @param limits when to stop
   */
  public SteadyFlowSolver(FlowProblem problem, FlowState state, Limits limits) {
    this.problem = problem;
    this.state = state;
    this.limits = limits;
    iteration = new FlowIteration(problem, state);
  }

  /**
   * Runs to an end.
   *
   * @param settings relaxation
   * @param cancel looked at in every iteration
   */
  public FlowSolution solve(IterationSettings settings, CancelToken cancel) {
    iteration.initialiseClosure();
    MeanState mean = new MeanState(state);
    double[] figures = new double[limits.most()];
    int done = 0;
    SolveStatus status = SolveStatus.UNSTEADY;
    int averageFrom = limits.most() - limits.average();
    while (done < limits.most()) {
      if (cancel.isCancelled()) {
        status = SolveStatus.CANCELLED;
        break;
      }
      iteration.step(settings);
      figures[done++] = problem.drive().monitor(state);
      problem.drive().adjust(state, done);
      if (done > averageFrom) {
        mean.add(state);
      }
      if (!Double.isFinite(figures[done - 1] + iteration.momentumResidual())
          || iteration.momentumResidual() > 1e8) {
        status = SolveStatus.FAILED;
        break;
      }
      if (done >= limits.window() && settled(figures, done)) {
        status = SolveStatus.CONVERGED;
        break;
      }
    }
    int window = Math.min(done, limits.window());
    if (status == SolveStatus.UNSTEADY) {
      window = Math.min(done, limits.average());
      mean.putInto(state);
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (int i = done - window; i < done; i++) {
      low = Math.min(low, figures[i]);
      high = Math.max(high, figures[i]);
      sum += figures[i];
    }
    FlowProblem.Scales scales = problem.scales();
    double mass = Double.MAX_VALUE;
    if (status != SolveStatus.FAILED) {
      mass = iteration.finish() / (scales.length() * scales.velocity());
    }
    return iteration.solution(
        new Outcome(
            status,
            done,
            Math.min(Double.MAX_VALUE, iteration.momentumResidual()),
            mass,
            sum / Math.max(1, window),
            window == 0 ? 0 : 0.5 * (high - low)));
  }

  private boolean settled(double[] figures, int done) {
    if (iteration.momentumResidual() > limits.momentum()
        || Math.abs(problem.drive().miss(state)) > limits.drive()) {
      return false;
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = done - limits.window(); i < done; i++) {
      low = Math.min(low, figures[i]);
      high = Math.max(high, figures[i]);
    }
    double size = Math.max(Math.abs(low), Math.abs(high));
    return high - low <= limits.figureWindow() * size;
  }
}
