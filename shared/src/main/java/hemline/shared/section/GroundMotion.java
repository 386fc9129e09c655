package hemline.shared.section;

/**
 * Velocity of the ground under the lip.
 *
 * @param speed in the section plane, positive towards the plenum, m/s
 * @param spanwiseSpeed along the skirt, m/s
 */
public record GroundMotion(double speed, double spanwiseSpeed) {
  public static final GroundMotion STILL = new GroundMotion(0, 0);

  public GroundMotion {
    if (!Double.isFinite(speed) || !Double.isFinite(spanwiseSpeed)) {
      throw new IllegalArgumentException("ground speeds must be finite");
    }
  }
}
