package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Least margin of the hold on ground of one tilt.
 *
 * @param tilt rad
 * @param heading that has it
 * @param limitedBy as in {@link Hold}
 * @param margin null when nothing pulls
 */
public record HoldPoint(double tilt, String heading, String limitedBy, @Nullable Estimate margin) {}
