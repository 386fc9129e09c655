package hemline.validation.reference;

import hemline.shared.section.DuctSection;
import java.util.List;

/**
 * A section with known answers: all of it data.
 *
 * @param name folder and file, such as {@code lips/flat-re20-still}
 * @param section the question
 * @param expected what its figures should be
 * @param source where the expected figures come from
 */
public record ReferenceCase(
    String name, DuctSection section, List<ExpectedFigure> expected, String source) {
  public ReferenceCase {
    expected = List.copyOf(expected);
  }
}
