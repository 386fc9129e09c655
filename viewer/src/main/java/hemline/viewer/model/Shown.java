package hemline.viewer.model;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.study.ComparableAnswer;
import org.jspecify.annotations.Nullable;

/**
 * A solved flow on show.
 *
 * @param section the question it answers
 * @param placement of the lip in the drawing it was solved for
 * @param result its figures
 * @param field its flow
 * @param solved for comparisons; null for a preview, a solve on one coarse grid without error bars
 */
public record Shown(
    SealSection section,
    Placement placement,
    SectionResult result,
    FlowField field,
    @Nullable ComparableAnswer solved) {

  /** True for a solve on one coarse grid. */
  public boolean preview() {
    return solved == null;
  }
}
