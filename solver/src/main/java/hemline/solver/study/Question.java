package hemline.solver.study;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.shared.units.NumberText;
import hemline.solver.flow.Closure;
import hemline.solver.flow.GridSection;
import java.util.List;

/**
 * One section to solve, whatever its kind.
 *
 * @param section lip or duct
 * @param label for progress
 * @param work rough measure of the effort, for the order of tasks and the weight of progress
 * @param sectionClosure flow model the section itself names
 * @param turbulent flow model that turbulent flow there has where none is asked
 * @param notices what is to be said of it whatever the flow
 */
record Question(
    Section section,
    String label,
    double work,
    Closure sectionClosure,
    Closure turbulent,
    List<Notice> notices) {

  static Question of(Section section) {
    List<Notice> notices = detail(GridSection.of(section));
    if (section instanceof SealSection lip) {
      return new Question(
          lip,
          lip.name() + ", gap " + NumberText.millimetres(lip.gap()),
          work(lip),
          Closure.AUTO,
          Closure.turbulent(true),
          notices);
    }
    DuctSection duct = (DuctSection) section;
    return new Question(
        duct,
        duct.name(),
        1,
        closure(duct.closure()),
        Closure.turbulent(!duct.obstacles().isEmpty()),
        notices);
  }

  /** What grids leave out of the section's outlines, if anything. */
  private static List<Notice> detail(GridSection<?> taken) {
    int count = taken.joined().size();
    if (count == 0) {
      return List.of();
    }
    Vertex first = taken.joined().get(0);
    return List.of(
        count == 1
            ? NoticeKind.GRIDS_DETAIL.of(taken.reach(), first.x(), first.y())
            : NoticeKind.GRIDS_DETAILS.of(count, taken.reach(), first.x(), first.y()));
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
