package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * One edge over a dip of the ground, at the ride height it had before.
 *
 * @param edge number of the edge
 * @param suction left, Pa; null when the fan cannot keep any
 * @param downforce left, N; null as above
 * @param kept downforce over that before; null as above
 * @param wall whether it still holds on a wall; null as above
 */
public record StepCrossing(
    int edge,
    @Nullable Estimate suction,
    @Nullable Estimate downforce,
    @Nullable Estimate kept,
    @Nullable Hold wall) {}
