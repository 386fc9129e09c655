package hemline.shared.vehicle;

/**
 * A fan in its place on the machine.
 *
 * @param curve as measured
 * @param speed at which it runs here, 1/s
 * @param maximumSpeed limit of the maker, 1/s; infinite when none is given
 * @param efficiency static efficiency to take where the curve has no shaft power, 0 to 1
 * @param exitArea area of the outlet jet, m²; 0 when its thrust is to be left out
 * @param exitAngle direction of the outlet jet above the floor's plane, rad: π/2 straight up, which
 *     presses the machine down, 0 level to the rear
 * @param x place of the outlet, m, forwards
 * @param y place of the outlet, m, to the left
 */
public record Fan(
    FanCurve curve,
    double speed,
    double maximumSpeed,
    double efficiency,
    double exitArea,
    double exitAngle,
    double x,
    double y) {

  /** Curve at the speed of this machine in air of a density, kg/m³. */
  public FanCurve running(double density) {
    return curve.scaled(speed, density);
  }

  /** The same fan at another speed, 1/s. */
  public Fan atSpeed(double newSpeed) {
    return new Fan(curve, newSpeed, maximumSpeed, efficiency, exitArea, exitAngle, x, y);
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
