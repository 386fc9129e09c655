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
 * @param predicted discharge coefficient; null without a usable flow
 * @param error comparison error E, predicted less measured; not a number without a prediction
 * @param verdict of this point
 * @param largest source of the largest share of u_val²
 */
public record ComparedPoint(
    double gap,
    double suction,
    int readings,
    Uncertain measured,
    @Nullable Estimate predicted,
    Uncertain error,
    Verdict verdict,
    Source largest) {

  /**
   * A figure with its uncertainty.
   *
   * @param value of it
   * @param halfWidth at 95 %: coverage factor times the standard uncertainty
   */
  public record Uncertain(double value, double halfWidth) {}
}
