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
  private static final OkLab CHALK = OkLab.polar(0.975, 0.014, 95);
  private static final OkLab BEND = OkLab.polar(0.80, 0.105, 185);
  private static final OkLab DEEP = OkLab.polar(0.46, 0.135, 264);
  private static final int STEPS = 2048;
  private static final double[] LENGTH = lengths();

  private PressureColours() {}

  /**
   * Colour of a share of the scale.
   *
   * @param share 0 for the lowest pressure, 1 for the highest; taken as the nearer end outside
   */
  public static int at(double share) {
    return onCurve(parameter(1 - Math.max(0, Math.min(1, share)))).rgb();
  }

  /** Point of the curve that lies the given share of the whole length from the chalk end. */
  private static double parameter(double share) {
    double wanted = share * LENGTH[STEPS];
    int low = 0;
    int high = STEPS;
    while (high - low > 1) {
      int mid = (low + high) / 2;
      if (LENGTH[mid] <= wanted) {
        low = mid;
      } else {
        high = mid;
      }
    }
    double within = (wanted - LENGTH[low]) / (LENGTH[high] - LENGTH[low]);
    return (low + within) / STEPS;
  }

  private static OkLab onCurve(double t) {
    return CHALK.mix(BEND, t).mix(BEND.mix(DEEP, t), t);
  }

  private static double[] lengths() {
    double[] length = new double[STEPS + 1];
    for (int k = 1; k <= STEPS; k++) {
      length[k] =
          length[k - 1] + onCurve((double) k / STEPS).distance(onCurve((double) (k - 1) / STEPS));
    }
    return length;
  }
}
