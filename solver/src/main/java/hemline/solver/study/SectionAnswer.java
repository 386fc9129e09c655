package hemline.solver.study;

import hemline.shared.result.SectionResult;
import hemline.solver.flow.FlowField;
import org.jspecify.annotations.Nullable;

/**
 * A result together with the flow on its finest grid.
 *
 * @param result the figures
 * @param field the flow for pictures and files; null when the solve failed or fields were not kept
 */
public record SectionAnswer(SectionResult result, @Nullable FlowField field) {}
