package hemline.validation.bench;

import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
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
 * @param lip file name of the lip without its ending
 * @param suction Pa
 * @param closure flow model used
 * @param grid place in the family, 1 the coarsest
 * @param cells fluid cells of this grid
 * @param status how the solve ended
 * @param passes iterations spent on this grid: passes of the segregated iteration, or Newton steps
 * @param linearIterations spent within them: cycles of the pressure multigrid, or Krylov steps
 * @param cellPasses cells times passes, summed from the coarsest grid to this one
 */
public record GridCount(
    String lip,
    double suction,
    Closure closure,
    int grid,
    int cells,
    SolveStatus status,
    int passes,
    int linearIterations,
    long cellPasses) {

  /** Work in passes over this grid: {@link #cellPasses} over {@link #cells}. */
  public double workUnits() {
    return (double) cellPasses / cells;
  }

  /** Name by which rows of two tables are matched. */
  public String name() {
    return "%s at %.0f Pa, grid %d".formatted(lip, suction, grid);
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
              one.lip(),
              one.section().suction(),
              family.closure(),
              rows.size() + 1,
              run.cells(),
              run.status(),
              run.iterations(),
              flow.outcome().linearIterations(),
              cellPasses));
    }
    return rows;
  }
}
