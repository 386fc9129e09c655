package hemline.validation.exact;

/**
 * Turbulence of the k-ω model that dies away in an even stream of speed 1 far from walls, diffusion
 * along the stream neglected: ω = ω₀/(1 + β ω₀ x), k = k₀ (1 + β ω₀ x)^(−β* / β).
 *
 * <p>Integrated from the equations of F. R. Menter 1994, AIAA J. 32, 1598–1605, with the constants
 * of the outer layer, β = 0.0828 and β* = 0.09.
 *
 * @param k0 kinetic energy at x = 0, m²/s²
 * @param omega0 specific dissipation rate at x = 0, 1/s
 */
public record DecayingTurbulence(double k0, double omega0) {
  private static final double BETA = 0.0828;
  private static final double BETA_STAR = 0.09;

  private double growth(double x) {
    return 1 + BETA * omega0 * x;
  }

  /** Specific dissipation rate, 1/s. */
  public double omega(double x) {
    return omega0 / growth(x);
  }

  /** Kinetic energy, m²/s². */
  public double k(double x) {
    return k0 * Math.pow(growth(x), -BETA_STAR / BETA);
  }

  /** Eddy viscosity k/ω, m²/s. */
  public double eddyViscosity(double x) {
    return k(x) / omega(x);
  }
}
