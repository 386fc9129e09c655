package hemline.solver.refine;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;

/**
 * Solves one section on a family of grids.
 *
 * <p>Calls may run at once on several threads and share nothing: the answer depends on the request
 * alone, bit for bit. Numerical trouble is a status of a grid, not an exception. After {@link
 * CancelToken#cancel} a call returns within 50 ms with the grids it has finished.
 */
@FunctionalInterface
public interface SectionFamily {
  /** Grids of a whole family. */
  int GRIDS = 3;

  /**
   * Solves a section.
   *
   * @param request the question
   * @param cancel asks to stop
   * @param progress share of this solve, 0 to 1
   */
  GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress);
}
