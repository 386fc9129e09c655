package hemline.validation.bench;

import hemline.shared.result.SolveStatus;

/**
 * Work on one grid, started from the flow on the grid before it.
 *
 * @param cells fluid cells of this grid
 * @param status how the solve ended
 * @param passes iterations spent on this grid: passes of the segregated iteration, or Newton steps
 * @param cellPasses cells times passes, summed from the coarsest grid to this one
 */
public record GridWork(int cells, SolveStatus status, int passes, long cellPasses) {

  /** Work in passes over this grid: {@link #cellPasses} over {@link #cells}. */
  public double units() {
    return (double) cellPasses / cells;
  }
}
