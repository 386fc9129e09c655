package hemline.solver.study;

import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;

/**
 * How sections are solved.
 *
 * @param level finest grid of the family
 * @param closure flow model
 * @param modelSpread true to solve the second turbulence model on all grids, not on the coarsest
 *     alone, and to compare also where a closure is named
 * @param threads solves running at once, 1 or more; results do not depend on it
 */
public record RunOptions(MeshLevel level, Closure closure, boolean modelSpread, int threads) {
  public static final RunOptions DEFAULT =
      new RunOptions(
          MeshLevel.MEDIUM, Closure.AUTO, false, Runtime.getRuntime().availableProcessors());
}
