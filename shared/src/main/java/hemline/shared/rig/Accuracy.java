package hemline.shared.rig;

/**
 * What an instrument may be off by.
 *
 * <p>Accuracies are limits as makers state them, the same for all readings of the instrument: the
 * error lies anywhere within with equal chance (JCGM 100:2008, 4.3.7).
 *
 * @param absolute half-width, SI, not negative
 * @param ofReading half-width as a share of the reading, not negative
 * @param resolution smallest step of the display, or for the gap what setting it anew may change,
 *     SI, not negative; its error differs from point to point
 */
public record Accuracy(double absolute, double ofReading, double resolution) {
  /** Nothing stated. */
  public static final Accuracy NONE = new Accuracy(0, 0, 0);

  public Accuracy {
    if (!(absolute >= 0) || !(ofReading >= 0) || !(resolution >= 0)) {
      throw new IllegalArgumentException(
          "accuracies are not negative, got " + absolute + ", " + ofReading + ", " + resolution);
    }
  }

  /** True where a limit of the error is stated. */
  public boolean stated() {
    return absolute > 0 || ofReading > 0;
  }
}
