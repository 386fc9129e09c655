package hemline.validation.run;

import hemline.solver.refine.GridSolution;

/** A quantity measured on one grid. */
interface Probe {

  /** SI; not a number where the grid does not have it. */
  double of(GridSolution grid);

  /** SI unit, "1" for a pure number. */
  String unit();

  /**
   * True when the quantity is the distance to a reference rather than a value of its own, so that
   * its band says nothing about its true error.
   */
  default boolean distance() {
    return false;
  }
}
