package hemline.solver.refine;

/**
 * What the expansion of the air does to the leak, in one dimension.
 *
 * <p>The section solver takes the air as incompressible. For a perfect gas drawn from rest without
 * loss the mass flow per area is {@code ρ0 (p1/p0)^(1/γ) √(2γ/(γ−1) · p0/ρ0 · (1 −
 * (p1/p0)^((γ−1)/γ)))} (de Saint-Venant and Wantzel 1839; textbook gas dynamics); incompressible it
 * is {@code √(2 ρ0 Δp)}.
 */
final class Expansion {
  /** Standard atmosphere at sea level, ISO 2533, Pa. */
  static final double AMBIENT_PRESSURE = 101_325;

  /** Ratio of the specific heats of air. */
  private static final double GAMMA = 1.4;

  /** Least p1/p0 that still speeds the jet up: sonic flow. */
  private static final double CRITICAL_RATIO = Math.pow(2 / (GAMMA + 1), GAMMA / (GAMMA - 1));

  private Expansion() {}

  /** Mass flow over that of the incompressible law, at most 1; suction in Pa, either sign. */
  static double factor(double suction) {
    double drop = Math.abs(suction);
    if (drop < 1e-9 * AMBIENT_PRESSURE) {
      return 1;
    }
    double p0 = upstreamPressure(suction);
    double ratio = Math.max(CRITICAL_RATIO, 1 - drop / p0);
    double e = (GAMMA - 1) / GAMMA;
    double flow =
        Math.pow(ratio, 1 / GAMMA)
            * Math.sqrt(2 / e * -Math.expm1(e * Math.log(ratio))); // over √(p0 ρ0)
    return Math.min(1, flow / Math.sqrt(2 * drop / p0));
  }

  /** Mach number of the loss-free jet; suction in Pa, either sign. */
  static double jetMach(double suction) {
    double ratio = Math.max(CRITICAL_RATIO, 1 - Math.abs(suction) / upstreamPressure(suction));
    double e = (GAMMA - 1) / GAMMA;
    return Math.sqrt(2 / (GAMMA - 1) * Math.expm1(-e * Math.log(ratio)));
  }

  private static double upstreamPressure(double suction) {
    return AMBIENT_PRESSURE + Math.max(0, -suction);
  }
}
