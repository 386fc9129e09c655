package hemline.shared.fluid;

/**
 * Density and viscosity of the fluid at one state.
 *
 * @param density kg/m³, positive
 * @param kinematicViscosity m²/s, positive
 */
public record FluidState(double density, double kinematicViscosity) {
  public FluidState {
    if (!(density > 0) || !(kinematicViscosity > 0)) {
      throw new IllegalArgumentException(
          "density and viscosity must be positive, got " + density + ", " + kinematicViscosity);
    }
  }
}
