package hemline.validation.bench;

import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.SectionSetup;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.SteadyFlowSolver;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntFunction;

/**
 * Solves one section on a long family of similar grids, each started from the one before, and times
 * each grid.
 *
 * <p>The grids share the design of the medium mesh, with more cells for each base cell. Every grid
 * runs to the solver's normal end: figure window and residual, or the end of its attempts.
 */
final class GrowthRun {
  /** Cells wanted. The first is there only so that the next has something to start from. */
  private static final int[] WANTED = {
    1_800, 5_000, 10_000, 20_000, 40_000, 80_000, 160_000, 300_000
  };

  private final List<GrowthRow> rows = new ArrayList<>();
  private final BenchSection one;
  private final Closure closure;
  private final Consumer<String> progress;

  /** Running clock of the grid being solved; started anew when its problem is ready. */
  private CpuClock clock = CpuClock.start();

  private final List<Double> seconds = new ArrayList<>();

  /**
   * Prepares a run.
   *
   * @param one section
   * @param closure flow model, not AUTO
   * @param progress hears a line for each grid
   */
  GrowthRun(BenchSection one, Closure closure, Consumer<String> progress) {
    this.one = one;
    this.closure = closure;
    this.progress = progress;
  }

  /**
   * Runs the family.
   *
   * @param largest no grid is wanted beyond this many cells
   * @return a row for each grid; the first had a cold start
   */
  List<GrowthRow> run(int largest) {
    SealSection section = one.section();
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = GridDesign.of(setup.domain(), section.gap(), MeshLevel.MEDIUM);
    int[] multipliers = multipliers(setup, design, largest);
    IntFunction<FlowProblem> problems =
        g -> {
          FlowProblem problem = setup.problem(design.lines(multipliers[g]), closure);
          clock = CpuClock.start();
          return problem;
        };
    List<FlowSolution> flows =
        SequencedSolver.solve(
            problems,
            multipliers.length,
            -section.suction() / section.fluid().density(),
            0,
            SteadyFlowSolver.Limits.DEFAULT,
            new CancelToken(),
            (done, what) -> {
              seconds.add(clock.seconds());
              progress.accept(
                  "%s, %d of %d: %.2f s"
                      .formatted(
                          what,
                          seconds.size(),
                          multipliers.length,
                          seconds.get(seconds.size() - 1)));
            });
    long cellPasses = 0;
    double all = 0;
    for (int g = 0; g < flows.size(); g++) {
      SteadyFlowSolver.Outcome outcome = flows.get(g).outcome();
      int cells = flows.get(g).problem().geometry().mesh.cells;
      cellPasses += (long) cells * outcome.iterations();
      all += seconds.get(g);
      rows.add(
          new GrowthRow(
              one.lip(),
              section.suction(),
              closure,
              cells,
              outcome.status(),
              outcome.iterations(),
              seconds.get(g),
              cellPasses,
              all,
              outcome.figure(),
              outcome.momentumResidual()));
    }
    return rows;
  }

  /** Cells for each base cell that come closest to the wanted cell counts. */
  private int[] multipliers(SectionSetup setup, GridDesign design, int largest) {
    Mesh coarse = setup.problem(design.lines(2), Closure.LAMINAR).geometry().mesh;
    double base = coarse.cells / 4.0;
    return java.util.Arrays.stream(WANTED)
        .filter(wanted -> wanted <= largest)
        .map(wanted -> (int) Math.rint(Math.sqrt(wanted / base)))
        .distinct()
        .toArray();
  }
}
