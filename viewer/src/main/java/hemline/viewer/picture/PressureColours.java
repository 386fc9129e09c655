package hemline.viewer.picture;

/**
 * Colours of the pressure field, from chalk (ambient) to deep blue (strong suction).
 *
 * <p>How it is made: a quadratic Bézier curve in {@link OkLab} from a warm chalk over a light
 * sea-green to a deep blue, divided into steps of equal length along the curve, so that equal
 * pressure steps look equally large. Lightness falls all the way, which keeps the order readable in
 * grey print and for colour-blind eyes: what they lose between green and blue is carried by
 * lightness. The darkest end stays light enough for dark streamlines to show.
 */
public final class PressureColours {
  private static final ColourCurve CURVE =
      new ColourCurve(
          OkLab.polar(0.46, 0.135, 264),
          OkLab.polar(0.80, 0.105, 185),
          OkLab.polar(0.975, 0.014, 95));

  private PressureColours() {}

  /** The curve from the lowest to the highest pressure. */
  public static ColourCurve curve() {
    return CURVE;
  }

  /**
   * Colour of a share of the scale.
   *
   * @param share 0 for the lowest pressure, 1 for the highest; taken as the nearer end outside
   */
  public static int at(double share) {
    return CURVE.at(share);
  }
}
