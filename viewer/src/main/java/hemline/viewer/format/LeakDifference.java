package hemline.viewer.format;

import hemline.shared.result.Estimate;

/** How the leak of one lip differs from that of another, in words. */
public final class LeakDifference {
  private LeakDifference() {}

  /**
   * Difference in per cent with its band.
   *
   * @param ratio leak of the lip over that of the other
   * @param other what the other is called
   */
  public static String of(Estimate ratio, String other) {
    double low = 100 * (ratio.low() - 1);
    double high = 100 * (ratio.high() - 1);
    int decimals = Math.min(1, Digits.decimals(ratio, 100));
    if (low <= 0 && high >= 0) {
      return "not distinguishable from %s (%s to %s %%)"
          .formatted(other, signed(low, decimals), signed(high, decimals));
    }
    boolean less = high < 0;
    double near = Math.min(Math.abs(low), Math.abs(high));
    double far = Math.max(Math.abs(low), Math.abs(high));
    return "leaks %s %% %s than %s (%s to %s %%)"
        .formatted(
            Digits.fixed(Math.abs(100 * (ratio.value() - 1)), decimals),
            less ? "less" : "more",
            other,
            Digits.fixed(near, decimals),
            Digits.fixed(far, decimals));
  }

  private static String signed(double value, int decimals) {
    String text = Digits.fixed(value, decimals);
    return value > 0 ? "+" + text : text;
  }
}
