package hemline.validation.reference;

import hemline.shared.section.Section;
import java.util.List;

/** What a case solves. */
public sealed interface CaseSetup {

  /**
   * A section from a file of a lip or duct.
   *
   * @param closures auto, laminar, sst or sa; the first gives the figures, the distance to others
   *     is added to the bands
   */
  record Solved(Section section, List<String> closures) implements CaseSetup {}

  /**
   * A set-up that a duct file cannot say, made in code: an exact flow given on the boundary, or a
   * formula worked out by hand.
   *
   * @param key name of the set-up
   */
  record Computed(String key) implements CaseSetup {}

  /**
   * The figures of one case over those of another, grid by grid, so that common errors cancel.
   *
   * @param of case above
   * @param to case below
   */
  record Ratio(String of, String to) implements CaseSetup {}
}
