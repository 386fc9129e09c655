package hemline.solver.study;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.Notice;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.units.NumberText;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.GridSection;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.Conditions;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import java.util.List;

/**
 * One section to solve, whatever its kind.
 *
 * @param conditions what the answer needs to know of it
 * @param label for progress
 * @param work rough measure of the effort, for the order of tasks and the weight of progress
 * @param sectionClosure flow model the section itself names
 * @param turbulent flow model that turbulent flow there has where none is asked
 * @param solver solves it
 * @param notices what is to be said of it whatever the flow
 */
record Question(
    Conditions conditions,
    String label,
    double work,
    Closure sectionClosure,
    Closure turbulent,
    Solver solver,
    List<Notice> notices) {

  /** Hands the section to a family, with flows it may start from. */
  @FunctionalInterface
  interface Solver {
    GridFamily solve(
        SectionFamily family,
        MeshLevel level,
        int grids,
        Closure closure,
        List<SolvedSection> before,
        CancelToken cancel,
        ProgressListener progress);
  }

  static Question of(SealSection section) {
    String label = section.profile().name() + ", gap " + NumberText.millimetres(section.gap());
    return new Question(
        Conditions.of(section),
        label,
        work(section),
        Closure.AUTO,
        Closure.turbulent(true),
        (family, level, grids, closure, before, cancel, progress) ->
            family.solve(section, level, grids, closure, before, cancel, progress),
        detail(GridSection.of(section)));
  }

  static Question of(DuctSection section) {
    return new Question(
        Conditions.of(section),
        section.name(),
        1,
        closure(section.closure()),
        Closure.turbulent(!section.obstacles().isEmpty()),
        (family, level, grids, closure, before, cancel, progress) ->
            family.solve(section, level, grids, closure, cancel, progress),
        detail(GridSection.of(section)));
  }

  /** What grids leave out of the section's outlines, if anything. */
  private static List<Notice> detail(GridSection<?> taken) {
    int count = taken.joined().size();
    if (count == 0) {
      return List.of();
    }
    Vertex first = taken.joined().get(0);
    return List.of(
        new Notice(
            "grids.detail",
            String.format(
                "The grids leave out %s of an outline, below %s, at %s%s: no cell could show it. No"
                    + " wall moves by more than that, gap and width not at all; the drawing stays.",
                count == 1 ? "a detail" : count + " details",
                NumberText.millimetres(taken.reach()),
                NumberText.point(first.x(), first.y()),
                count == 1 ? "" : " and elsewhere")));
  }

  /** The flow model to ask for: that of the options, unless they leave it to the section. */
  Closure closure(RunOptions options) {
    return options.closure() == Closure.AUTO ? sectionClosure : options.closure();
  }

  private static Closure closure(String key) {
    for (Closure closure : Closure.values()) {
      if (closure.key().equals(key)) {
        return closure;
      }
    }
    throw new IllegalArgumentException("closure must be one of auto, laminar, sst, sa, got " + key);
  }

  /** Rough measure of the effort that a section takes. */
  static double work(SealSection section) {
    return work(section.profile(), section.gap());
  }

  /** Cells along the lip grow with its outline over the gap, across it more slowly. */
  private static double work(LipProfile profile, double gap) {
    double length = length(profile.outline());
    for (Outline part : profile.detached()) {
      length += length(part);
    }
    return Math.sqrt(1 + length / gap);
  }

  private static double length(Outline outline) {
    List<Vertex> v = outline.vertices();
    double length = 0;
    for (int i = 0; i < v.size(); i++) {
      Vertex next = v.get((i + 1) % v.size());
      length += Math.hypot(next.x() - v.get(i).x(), next.y() - v.get(i).y());
    }
    return length;
  }
}
