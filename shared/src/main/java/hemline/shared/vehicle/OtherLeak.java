package hemline.shared.vehicle;

/**
 * A leak beside the seal: cable hole, panel joint.
 *
 * @param name for people
 * @param area m²
 * @param dischargeCoefficient of the opening
 */
public record OtherLeak(String name, double area, double dischargeCoefficient) {

  /** Flow into the plenum, m³/s. */
  public double flow(double suction, double density) {
    return suction > 0 ? dischargeCoefficient * area * Math.sqrt(2 * suction / density) : 0;
  }
}
