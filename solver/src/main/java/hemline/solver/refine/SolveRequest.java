package hemline.solver.refine;

import hemline.shared.section.Section;
import hemline.solver.flow.Closure;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import java.util.List;

/**
 * What is asked of a {@link SectionFamily}.
 *
 * @param section lip or duct
 * @param level finest grid of the whole family
 * @param grids how many grids of the family to solve, from the coarsest on, 1 to {@link
 *     SectionFamily#GRIDS}
 * @param closure flow model; {@link Closure#AUTO} is resolved inside and named in the answer
 * @param before flows of a similar section to start from where that helps, at most one for each
 *     flow model; empty for a cold start
 */
public record SolveRequest(
    Section section, MeshLevel level, int grids, Closure closure, List<SolvedSection> before) {
  public SolveRequest {
    before = List.copyOf(before);
    if (grids < 1 || grids > SectionFamily.GRIDS) {
      throw new IllegalArgumentException("a family has 1 to 3 grids, asked for " + grids);
    }
  }

  /** A section from a cold start. */
  public static SolveRequest cold(Section section, MeshLevel level, int grids, Closure closure) {
    return new SolveRequest(section, level, grids, closure, List.of());
  }
}
