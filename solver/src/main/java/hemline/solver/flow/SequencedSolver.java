package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;

/**
 * Solves one flow on a sequence of grids, each started from the one before.
 *
 * <p>Laminar flows come to the first grid by way of higher viscosities.
 */
public final class SequencedSolver {
  /** Laminar flows come to their first grid through these multiples of the viscosity. */
  private static final double[] VISCOSITY = {30, 8, 2.5};

  private static final SteadyFlowSolver.Limits ROUGH =
      new SteadyFlowSolver.Limits(0, 0, 0, 1e-1, 1, 1);

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
        // fluid then leaves through the low side at first, whichever that is: no burst of inflow
        Arrays.fill(start.p, Math.max(0, outletPressure));
        start.inletFlow = inletFlow;
        if (problem.closure() == Closure.LAMINAR) {
          thin(problem, start, cancel);
        }
      } else {
        start = StateTransfer.transfer(last, state, problem);
      }
      FlowSolution solution = new SteadyFlowSolver(problem, start, limits, cancel).solve();
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

  /** Brings a flow at rest to one of lower and lower viscosity, by a few Newton steps each. */
  private static void thin(FlowProblem problem, FlowState state, CancelToken cancel) {
    for (double multiple : VISCOSITY) {
      if (cancel.isCancelled()) {
        return;
      }
      new SteadyFlowSolver(
              problem.withViscosity(multiple * problem.viscosity()), state, ROUGH, cancel)
          .approach();
    }
  }

  private static FlowState rest(FlowProblem problem) {
    var mesh = problem.geometry().mesh;
    return new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
  }
}
