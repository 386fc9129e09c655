package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Leak of one lip over gap and suction, ground at rest or moving at the travel speed under an edge
 * of any direction.
 *
 * <p>A moving ground changes the discharge coefficient by a factor, solved for edges that face
 * forwards, sideways and rearwards and taken on a parabola over the cosine of the direction in
 * between; what the parabola differs from straight lines is added to the band.
 */
final class LeakLaw {
  private final LeakTable still;
  private final @Nullable Moving moves;

  /**
   * Tables at the travel speed.
   *
   * @param still at rest, at the points of the others
   * @param rear edge that faces rearwards
   * @param side edge along the travel
   * @param front edge that faces forwards
   */
  record Moving(LeakTable still, LeakTable rear, LeakTable side, LeakTable front) {}

  /** A law for ground at rest. */
  LeakLaw(LeakTable still) {
    this(still, null);
  }

  /**
   * A law for ground at rest and moving.
   *
   * @param moves null for ground at rest alone
   */
  LeakLaw(LeakTable still, @Nullable Moving moves) {
    this.still = still;
    this.moves = moves;
  }

  boolean moves() {
    return moves != null;
  }

  boolean holds(double gap, double suction) {
    return still.holds(gap, suction);
  }

  /** Smallest solved gap, m. */
  double leastGap() {
    return still.leastGap();
  }

  Estimate estimate(double gap, double suction) {
    return still.estimate(Math.log(gap), Math.log(suction));
  }

  /**
   * Upward lip force per metre over the suction, m; a moving ground adds the difference that it
   * makes between the sections solved with and without it.
   *
   * @param moving true at the travel speed
   * @param facing cosine between the edge's outward direction and the travel
   */
  double lift(double lnGap, double lnSuction, boolean moving, double facing, Side at) {
    double atRest = still.lift(lnGap, lnSuction, at);
    Moving m = moves;
    if (!moving || m == null) {
      return atRest;
    }
    double base = m.still().lift(lnGap, lnSuction, Side.VALUE);
    double back = m.rear().lift(lnGap, lnSuction, Side.VALUE) - base;
    double along = m.side().lift(lnGap, lnSuction, Side.VALUE) - base;
    double ahead = m.front().lift(lnGap, lnSuction, Side.VALUE) - base;
    double change = parabola(back, along, ahead, facing);
    double straight = straight(back, along, ahead, facing);
    double extra = Math.abs(change - straight);
    return switch (at) {
      case VALUE -> atRest + change;
      case LOW -> atRest + change - extra;
      case HIGH -> atRest + change + extra;
    };
  }

  /**
   * Discharge coefficient, by the logarithms of gap and suction.
   *
   * @param moving true at the travel speed
   * @param facing cosine between the edge's outward direction and the travel
   */
  double discharge(double lnGap, double lnSuction, boolean moving, double facing, Side at) {
    double atRest = still.discharge(lnGap, lnSuction, at);
    Moving m = moves;
    if (!moving || m == null) {
      return atRest;
    }
    double base = m.still().discharge(lnGap, lnSuction, Side.VALUE);
    double back = m.rear().discharge(lnGap, lnSuction, Side.VALUE) / base;
    double along = m.side().discharge(lnGap, lnSuction, Side.VALUE) / base;
    double ahead = m.front().discharge(lnGap, lnSuction, Side.VALUE) / base;
    double smooth = parabola(back, along, ahead, facing);
    if (at == Side.VALUE) {
      return atRest * smooth;
    }
    double straight = straight(back, along, ahead, facing);
    double c = inRange(facing);
    double extra =
        Math.abs(smooth - straight)
            + Math.max(
                0,
                relative(m.rear(), lnGap, lnSuction, at) * Math.max(0, -c)
                    + relative(m.front(), lnGap, lnSuction, at) * Math.max(0, c)
                    + relative(m.side(), lnGap, lnSuction, at) * (1 - Math.abs(c))
                    - relative(m.still(), lnGap, lnSuction, at));
    return at == Side.LOW
        ? atRest * smooth - extra * Math.abs(atRest)
        : atRest * smooth + extra * Math.abs(atRest);
  }

  /** Between edges that face rearwards (−1), sideways (0) and forwards (1). */
  private static double parabola(double back, double along, double ahead, double facing) {
    double c = inRange(facing);
    return along + 0.5 * c * (ahead - back) + c * c * (0.5 * (ahead + back) - along);
  }

  private static double straight(double back, double along, double ahead, double facing) {
    double c = inRange(facing);
    return c >= 0 ? along + c * (ahead - along) : along + c * (along - back);
  }

  private static double inRange(double facing) {
    return Math.max(-1, Math.min(1, facing));
  }

  private static double relative(LeakTable table, double lnGap, double lnSuction, Side at) {
    double v = table.discharge(lnGap, lnSuction, Side.VALUE);
    return v == 0 ? 0 : Math.abs((table.discharge(lnGap, lnSuction, at) - v) / v);
  }
}
