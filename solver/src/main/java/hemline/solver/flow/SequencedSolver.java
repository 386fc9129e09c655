package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/**
 * Solves one flow on a sequence of grids, each started from the one before.
 *
 * <p>A grid that does not settle with the first relaxation is tried again with a firmer one; when
 * that does not settle either, its mean over the last iterations is the answer, marked unsteady.
 */
public final class SequencedSolver {
  private static final List<IterationSettings> LADDER =
      List.of(
          new IterationSettings(0.8, 0.5, 0.7, 2, 1e-2),
          new IterationSettings(0.7, 0.3, 0.6, 2, 1e-2));

  private SequencedSolver() {}

  /**
   * Runs the sequence.
   *
   * @param problems problem on grid 0, 1, …, made when needed
   * @param grids number of grids
   * @param outletPressure start value over density, m²/s²
   * @param inletFlow start value, m²/s
   * @param limits when to stop on each grid
   * @param cancel stops at once
   * @param progress hears about each grid
   * @return one solution per grid reached, coarsest first; the list ends with a failed or cancelled
   *     one when there is one
   */
  public static List<FlowSolution> solve(
      IntFunction<FlowProblem> problems,
      int grids,
      double outletPressure,
      double inletFlow,
      SteadyFlowSolver.Limits limits,
      CancelToken cancel,
      ProgressListener progress) {
    List<FlowSolution> solutions = new ArrayList<>();
    FlowProblem last = null;
    FlowState state = null;
    for (int g = 0; g < grids && !cancel.isCancelled(); g++) {
      FlowProblem problem = problems.apply(g);
      FlowState start;
      if (state == null || last == null) {
        start = rest(problem);
        start.outletPressure = outletPressure;
        start.inletFlow = inletFlow;
      } else {
        start = StateTransfer.transfer(last, state, problem);
      }
      FlowSolution solution = climb(problem, start, limits, cancel);
      solutions.add(solution);
      progress.progress((g + 1.0) / grids, "grid " + (g + 1));
      SolveStatus status = solution.outcome().status();
      if (status == SolveStatus.FAILED || status == SolveStatus.CANCELLED) {
        break;
      }
      last = problem;
      state = solution.state();
    }
    return solutions;
  }

  private static FlowState rest(FlowProblem problem) {
    var mesh = problem.geometry().mesh;
    return new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
  }

  private static FlowSolution climb(
      FlowProblem problem, FlowState start, SteadyFlowSolver.Limits limits, CancelToken cancel) {
    FlowState state = rest(problem);
    FlowSolution solution = null;
    int spent = 0;
    for (IterationSettings settings : LADDER) {
      state.set(start);
      solution = new SteadyFlowSolver(problem, state, limits).solve(settings, cancel);
      spent += solution.outcome().iterations();
      SolveStatus status = solution.outcome().status();
      if (status == SolveStatus.CONVERGED || status == SolveStatus.CANCELLED) {
        break;
      }
      if (status == SolveStatus.UNSTEADY) {
        start.set(state);
      }
    }
    if (solution == null) {
      throw new IllegalStateException("the ladder is empty");
    }
    return solution.withIterations(spent);
  }
}
