package hemline.shared.vehicle;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;

/**
 * The air around the machine.
 *
 * @param temperature K
 * @param altitude m; the pressure is that of the standard atmosphere there
 */
public record Ambient(double temperature, double altitude) {
  /** Air pressure, Pa. */
  public double pressure() {
    return Air.pressureAtAltitude(altitude);
  }

  /** Density and viscosity of the air. */
  public FluidState air() {
    return Air.at(temperature, pressure());
  }
}
