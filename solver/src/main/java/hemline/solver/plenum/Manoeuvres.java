package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Climbing, braking and turning with the fan on.
 *
 * @param slope nose up on the slope of the file
 * @param wall nose up on a wall
 * @param braking with all held wheels before slip or lift
 * @param turning on level ground
 */
public record Manoeuvres(Climb slope, Climb wall, Braking braking, Turning turning) {

  /**
   * A climb.
   *
   * @param grip driven wheels' friction over the pull; null when it does not settle there
   * @param speed that the drive's power allows there, m/s, at most the top speed
   */
  public record Climb(@Nullable Estimate grip, double speed) {}

  /**
   * Braking.
   *
   * @param level deceleration on level ground, m/s²
   * @param distance from the top speed, m
   * @param slope deceleration nose down on the slope, m/s²; 0 or less: it cannot stop; null when it
   *     does not settle there
   */
  public record Braking(Estimate level, Estimate distance, @Nullable Estimate slope) {}

  /**
   * Turning.
   *
   * @param acceleration lateral, before slip, tip or lift, m/s²
   * @param endsIn slip, tip or axle lift
   */
  public record Turning(Estimate acceleration, String endsIn) {}
}
