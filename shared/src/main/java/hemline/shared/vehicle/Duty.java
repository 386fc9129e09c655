package hemline.shared.vehicle;

import org.jspecify.annotations.Nullable;

/**
 * What a machine is asked to do, and in which air.
 *
 * @param air around it
 * @param travelSpeed forwards, m/s
 * @param slope steepest slope it must climb, rad
 * @param step dip or ledge of the ground to cross; null when none is asked
 * @param terms what its hold must meet
 */
public record Duty(
    Ambient air, double travelSpeed, double slope, @Nullable GroundStep step, HoldTerms terms) {}
