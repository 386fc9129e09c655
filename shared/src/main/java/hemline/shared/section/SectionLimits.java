package hemline.shared.section;

/**
 * Conditions that a section may be asked for. Each method answers what would be right for a value
 * out of range, and an empty text for one within.
 */
public final class SectionLimits {
  private static final double LARGEST_GAP = 1;

  /** About the air's own pressure, Pa. */
  private static final double LARGEST_SUCTION = 100_000;

  /** About the speed of sound, m/s. */
  private static final double LARGEST_SPEED = 340;

  private SectionLimits() {}

  /** Judges a gap, m. */
  public static String gap(double gap) {
    return gap > 0 && gap <= LARGEST_GAP
        ? ""
        : "a gap must be above 0 and at most 1 m, such as 2mm";
  }

  /** Judges a suction of either sign, Pa. */
  public static String suction(double suction) {
    return Math.abs(suction) <= LARGEST_SUCTION
        ? ""
        : "a suction cannot exceed the air's own pressure, about 100 kPa";
  }

  /** Judges a speed of the ground, m/s. */
  public static String speed(double speed) {
    return Math.abs(speed) <= LARGEST_SPEED ? "" : "a ground speed must stay below that of sound";
  }
}
