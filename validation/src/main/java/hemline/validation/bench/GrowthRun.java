package hemline.validation.bench;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SectionSetup;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.SolveOutcome;
import hemline.solver.flow.SolvedSection;
import hemline.solver.flow.SteadyFlowSolver;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Solves one section on a long family of similar grids, each started from the one before, and times
 * each grid.
 *
 * <p>The grids share the design of the medium mesh, with more cells for each base cell. Every grid
 * runs to the solver's normal end: figure window and residual, or the end of its attempts. A grid
 * that does not settle is the last, because the next would start from a flow that is none.
 */
final class GrowthRun {
  /** Cells wanted. The first is there only so that the next has something to start from. */
  private static final int[] WANTED = {
    1_800, 5_000, 10_000, 20_000, 40_000, 80_000, 160_000, 300_000
  };

  private final BenchSection one;
  private final SectionSetup setup;
  private final GridDesign design;
  private final Closure closure;
  private final Consumer<GrowthRow> progress;

  /**
   * Prepares a run.
   *
   * @param one section
   * @param closure flow model, not AUTO
   * @param progress hears each row
   */
  GrowthRun(BenchSection one, Closure closure, Consumer<GrowthRow> progress) {
    this.one = one;
    this.closure = closure;
    this.progress = progress;
    setup = new SectionSetup(one.section());
    design = FamilySolver.design(setup, MeshLevel.MEDIUM);
  }

  /**
   * Runs the family.
   *
   * @param largest no grid is wanted beyond this many cells
   * @return a row for each grid tried; the first had a cold start
   */
  List<GrowthRow> run(int largest) {
    List<GrowthRow> rows = new ArrayList<>();
    FlowSolution flow = null;
    long cellPasses = 0;
    double all = 0;
    for (int multiplier : multipliers(largest)) {
      FlowProblem problem = setup.problem(design.lines(multiplier), closure);
      CpuClock clock = CpuClock.start();
      flow = flow == null ? cold(problem) : from(flow, problem);
      double seconds = clock.seconds();
      SolveOutcome outcome = flow.outcome();
      int cells = problem.geometry().mesh.cells;
      cellPasses += (long) cells * outcome.iterations();
      all += seconds;
      rows.add(
          new GrowthRow(
              new SolvedFlow(one.lip(), one.section().suction(), closure),
              new GridWork(cells, outcome.status(), outcome.iterations(), cellPasses),
              seconds,
              all,
              outcome.figure(),
              outcome.momentumResidual()));
      progress.accept(rows.get(rows.size() - 1));
      if (outcome.status() != SolveStatus.CONVERGED) {
        break;
      }
    }
    return rows;
  }

  private FlowSolution cold(FlowProblem problem) {
    SealSection section = one.section();
    return SequencedSolver.solve(
            g -> problem,
            1,
            -section.suction() / section.fluid().density(),
            0,
            StoppingLimits.LEAK,
            new CancelToken(),
            ProgressListener.NONE)
        .get(0);
  }

  private FlowSolution from(FlowSolution coarser, FlowProblem problem) {
    FlowState start =
        new SolvedSection(setup, coarser.problem(), coarser.state()).startOf(setup, problem);
    if (start == null) {
      throw new IllegalStateException("a section can start from its own flow on a coarser grid");
    }
    return new SteadyFlowSolver(problem, start, StoppingLimits.LEAK, new CancelToken()).solve();
  }

  /** Cells for each base cell that come closest to the wanted cell counts. */
  private int[] multipliers(int largest) {
    Mesh coarse = setup.problem(design.lines(2), Closure.LAMINAR).geometry().mesh;
    double base = coarse.cells / 4.0;
    return java.util.Arrays.stream(WANTED)
        .filter(wanted -> wanted <= largest)
        .map(wanted -> (int) Math.rint(Math.sqrt(wanted / base)))
        .distinct()
        .toArray();
  }
}
