package hemline.shared.vehicle;

/**
 * A pair of wheels, or one wheel in the middle.
 *
 * @param name for people
 * @param x place along the machine, m, forwards
 * @param track distance between its two wheels, m; 0 for one wheel in the middle
 * @param stiffness of its tyres together, ground to frame, N/m
 * @param driven true when the drive turns it, and holds it while it has power
 * @param braked true when a brake holds it
 */
public record Axle(
    String name, double x, double track, double stiffness, boolean driven, boolean braked) {
  /** An axle without a brake. */
  public Axle(String name, double x, double track, double stiffness, boolean driven) {
    this(name, x, track, stiffness, driven, false);
  }

  /** True when its wheels hold along the machine while there is power; else they roll. */
  public boolean holdsAlong() {
    return driven || braked;
  }
}
