package hemline.solver.plenum;

import hemline.shared.result.Estimate;

/**
 * A flow of the fan at which all leaks take just what it moves.
 *
 * @param suction Pa
 * @param flows of the fan and of all leaks
 * @param stable true when a small change dies out
 * @param stallSide true on the rising side of the fan's curve
 * @param touching true when the lip would touch the ground there
 * @param settled true for the point at which the machine settles as the fan runs up
 */
public record OperatingPoint(
    Estimate suction,
    Flows flows,
    boolean stable,
    boolean stallSide,
    boolean touching,
    boolean settled) {

  /**
   * Flows, m³/s.
   *
   * @param fan that the fan moves
   * @param leak under the seal
   * @param valve through the relief valve
   * @param other through other openings
   */
  public record Flows(Estimate fan, Estimate leak, Estimate valve, Estimate other) {}
}
