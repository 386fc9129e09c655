package hemline.viewer.picture;

/**
 * Round pressure steps and their colours.
 *
 * @param step width of a band of one colour, Pa
 * @param first index of the lowest band: it reaches from {@code first * step} one step up
 * @param count bands
 */
public record PressureScale(double step, int first, int count) {
  private static final int WANTED = 32;

  /** Scale over a pressure range. */
  public static PressureScale over(double low, double high) {
    double range = Math.max(high - low, 1e-9 * (1 + Math.abs(low) + Math.abs(high)));
    double step = Ticks.step(range, WANTED);
    int first = (int) Math.floor(low / step + 1e-9);
    int count = Math.max(1, (int) Math.ceil(high / step - 1e-9) - first);
    return new PressureScale(step, first, count);
  }

  /** Lower edge of a band, Pa; {@code edge(count)} is the top of the scale. */
  public double edge(int band) {
    return (first + band) * step;
  }

  public int colour(int band) {
    return PressureColours.at(share(band));
  }

  /** Place of a band on the scale, 0 for the lowest, 1 for the highest. */
  public double share(int band) {
    return count == 1 ? 1 : (double) band / (count - 1);
  }
}
