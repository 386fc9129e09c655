package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Solves one flow on a sequence of grids, each started from the one before.
 *
 * <p>Laminar flows come to the first grid by way of upwind convection, whose derivative is exact in
 * the preconditioner, turbulent ones by way of higher viscosities when nothing was found without.
 */
public final class SequencedSolver {
  /** Eddy viscosity of fluid at rest, over velocity times gap. */
  private static final double THICK = 0.01;

  /** Momentum residual above which an unsteady end says that no flow was found. */
  private static final double HOPELESS = 0.1;

  /** Turbulent flows come to their first grid through these multiples of the viscosity. */
  private static final double[] THICKER = {30, 8, 2.5};

  /** Laminar flows come there by upwind convection, with these multiples. */
  private static final double[] UPWIND = {8, 1};

  private static final StoppingLimits ROUGH = new StoppingLimits(0, 0, 0, 1e-1, 1, 1);

  private SequencedSolver() {}

  /** Where the coarsest grid starts. */
  @FunctionalInterface
  public interface Start {
    /** From rest. */
    Start COLD = problem -> null;

    /**
     * Start state on the coarsest grid, null to start from rest.
     *
     * @param problem on that grid
     */
    @Nullable FlowState of(FlowProblem problem);
  }

  /** Runs the sequence from rest. */
  public static List<FlowSolution> solve(
      IntFunction<FlowProblem> problems,
      int grids,
      double outletPressure,
      double inletFlow,
      StoppingLimits limits,
      CancelToken cancel,
      ProgressListener progress) {
    return solve(problems, grids, outletPressure, inletFlow, Start.COLD, limits, cancel, progress);
  }

  /**
   * Runs the sequence.
   *
   * <p>A warm start that does not converge on a modest budget is given up for one from rest, unless
   * it is a turbulent flow of another model to compare with: then its mean is the answer. All
   * iterations are counted, also those at higher viscosities.
   *
   * @param problems problem on grid 0, 1, …, made when needed; may throw a {@link
   *     CancellationException} once cancelled
   * @param grids number of grids
   * @param outletPressure start value over density when starting from rest, m²/s²
   * @param inletFlow start value when starting from rest, m²/s
   * @param start of the coarsest grid
   * @param limits when to stop on each grid
   * @param cancel stops at once
   * @param progress hears about each grid
   * @return one solution per grid finished, coarsest first; failed grids are passed over until a
   *     flow is found, after that the list ends with the first that fails
   */
  public static List<FlowSolution> solve(
      IntFunction<FlowProblem> problems,
      int grids,
      double outletPressure,
      double inletFlow,
      Start start,
      StoppingLimits limits,
      CancelToken cancel,
      ProgressListener progress) {
    List<FlowSolution> solutions = new ArrayList<>();
    boolean found = false;
    try {
      FlowSolution last = null;
      for (int g = 0; g < grids; g++) {
        cancel.check();
        FlowProblem problem = problems.apply(g);
        cancel.check();
        if (last == null) {
          FlowState rest = rest(problem);
          rest.outletPressure = outletPressure;
          // fluid then leaves through the low side at first, whichever that is: no burst of inflow
          Arrays.fill(rest.p, Math.max(0, outletPressure));
          rest.inletFlow = inletFlow;
          last = first(problem, g == 0 ? start.of(problem) : null, rest, limits, cancel);
        } else {
          FlowState state = StateTransfer.transfer(last.problem(), last.state(), problem);
          last = new SteadyFlowSolver(problem, state, limits, cancel).refine();
        }
        solutions.add(last);
        progress.progress((g + 1.0) / grids, "grid " + (g + 1));
        if (last.outcome().status() == SolveStatus.FAILED) {
          if (found) {
            break;
          }
          // a coarse grid may have a cell that no flow survives where a finer one has none
          last = null;
        } else {
          found = true;
        }
      }
    } catch (CancellationException stopped) {
      return solutions;
    }
    return solutions;
  }

