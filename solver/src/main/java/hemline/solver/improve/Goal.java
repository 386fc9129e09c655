package hemline.solver.improve;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import java.util.List;

/** What a search makes least. */
public sealed interface Goal permits LeakGoal, DownforceGoal {
  /** Sections that a lip is judged by in the search. */
  List<SealSection> sections(LipProfile lip);

  /**
   * The figure of a lip, the less the better, on the finest grids.
   *
   * @param results of {@link #sections}
   * @return not a number where there is no usable flow
   */
  double value(LipProfile lip, List<SectionResult> results);
}
