package hemline.solver.improve;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What moving one corner of a lip does to its leak.
 *
 * @param corner number of the vertex in the outline as drawn
 * @param x of it in the drawing, m
 * @param y of it in the drawing, m
 * @param dx change of the leak as a share when the corner moves by {@link #STEP} towards the
 *     plenum; null where it cannot move or there is no flow
 * @param dy the same upwards
 * @param lowest true for a corner at the lowest point, which only moves up
 */
public record CornerEffect(
    int corner, double x, double y, @Nullable Estimate dx, @Nullable Estimate dy, boolean lowest) {
  /** Move that effects are told for, m. */
  public static final double STEP = 0.1e-3;
}
