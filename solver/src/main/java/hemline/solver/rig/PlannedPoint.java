package hemline.solver.rig;

import hemline.shared.result.Estimate;

/**
 * A gap and suction at which two lips could be measured one after the other.
 *
 * @param gap m
 * @param suction Pa
 * @param predicted leak of the one over that of the other
 * @param uncertainty half-width at 95 % of that ratio as it would be measured
 * @param repeats readings of each lip that tell a difference as large as predicted; 0 where no
 *     number does
 * @param tells what a test here can tell
 */
public record PlannedPoint(
    double gap, double suction, Estimate predicted, double uncertainty, int repeats, Tells tells) {

  /** What a test can tell. */
  public enum Tells {
    /** Any ratio within the predicted band would be told from 1. */
    YES("yes"),
    /** A ratio as predicted would be told, but not all that the band leaves open. */
    AS_PREDICTED("asPredicted"),
    /** A ratio as predicted would not be told from 1. */
    NO("no");

    private final String key;

    Tells(String key) {
      this.key = key;
    }

    /** Name in files. */
    public String key() {
      return key;
    }
  }
}
