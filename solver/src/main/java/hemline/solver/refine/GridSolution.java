package hemline.solver.refine;

import hemline.shared.result.GridRun;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.FlowSolution;
import org.jspecify.annotations.Nullable;

/**
 * One grid of a family: the figures and the flow they were measured on.
 *
 * @param run the figures
 * @param field the flow in physical units; null where only the figures were kept
 * @param flow the flow as it was solved, with wall shear and boundary values; null where a family
 *     keeps none
 */
public record GridSolution(GridRun run, @Nullable FlowField field, @Nullable FlowSolution flow) {

  /**
   * The flow in physical units.
   *
   * @throws IllegalStateException if only the figures were kept
   */
  @Override
  public FlowField field() {
    if (field == null) {
      throw new IllegalStateException("of this grid only the figures were kept");
    }
    return field;
  }

  /** False where only the figures were kept. */
  public boolean hasField() {
    return field != null;
  }

  /** A grid of which only the figures were kept. */
  public GridSolution(GridRun run) {
    this(run, null, null);
  }

  /** A grid that keeps its fields only. */
  public GridSolution(GridRun run, FlowField field) {
    this(run, field, null);
  }
}
