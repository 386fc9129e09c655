package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Downforce of the machine with one thing changed.
 *
 * @param factor of what is changed
 * @param downforce N; null when the machine does not settle
 * @param suction Pa; null as above
 */
public record DownforcePoint(
    double factor, @Nullable Estimate downforce, @Nullable Estimate suction) {}
