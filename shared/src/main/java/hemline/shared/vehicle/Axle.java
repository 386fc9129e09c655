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
 * @param brakeForce along the machine that its brake bears on both wheels together, N: torque over
 *     the wheels' radius; infinite where none is given
 */
public record Axle(
    String name,
    double x,
    double track,
    double stiffness,
    boolean driven,
    boolean braked,
    double brakeForce) {
  /** An axle without a brake. */
  public Axle(String name, double x, double track, double stiffness, boolean driven) {
    this(name, x, track, stiffness, driven, false, Double.POSITIVE_INFINITY);
  }

  /** The same axle with a brake that bears so much along the machine, N. */
  public Axle withBrake(double force) {
    return new Axle(name, x, track, stiffness, driven, true, force);
  }

  /** The same axle on other tyres, N/m. */
  public Axle withStiffness(double other) {
    return new Axle(name, x, track, other, driven, braked, brakeForce);
  }

  /** True when its wheels hold along the machine while there is power; else they roll. */
  public boolean holdsAlong() {
    return driven || braked;
  }

  /**
   * The most that its wheels together hold along the machine beside friction, N: nothing where they
   * roll, what the brake bears where one holds them (the drive then adds nothing), infinite where
   * the drive alone holds them.
   *
   * @param powered true while drive and brakes have power
   * @param parked true when brakes hold without it
   */
  public double holding(boolean powered, boolean parked) {
    if (braked && (powered || parked)) {
      return brakeForce;
    }
    return powered && driven ? Double.POSITIVE_INFINITY : 0;
  }
}
