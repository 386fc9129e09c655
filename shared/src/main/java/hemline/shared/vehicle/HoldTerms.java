package hemline.shared.vehicle;

/**
 * What a machine must meet before its hold counts as shown.
 *
 * @param parked true when the brakes hold without power
 * @param safetyFactor that the low end of every margin must reach; 1 asks for none
 * @param contactAllowance smallest gap that counts as clear of rough ground, m; leaks are solved
 *     down to it
 * @param tolerances of the inputs
 */
public record HoldTerms(
    boolean parked, double safetyFactor, double contactAllowance, Tolerances tolerances) {
  /** Smallest gap when none is given, m. */
  public static final double USUAL_ALLOWANCE = 1e-4;

  /** Terms of a file that gives none. */
  public static final HoldTerms USUAL = new HoldTerms(false, 1, USUAL_ALLOWANCE, Tolerances.NONE);
}
