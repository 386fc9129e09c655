package hemline.solver.rig;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * A point of the rig beside its prediction.
 *
 * @param gap as set, m
 * @param suction as read, Pa
 * @param readings number of readings
 * @param measured discharge coefficient
 * @param measuredUncertainty half-width at 95 %
 * @param predicted discharge coefficient; null without a usable flow
 * @param error comparison error E, predicted less measured; not a number without a prediction
 * @param errorUncertainty half-width of it at 95 %: coverage factor times u_val
 * @param verdict of this point
 * @param largest source of the largest share of u_val²
 */
public record ComparedPoint(
    double gap,
    double suction,
    int readings,
    double measured,
    double measuredUncertainty,
    @Nullable Estimate predicted,
    double error,
    double errorUncertainty,
    Verdict verdict,
    Source largest) {}
