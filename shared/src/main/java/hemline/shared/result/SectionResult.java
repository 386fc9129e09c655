package hemline.shared.result;

import hemline.shared.problem.Notice;
import hemline.shared.section.SectionConditions;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Answer to one section: every figure as an estimate, how the solve ended and what to know about
 * it.
 *
 * @param name name of the lip or duct
 * @param conditions that it was solved under
 * @param status how the finest grid ended
 * @param regime by the gap Reynolds number of the result
 * @param closure name of the closure used: laminar, sst, …
 * @param figures what was measured
 * @param notices warnings
 * @param grids coarsest first
 */
public record SectionResult(
    String name,
    SectionConditions conditions,
    SolveStatus status,
    Regime regime,
    String closure,
    SectionFigures figures,
    List<Notice> notices,
    List<GridRun> grids) {

  public SectionResult {
    notices = List.copyOf(notices);
    grids = List.copyOf(grids);
  }

  /** The same answer with another name of the lip. */
  public SectionResult named(String other) {
    return with(other, notices);
  }

  /** The finest grid on which a flow was found; null for none. */
  public @Nullable GridRun finest() {
    GridRun found = null;
    for (GridRun run : grids) {
      boolean usable =
          run.status() == SolveStatus.CONVERGED || run.status() == SolveStatus.UNSTEADY;
      found = usable ? run : found;
    }
    return found;
  }

  /** The same answer with other notices. */
  public SectionResult withNotices(List<Notice> others) {
    return with(name, others);
  }

  private SectionResult with(String otherName, List<Notice> others) {
    return new SectionResult(
        otherName, conditions, status, regime, closure, figures, others, grids);
  }
}
