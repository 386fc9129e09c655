package hemline.solver.rig;

/** What a measurement says about a prediction. */
public enum Verdict {
  /** The difference lies within what is known, and that is fine enough to count. */
  AGREES("agrees"),
  /** The difference is larger than uncertainty and the prediction's model band together. */
  DIFFERS("differs"),
  /** A difference that matters could hide in the uncertainty. */
  CANNOT_TELL("cannotTell"),
  /** The prediction has no usable flow here. */
  NO_PREDICTION("noPrediction");

  private final String key;

  Verdict(String key) {
    this.key = key;
  }

  /** Name in files. */
  public String key() {
    return key;
  }

  /**
   * Judges a difference.
   *
   * @param error prediction less measurement
   * @param uncertainty half-width of the error at 95 %
   * @param modelLow how far below the prediction other plausible flow models lie
   * @param modelHigh how far above
   * @param matters difference that matters
   */
  static Verdict of(
      double error, double uncertainty, double modelLow, double modelHigh, double matters) {
    // a measurement above the prediction makes the error negative
    if (error > modelLow + uncertainty || error < -modelHigh - uncertainty) {
      return DIFFERS;
    }
    return uncertainty > matters ? CANNOT_TELL : AGREES;
  }
}
