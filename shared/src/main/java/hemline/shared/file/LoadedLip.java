package hemline.shared.file;

import hemline.shared.problem.Notice;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import java.util.List;

/**
 * A lip read from a file and found usable.
 *
 * @param drawing as it stands in the file
 * @param profile resolved
 * @param notices what should be known of it, such as walls too thin to print or edges drawn twice
 */
public record LoadedLip(LipDrawing drawing, LipProfile profile, List<Notice> notices) {
  public LoadedLip {
    notices = List.copyOf(notices);
  }
}
