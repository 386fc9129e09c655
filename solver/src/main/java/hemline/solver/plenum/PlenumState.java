package hemline.solver.plenum;

import java.util.Arrays;

/**
 * The plenum at one flow of the fan: suction by the fan's curve, sink by the springs, leaks by
 * both.
 *
 * @param suction Pa
 * @param flows into and out of it
 * @param sink of the floor {z, a, b}: z + a x + b y, m
 * @param load towards the ground by suction, lips and fan: {N, Σ N x, Σ N y}
 * @param parts of the force towards the ground, N
 * @param least smallest gap under the seal
 * @param stable true when a small change dies out, at this height and with the springs
 * @param stalled true on the rising side of the fan's curve
 */
record PlenumState(
    double suction,
    Flows flows,
    double[] sink,
    double[] load,
    Parts parts,
    LeastGap least,
    boolean stable,
    boolean stalled) {

  /**
   * Flows of the plenum, m³/s.
   *
   * @param fan that the fan moves
   * @param leak under the seal
   * @param edgeLeaks its parts by edge, each with the corner at the edge's end
   * @param valve through the relief valve
   * @param other through other openings
   */
  record Flows(double fan, double leak, double[] edgeLeaks, double valve, double other) {}

  /**
   * Where the seal is nearest to the ground.
   *
   * @param gap m; 0 or less where the lip touches
   * @param edge that has it
   */
  record LeastGap(double gap, int edge) {}

  /**
   * Parts of the downforce, N.
   *
   * @param floor suction on the floor inside the seal
   * @param lips fluid on the lips
   * @param thrust of the fan's jet
   * @param valve of the valve's jet: one that strikes the ground straight down takes ρ q v from the
   *     downforce, one that leaves the seat sideways takes nothing; half of it is taken, at the
   *     centre of the floor
   */
  record Parts(double floor, double lips, double thrust, double valve) {
    double sum() {
      return floor + lips + thrust + valve;
    }
  }

  /** A plenum whose fan does not run: nothing but the weight holds. */
  static final PlenumState FAN_OFF =
      new PlenumState(
          0,
          new Flows(0, 0, new double[0], 0, 0),
          new double[3],
          new double[3],
          new Parts(0, 0, 0, 0),
          new LeastGap(Double.POSITIVE_INFINITY, -1),
          true,
          false);

  double demand() {
    return flows.leak + flows.valve + flows.other;
  }

  boolean touches() {
    return least.gap <= 0;
  }

  /** The same state judged. */
  PlenumState judged(boolean isStable, boolean isStalled) {
    return new PlenumState(suction, flows, sink, load, parts, least, isStable, isStalled);
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof PlenumState p
        && suction == p.suction
        && flows.fan == p.flows.fan
        && Arrays.equals(sink, p.sink);
  }

  @Override
  public int hashCode() {
    return Double.hashCode(suction) + 31 * Double.hashCode(flows.fan);
  }
}
