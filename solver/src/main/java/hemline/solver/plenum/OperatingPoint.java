package hemline.solver.plenum;

import hemline.shared.result.Estimate;

/**
 * A flow of the fan at which all leaks take just what it moves.
 *
 * @param suction Pa
 * @param fanFlow m³/s
 * @param leakFlow under the seal, m³/s
 * @param valveFlow m³/s
 * @param otherFlow m³/s
 * @param stable true when a small change dies out
 * @param stallSide true on the rising side of the fan's curve
 * @param touching true when the lip would touch the ground there
 * @param settled true for the point at which the machine settles as the fan runs up
 */
public record OperatingPoint(
    Estimate suction,
    Estimate fanFlow,
    Estimate leakFlow,
    Estimate valveFlow,
    Estimate otherFlow,
    boolean stable,
    boolean stallSide,
    boolean touching,
    boolean settled) {}
