package hemline.shared.profile;

import hemline.shared.geometry.ThinParts;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.Problem;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was found when a lip drawing was checked.
 *
 * @param problems what must be mended; empty for a usable lip
 * @param notices what should be known, such as walls too thin to print
 * @param thinWalls walls that the notices tell of, and more of them, in the frame of the drawing
 * @param narrowSlots slots likewise
 * @param profile the resolved lip; null if there are problems
 */
public record LipFindings(
    List<Problem> problems,
    List<Notice> notices,
    List<ThinParts.Part> thinWalls,
    List<ThinParts.Part> narrowSlots,
    @Nullable LipProfile profile) {
  public LipFindings {
    problems = List.copyOf(problems);
    notices = List.copyOf(notices);
    thinWalls = List.copyOf(thinWalls);
    narrowSlots = List.copyOf(narrowSlots);
    if (problems.isEmpty() != (profile != null)) {
      throw new IllegalArgumentException("a lip has either problems or a profile");
    }
  }

  /** A drawing that is no lip. */
  static LipFindings of(List<Problem> problems) {
    return new LipFindings(problems, List.of(), List.of(), List.of(), null);
  }

  /** The same shape with the thin parts that another check found. */
  public LipFindings withThinParts(LipFindings other) {
    return new LipFindings(problems, other.notices, other.thinWalls, other.narrowSlots, profile);
  }

  /**
   * The resolved lip.
   *
   * @throws InputException with the problems, if there are any
   */
  public LipProfile orThrow() throws InputException {
    if (profile == null) {
      throw new InputException(problems);
    }
    return profile;
  }
}
