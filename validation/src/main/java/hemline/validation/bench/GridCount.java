package hemline.validation.bench;

import hemline.shared.result.GridRun;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SolveRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What one grid of a section cost, in figures that no machine changes.
 *
 * @param flow what was solved
 * @param grid place in the family, 1 the coarsest
 * @param work spent on this grid
 * @param linearIterations spent within its passes: cycles of the pressure multigrid, or Krylov
 *     steps
 */
public record GridCount(SolvedFlow flow, int grid, GridWork work, int linearIterations) {

  /** Name by which rows of two tables are matched. */
  public String name() {
    return "%s at %.0f Pa, grid %d".formatted(flow.lip(), flow.suction(), grid);
  }

  /**
   * Solves a section on the medium mesh from a cold start and counts.
   *
   * @param one section
   * @param grids how many grids, coarsest first
   * @return a row for each grid reached
   */
  public static List<GridCount> of(BenchSection one, int grids) {
    GridFamily family =
        new FamilySolver()
            .solve(
                SolveRequest.cold(one.section(), MeshLevel.MEDIUM, grids, Closure.AUTO),
                new CancelToken(),
                ProgressListener.NONE);
    List<GridCount> rows = new ArrayList<>();
    long cellPasses = 0;
    for (GridSolution solved : family.grids()) {
      GridRun run = solved.run();
      FlowSolution flow = Objects.requireNonNull(solved.flow(), "a solved family keeps its flows");
      cellPasses += (long) run.cells() * run.iterations();
      rows.add(
          new GridCount(
              new SolvedFlow(one.lip(), one.section().suction(), family.closure()),
              rows.size() + 1,
              new GridWork(run.cells(), run.status(), run.iterations(), cellPasses),
              flow.outcome().linearIterations()));
    }
    return rows;
  }
}
