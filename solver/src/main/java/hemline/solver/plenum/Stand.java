package hemline.solver.plenum;

import org.jspecify.annotations.Nullable;

/**
 * How a machine stands when its balance is asked.
 *
 * @param moving true at the travel speed, false at rest
 * @param side of the band of all leaks
 * @param extra load towards the ground beyond weight on level ground and suction: {N, Σ N x, Σ N y}
 * @param softness compliance of tyres and frame over that of the file
 * @param crossing part of the seal over a dip or ledge; null for none
 * @param held sink {z, a, b} to keep whatever the suction; null when the springs decide
 */
record Stand(
    boolean moving,
    Side side,
    double[] extra,
    double softness,
    @Nullable Crossing crossing,
    double @Nullable [] held) {
  private static final double[] NONE = {0, 0, 0};

  /** At rest on level ground. */
  static final Stand REST = new Stand(false, Side.VALUE, NONE, 1, null, null);

  Stand at(Side newSide) {
    return new Stand(moving, newSide, extra, softness, crossing, held);
  }

  Stand travelling(boolean newMoving) {
    return new Stand(newMoving, side, extra, softness, crossing, held);
  }

  Stand loaded(double[] newExtra) {
    return new Stand(moving, side, newExtra, softness, crossing, held);
  }

  Stand softened(double newSoftness) {
    return new Stand(moving, side, extra, newSoftness, crossing, held);
  }

  Stand over(@Nullable Crossing newCrossing) {
    return new Stand(moving, side, extra, softness, newCrossing, held);
  }

  Stand held(double[] keep) {
    return new Stand(moving, side, extra, softness, crossing, keep.clone());
  }
}
