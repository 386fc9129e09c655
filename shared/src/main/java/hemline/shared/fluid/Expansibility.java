package hemline.shared.fluid;

/**
 * How far a leak jet is from incompressible: one-dimensional isentropic flow of air from ambient
 * into the suction.
 *
 * <p>With r = 1 − Δp / p₀ and κ = 1.4 the mass flux per area is
 *
 * <pre>  G = ρ₀ √(2 κ/(κ−1) (p₀/ρ₀) (r^(2/κ) − r^((κ+1)/κ)))  isentropic
 *   G₀ = √(2 Δp ρ₀)                                       incompressible</pre>
 *
 * (Saint-Venant and Wantzel 1839, J. École Polytech. 16, 85). Their ratio does not depend on the
 * density; it falls as 1 − 3/(4 κ) Δp/p₀ for small suction.
 */
public final class Expansibility {
  private static final double KAPPA = Air.HEAT_RATIO;

  private Expansibility() {}

  /**
   * True mass flux over the incompressible one; below 1, so the incompressible leak is over-stated.
   *
   * <p>From the critical pressure ratio on (r = 0.528) the jet is choked and its flux constant.
   *
   * @param suction Δp, Pa; its sign does not matter
   * @param pressure p₀ of the side the air comes from, Pa, absolute
   */
  public static double factor(double suction, double pressure) {
    double drop = drop(suction, pressure);
    if (drop < 1e-6) {
      // the closed form loses digits here: series to first order
      return 1 - 0.75 / KAPPA * drop;
    }
    double r = Math.max(1 - drop, criticalRatio());
    double flux =
        KAPPA / (KAPPA - 1) * (Math.pow(r, 2 / KAPPA) - Math.pow(r, (KAPPA + 1) / KAPPA)) / drop;
    return Math.sqrt(flux);
  }

  /**
   * Mach number of the jet expanded to the plenum pressure, √(2/(κ−1) (r^(−(κ−1)/κ) − 1)); at most
   * 1, where it is choked.
   *
   * @param suction Δp, Pa; its sign does not matter
   * @param pressure p₀ of the side the air comes from, Pa, absolute
   */
  public static double jetMach(double suction, double pressure) {
    double r = Math.max(1 - drop(suction, pressure), criticalRatio());
    return Math.sqrt(2 / (KAPPA - 1) * Math.expm1(-(KAPPA - 1) / KAPPA * Math.log(r)));
  }

  /** Pressure ratio at which the jet reaches the speed of sound, (2/(κ+1))^(κ/(κ−1)). */
  public static double criticalRatio() {
    return Math.pow(2 / (KAPPA + 1), KAPPA / (KAPPA - 1));
  }

  /** Incompressible jet speed √(2 |Δp| / ρ), m/s. */
  public static double jetSpeed(double suction, double density) {
    return Math.sqrt(2 * Math.abs(suction) / density);
  }

  private static double drop(double suction, double pressure) {
    if (!(pressure > 0) || !Double.isFinite(suction)) {
      throw new IllegalArgumentException(
          "needs a finite suction and a positive pressure, got " + suction + " and " + pressure);
    }
    return Math.abs(suction) / pressure;
  }
}
