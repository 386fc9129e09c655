package hemline.shared.vehicle;

/**
 * Motor and battery behind the fan.
 *
 * @param motorEfficiency shaft power over electrical power, speed controller included, 0 to 1
 * @param motorPower most electrical power the motor takes for long, W; infinite when not given
 * @param batteryEnergy J
 * @param usableShare share of the energy that may be drawn, 0 to 1
 * @param batteryPower most power the battery gives for long, W; infinite when not given
 */
public record PowerSupply(
    double motorEfficiency,
    double motorPower,
    double batteryEnergy,
    double usableShare,
    double batteryPower) {}
