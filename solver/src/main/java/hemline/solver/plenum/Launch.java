package hemline.solver.plenum;

import hemline.shared.result.Estimate;

/**
 * Acceleration on level ground.
 *
 * @param gripAcceleration largest that the driven tyres carry, m/s²
 * @param liftsFirst true when an axle would lift before the tyres slip, which then limits it
 * @param gripUntil speed up to which grip limits, from there power does, m/s
 * @param speed reached, m/s
 * @param time to it, s
 * @param distance to it, m
 * @param withoutSuction acceleration with the fan off, m/s²
 */
public record Launch(
    Estimate gripAcceleration,
    boolean liftsFirst,
    Estimate gripUntil,
    double speed,
    Estimate time,
    Estimate distance,
    double withoutSuction) {}
