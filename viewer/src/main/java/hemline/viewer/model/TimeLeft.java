package hemline.viewer.model;

/** How long work may still take, in words. */
public final class TimeLeft {
  private static final double SURE_AFTER = 2;
  private static final double SURE_FROM = 0.02;
  private static final double SHORT = 90;

  private TimeLeft() {}

  /**
   * Words, or nothing as long as it is too early to tell.
   *
   * @param done share of the work, 0 to 1
   * @param seconds since its start
   */
  public static String words(double done, double seconds) {
    if (seconds < SURE_AFTER || done < SURE_FROM || done >= 1) {
      return "";
    }
    double left = seconds * (1 - done) / done;
    if (left < SHORT) {
      return "about " + Math.max(1, Math.round(left)) + " s left";
    }
    return "about " + (Math.round(left) + 59) / 60 + " min left";
  }
}
