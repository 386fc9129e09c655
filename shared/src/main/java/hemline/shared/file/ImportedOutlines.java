package hemline.shared.file;

import hemline.shared.geometry.Outline;
import hemline.shared.problem.Notice;
import java.util.List;

/**
 * Closed outlines found in a drawing.
 *
 * @param outlines in metres, in the order of the drawing; not yet judged
 * @param notices what was passed over or taken for granted
 */
public record ImportedOutlines(List<Outline> outlines, List<Notice> notices) {
  public ImportedOutlines {
    outlines = List.copyOf(outlines);
    notices = List.copyOf(notices);
  }
}
