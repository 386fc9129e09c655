package hemline.viewer.model;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;

/**
 * A solved flow on show.
 *
 * @param section the question it answers
 * @param placement of the lip in the drawing it was solved for
 * @param result its figures
 * @param field its flow
 * @param preview true for a solve on one coarse grid without error bars
 */
public record Shown(
    SealSection section,
    Placement placement,
    SectionResult result,
    FlowField field,
    boolean preview) {}
