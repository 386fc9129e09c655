package hemline.solver.refine;

import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import java.util.List;

/**
 * Solves one section on a family of grids.
 *
 * <p>Calls may run at once on several threads and share nothing: the answer depends on the
 * arguments alone, bit for bit. Numerical trouble is a status of a grid, not an exception. After
 * {@link CancelToken#cancel} a call returns within 50 ms with the grids it has finished.
 */
public interface SectionFamily {
  /** Grids of a whole family. */
  int GRIDS = 3;

  /**
   * Solves a lip section from a cold start.
   *
   * @param section the question
   * @param level finest grid of the whole family
   * @param grids how many grids of the family to solve, from the coarsest on, 1 to {@link #GRIDS}
   * @param closure flow model; {@link Closure#AUTO} is resolved inside and named in the answer
   * @param cancel asks to stop
   * @param progress share of this solve, 0 to 1
   */
  GridFamily solve(
      SealSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      CancelToken cancel,
      ProgressListener progress);

  /**
   * Solves a lip section from flows of similar ones where that helps; here from a cold start.
   *
   * @param before flows of a similar section, at most one for each flow model; may be empty
   */
  default GridFamily solve(
      SealSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      List<SolvedSection> before,
      CancelToken cancel,
      ProgressListener progress) {
    return solve(section, level, grids, closure, cancel, progress);
  }

  /** Solves a duct section from a cold start. */
  GridFamily solve(
      DuctSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      CancelToken cancel,
      ProgressListener progress);
}
