package hemline.shared.profile;

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
 * @param profile the resolved lip; null if there are problems
 */
public record LipFindings(
    List<Problem> problems, List<Notice> notices, @Nullable LipProfile profile) {
  public LipFindings {
    problems = List.copyOf(problems);
    notices = List.copyOf(notices);
    if (problems.isEmpty() != (profile != null)) {
      throw new IllegalArgumentException("a lip has either problems or a profile");
    }
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
