package hemline.shared.vehicle;

/**
 * Motor and battery behind the fan.
 *
 * @param motorEfficiency shaft power over electrical power, speed controller included, 0 to 1
 * @param motorPower most electrical power the motor takes for long, W; infinite when not given
 * @param batteryEnergy J
 * @param usableShare share of the energy that may be drawn, 0 to 1
 * @param batteryPower most power the battery gives for long, W; infinite when not given
 * @param batteryVoltage at which the fan runs at its speed, V; 0 when not given
 * @param driveEfficiency power at the wheels over the electrical power of the drive, 0 to 1
 */
public record PowerSupply(
    double motorEfficiency,
    double motorPower,
    double batteryEnergy,
    double usableShare,
    double batteryPower,
    double batteryVoltage,
    double driveEfficiency) {
  /** Drive efficiency when none is given. Common practice, no source. */
  public static final double USUAL_DRIVE = 0.7;

  /** A supply of which no voltage is known. */
  public PowerSupply(
      double motorEfficiency,
      double motorPower,
      double batteryEnergy,
      double usableShare,
      double batteryPower) {
    this(motorEfficiency, motorPower, batteryEnergy, usableShare, batteryPower, 0, USUAL_DRIVE);
  }
}
