package hemline.solver.plenum;

import java.util.Arrays;

/**
 * The plenum at one flow of the fan: suction by the fan's curve, sink by the springs, leaks by
 * both.
 *
 * @param suction Pa
 * @param fanFlow m³/s
 * @param leakFlow under the seal, m³/s
 * @param edgeLeaks its parts by edge, each with the corner at the edge's end, m³/s
 * @param valveFlow m³/s
 * @param otherFlow m³/s
 * @param sink of the floor {z, a, b}: z + a x + b y, m
 * @param load towards the ground by suction, lips and fan: {N, Σ N x, Σ N y}
 * @param parts of the force towards the ground, N
 * @param leastGap smallest gap under the seal, m; 0 or less where the lip touches
 * @param leastEdge edge that has it
 * @param stable true when a small change dies out, at this height and with the springs
 * @param stalled true on the rising side of the fan's curve
 */
record PlenumState(
    double suction,
    double fanFlow,
    double leakFlow,
    double[] edgeLeaks,
    double valveFlow,
    double otherFlow,
    double[] sink,
    double[] load,
    Parts parts,
    double leastGap,
    int leastEdge,
    boolean stable,
    boolean stalled) {

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
          0,
          0,
          new double[0],
          0,
          0,
          new double[3],
          new double[3],
          new Parts(0, 0, 0, 0),
          Double.POSITIVE_INFINITY,
          -1,
          true,
          false);

  double demand() {
    return leakFlow + valveFlow + otherFlow;
  }

  boolean touches() {
    return leastGap <= 0;
  }

  /** The same state judged. */
  PlenumState judged(boolean isStable, boolean isStalled) {
    return new PlenumState(
        suction, fanFlow, leakFlow, edgeLeaks, valveFlow, otherFlow, sink, load, parts, leastGap,
        leastEdge, isStable, isStalled);
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof PlenumState p
        && suction == p.suction
        && fanFlow == p.fanFlow
        && Arrays.equals(sink, p.sink);
  }

  @Override
  public int hashCode() {
    return Double.hashCode(suction) + 31 * Double.hashCode(fanFlow);
  }
}
