package hemline.viewer.format;

import java.util.List;

/** What a person must mind who builds a machine by these figures, one sentence or two each. */
public final class Cautions {
  /** Where hold or suction is shown. */
  public static final String HOLD = BalanceWords.HOLD_CAUTION;

  /** Where a study or a page ends. */
  public static final String CODES =
      "These are figures of air, not of safety: a hold by suction can end without warning, and"
          + " local codes and licensed practice decide before a machine is built.";

  /** Where the text of a section, sweep or ranking ends. */
  public static final String SHORT =
      "A fan may burst and throw debris, so guard it; hold on a wall can end without warning, so"
          + " tether the machine, clear the ground below and add a second hold; a floor drawn down"
          + " pinches. Local codes and licensed practice decide, not these figures.";

  private Cautions() {}

  /** All of them: fan, hold, pinching, batteries, codes. */
  public static List<String> all() {
    return List.of(
        BalanceWords.FAN_CAUTION,
        HOLD,
        BalanceWords.PINCH_CAUTION,
        BalanceWords.BATTERY_CAUTION,
        CODES);
  }
}
