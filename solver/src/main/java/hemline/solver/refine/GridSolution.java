package hemline.solver.refine;

import hemline.shared.result.GridRun;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.FlowSolution;
import org.jspecify.annotations.Nullable;

/**
 * One grid of a family: the figures and the flow they were measured on.
 *
 * @param run the figures
 * @param field the flow in physical units
 * @param flow the flow as it was solved, with wall shear and boundary values; null where a family
 *     keeps none
 */
public record GridSolution(GridRun run, FlowField field, @Nullable FlowSolution flow) {

  /** A grid that keeps its fields only. */
  public GridSolution(GridRun run, FlowField field) {
    this(run, field, null);
  }
}
