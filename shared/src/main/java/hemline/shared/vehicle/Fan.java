package hemline.shared.vehicle;

/**
 * A fan in its place on the machine.
 *
 * @param curve as measured
 * @param speed at which it runs here, 1/s
 * @param maximumSpeed limit of the maker, 1/s; infinite when none is given
 * @param efficiency static efficiency to take where the curve has no shaft power, 0 to 1
 * @param outlet of its jet
 * @param rotorInertia of wheel and rotor, kg m²; 0 when it is not given
 */
public record Fan(
    FanCurve curve,
    double speed,
    double maximumSpeed,
    double efficiency,
    Outlet outlet,
    double rotorInertia) {

  /**
   * Outlet of a fan.
   *
   * @param area of the jet, m²; 0 when its thrust is to be left out
   * @param angle direction of the jet above the floor's plane, rad: π/2 straight up, which presses
   *     the machine down, 0 level to the rear
   * @param x place, m, forwards
   * @param y place, m, to the left
   * @param height above the ground, m, about which a sideways jet turns the machine
   */
  public record Outlet(double area, double angle, double x, double y, double height) {
    /** An outlet straight up above the origin, whose thrust is left out. */
    public static final Outlet WITHOUT_THRUST = new Outlet(0, Math.PI / 2, 0, 0, 0);

    Outlet sized(double newArea) {
      return new Outlet(newArea, angle, x, y, height);
    }
  }

  /** Curve at the speed of this machine in air of a density, kg/m³. */
  public FanCurve running(double density) {
    return curve.scaled(speed, density);
  }

  /** The same fan at another speed, 1/s. */
  public Fan atSpeed(double newSpeed) {
    return new Fan(curve, newSpeed, maximumSpeed, efficiency, outlet, rotorInertia);
  }

  /** The same fan with an outlet of another area, m². */
  public Fan withExitArea(double newArea) {
    return new Fan(curve, speed, maximumSpeed, efficiency, outlet.sized(newArea), rotorInertia);
  }

  /** The same fan with another curve. */
  public Fan withCurve(FanCurve other) {
    return new Fan(other, speed, maximumSpeed, efficiency, outlet, rotorInertia);
  }

  /**
   * Speed of the outlet jet, m/s: flow over area, but no more than the shaft power leaves once it
   * has raised the air by the suction, P ≥ q Δp + ½ ρ q v². A smaller outlet throttles the fan in
   * ways its curve does not hold.
   *
   * @param running curve at speed and density
   * @param flow m³/s
   * @param suction Pa
   */
  public double jetSpeed(FanCurve running, double flow, double suction) {
    return outlet.area() > 0 && flow > 0
        ? Math.min(flow / outlet.area(), fastestJet(running, flow, suction))
        : 0;
  }

  /** True when the outlet is too small for the power of the shaft. */
  public boolean jetShort(FanCurve running, double flow, double suction) {
    return outlet.area() > 0
        && flow > 0
        && flow / outlet.area() > fastestJet(running, flow, suction);
  }

  private double fastestJet(FanCurve running, double flow, double suction) {
    double left = Math.max(0, shaftPower(running, flow, suction) - flow * suction);
    return Math.sqrt(2 * left / (running.density() * flow));
  }

  /**
   * Shaft power at a point of a running curve, W: as measured, or air power over the efficiency.
   *
   * @param running curve at speed and density
   * @param flow m³/s
   * @param suction Pa
   */
  public double shaftPower(FanCurve running, double flow, double suction) {
    return running.hasPower() ? running.powerAt(flow) : flow * suction / efficiency;
  }
}