  private static FlowSolution first(
      FlowProblem problem,
      @Nullable FlowState warm,
      FlowState rest,
      StoppingLimits limits,
      CancelToken cancel) {
    Effort spent = Effort.NONE;
    if (warm != null) {
      boolean other = foreign(problem.closure(), warm);
      SteadyFlowSolver solver = new SteadyFlowSolver(problem, warm, limits, cancel);
      FlowSolution solution = other ? solver.compare() : solver.attempt();
      SolveStatus status = solution.outcome().status();
      if (status == SolveStatus.CONVERGED || other && status == SolveStatus.UNSTEADY) {
        return solution;
      }
      spent = solution.outcome().effort();
    }
    if (problem.closure() == Closure.LAMINAR) {
      return laminar(problem, rest, limits, cancel).after(spent);
    }
    FlowState again = new FlowState(rest.u.length, rest.flux.length, rest.boundaryFlux.length);
    again.set(rest);
    FlowSolution solution = new SteadyFlowSolver(problem, rest, limits, cancel).solve();
    SolveStatus status = solution.outcome().status();
    if (status == SolveStatus.FAILED
        || status == SolveStatus.UNSTEADY && solution.outcome().momentumResidual() > HOPELESS) {
      spent = spent.plus(solution.outcome().effort()).plus(thin(problem, again, cancel));
      solution = new SteadyFlowSolver(problem, again, limits, cancel).solve();
    }
    return solution.after(spent);
  }

  /** True for a turbulent flow under another model: it lacks what this model carries. */
  private static boolean foreign(Closure closure, FlowState s) {
    boolean turbulent = Arrays.stream(s.eddyViscosity).anyMatch(eddy -> eddy > 0);
    double[] own =
        closure == Closure.SST ? s.omega : closure == Closure.SA ? s.nuTilde : new double[0];
    return turbulent && Arrays.stream(own).noneMatch(value -> value > 0);
  }

  /** Upwind convection of thicker fluids first; where that does not settle, passes may lead on. */
  private static FlowSolution laminar(
      FlowProblem problem, FlowState state, StoppingLimits limits, CancelToken cancel) {
    Effort spent = Effort.NONE;
    for (double multiple : UPWIND) {
      FlowProblem easier = problem.upwind(multiple * problem.momentum().viscosity());
      SteadyFlowSolver thicker = new SteadyFlowSolver(easier, state, ROUGH, cancel);
      boolean settled = thicker.approach();
      spent = spent.plus(thicker.effort());
      if (!settled) {
        SteadyFlowSolver solver = new SteadyFlowSolver(problem, state, limits, cancel);
        if (solver.lead()) {
          return solver.solve().after(spent);
        }
        spent = spent.plus(solver.effort());
      }
    }
    return new SteadyFlowSolver(problem, state, limits, cancel).solve().after(spent);
  }

  /** Brings turbulent flow at rest to one of lower and lower viscosity, by some passes each. */
  private static Effort thin(FlowProblem problem, FlowState state, CancelToken cancel) {
    Effort spent = Effort.NONE;
    for (double multiple : THICKER) {
      FlowProblem easier = problem.withViscosity(multiple * problem.momentum().viscosity());
      SteadyFlowSolver solver = new SteadyFlowSolver(easier, state, ROUGH, cancel);
      solver.approach();
      spent = spent.plus(solver.effort());
    }
    return spent;
  }

  /**
   * Fluid at rest. Turbulent flows start so thick that the pressure, before there is any inertia to
   * hold it back, drives no more than about the jet's own velocity through the gap.
   */
  private static FlowState rest(FlowProblem problem) {
    var mesh = problem.geometry().mesh;
    FlowState rest = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    if (problem.closure() != Closure.LAMINAR) {
      FlowProblem.InflowTurbulence inflow = problem.turbulence().inflow();
      double thick = THICK * problem.scales().velocity() * problem.scales().length();
      double eddy = Math.max(inflow.eddyViscosity(), thick);
      Arrays.fill(rest.k, inflow.k());
      Arrays.fill(rest.omega, inflow.k() / eddy);
      Arrays.fill(rest.nuTilde, eddy);
      Arrays.fill(rest.eddyViscosity, eddy);
    }
    return rest;
  }
}
