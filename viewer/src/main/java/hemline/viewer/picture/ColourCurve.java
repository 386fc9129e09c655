package hemline.viewer.picture;

/**
 * Colours along a quadratic Bézier curve in {@link OkLab}, divided into steps of equal length along
 * the curve, so that equal steps of a field look equally large.
 */
public final class ColourCurve {
  private static final int STEPS = 2048;

  /** Speed, from still chalk over ochre to plum. */
  public static final ColourCurve SPEED =
      new ColourCurve(
          OkLab.polar(0.975, 0.014, 95), OkLab.polar(0.82, 0.13, 75), OkLab.polar(0.46, 0.15, 350));

  /** Pressure on a dark board, from slate (ambient) over sea-green to light blue (suction). */
  public static final ColourCurve PRESSURE_DARK =
      new ColourCurve(
          OkLab.polar(0.70, 0.10, 240),
          OkLab.polar(0.46, 0.085, 190),
          OkLab.polar(0.25, 0.012, 265));

  /** Speed on a dark board, from slate over plum to ochre. */
  public static final ColourCurve SPEED_DARK =
      new ColourCurve(
          OkLab.polar(0.25, 0.012, 265), OkLab.polar(0.42, 0.15, 345), OkLab.polar(0.70, 0.13, 65));

  private final OkLab from;
  private final OkLab bend;
  private final OkLab to;
  private final double[] length = new double[STEPS + 1];

  /** A curve from a colour to another that leans towards a third. */
  public ColourCurve(OkLab from, OkLab bend, OkLab to) {
    this.from = from;
    this.bend = bend;
    this.to = to;
    for (int k = 1; k <= STEPS; k++) {
      length[k] =
          length[k - 1] + onCurve((double) k / STEPS).distance(onCurve((double) (k - 1) / STEPS));
    }
  }

  /**
   * Colour at a share of the curve's length, 0xRRGGBB.
   *
   * @param share 0 to 1; taken as the nearer end outside
   */
  public int at(double share) {
    return onCurve(parameter(Math.max(0, Math.min(1, share)))).rgb();
  }

  private double parameter(double share) {
    double wanted = share * length[STEPS];
    int low = 0;
    int high = STEPS;
    while (high - low > 1) {
      int mid = (low + high) / 2;
      if (length[mid] <= wanted) {
        low = mid;
      } else {
        high = mid;
      }
    }
    double within = (wanted - length[low]) / (length[high] - length[low]);
    return (low + within) / STEPS;
  }

  private OkLab onCurve(double t) {
    return from.mix(bend, t).mix(bend.mix(to, t), t);
  }
}
