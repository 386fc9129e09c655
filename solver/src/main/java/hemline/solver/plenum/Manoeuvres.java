package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Climbing, braking and turning with the fan on.
 *
 * @param slopeGrip driven wheels' friction over the pull, nose up on the slope of the file; null
 *     when it does not settle there
 * @param slopeSpeed that the drive's power allows there, m/s, at most the top speed
 * @param wallGrip the same on a wall; null as above
 * @param wallSpeed the same on a wall, m/s
 * @param braking deceleration on level ground by all held wheels before slip or lift, m/s²
 * @param brakingDistance from the top speed, m
 * @param slopeBraking the same, nose down on the slope, m/s²; 0 or less: it cannot stop
 * @param turning lateral acceleration on level ground before slip, tip or lift, m/s²
 * @param turningEndsIn slip, tip or axle lift
 */
public record Manoeuvres(
    @Nullable Estimate slopeGrip,
    double slopeSpeed,
    @Nullable Estimate wallGrip,
    double wallSpeed,
    Estimate braking,
    Estimate brakingDistance,
    @Nullable Estimate slopeBraking,
    Estimate turning,
    String turningEndsIn) {}
