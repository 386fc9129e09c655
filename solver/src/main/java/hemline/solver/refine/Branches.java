package hemline.solver.refine;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tells when a finest grid may hold two flows, and whether a second start found another.
 *
 * <p>Each grid starts from the coarser one, which can carry a flow upwards that a finer grid alone
 * would not take, such as one that stays on a round nose. Where the leaks of the grids lie further
 * apart than their error explains, the finest is therefore solved from fluid at rest as well.
 */
final class Branches {
  /** Leaks of the two finest grids further apart than this share ask for a second start. */
  private static final double DISAGREE = 0.03;

  /** Leaks on one grid further apart than this share are two flows. */
  private static final double APART = 0.02;

  private Branches() {}

  /** True when a whole family's leaks differ so much that a second start is worth its cost. */
  static boolean disagree(List<GridRun> runs) {
    if (runs.size() < SectionFamily.GRIDS || runs.stream().anyMatch(run -> !usable(run))) {
      return false;
    }
    return apart(runs.get(runs.size() - 1), runs.get(runs.size() - 2), DISAGREE);
  }

  /** The run from rest where it has settled on another flow than the finest of a family. */
  static @Nullable GridRun other(List<GridRun> runs, GridRun rest) {
    boolean another =
        rest.status() == SolveStatus.CONVERGED && apart(rest, runs.get(runs.size() - 1), APART);
    return another ? rest : null;
  }

  private static boolean usable(GridRun run) {
    return run.status() == SolveStatus.CONVERGED || run.status() == SolveStatus.UNSTEADY;
  }

  private static boolean apart(GridRun a, GridRun b, double share) {
    double leakA = leak(a);
    double leakB = leak(b);
    return Math.abs(leakA - leakB) > share * Math.max(Math.abs(leakA), Math.abs(leakB));
  }

  private static double leak(GridRun run) {
    return run.figures().scalars().getOrDefault(Figure.LEAK_FLOW, Double.NaN);
  }
}
