package hemline.validation.reference;

import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import java.util.List;

/** What a case solves. */
public sealed interface CaseSetup {

  /**
   * A duct section or closed cavity from a duct file.
   *
   * @param closures as for a lip
   */
  record Duct(DuctSection section, List<String> closures) implements CaseSetup {
    /** A duct with the flow model that its file names. */
    public Duct(DuctSection section) {
      this(section, List.of(section.closure()));
    }
  }

  /**
   * An open section with a lip from a lip file.
   *
   * @param closures auto, laminar, sst or sa; the first gives the figures, the distance to others
   *     is added to the bands
   */
  record Lip(SealSection section, List<String> closures) implements CaseSetup {}

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
