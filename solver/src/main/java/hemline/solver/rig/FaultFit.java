package hemline.solver.rig;

/**
 * A fault fitted alone to the comparison errors.
 *
 * @param fault what was tried
 * @param size that explains most, see {@link Fault}
 * @param uncertainty half-width of the size at 95 %
 * @param chiSquare what is left: squared distance in units of the joint uncertainty
 * @param weight likelihood among all faults and none, each with its count of parameters (Akaike
 *     1974), 0 to 1
 */
public record FaultFit(
    Fault fault, double size, double uncertainty, double chiSquare, double weight) {}
