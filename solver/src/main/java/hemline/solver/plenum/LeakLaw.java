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
  private final @Nullable LeakTable stillFew;
  private final @Nullable LeakTable rear;
  private final @Nullable LeakTable side;
  private final @Nullable LeakTable front;

  /** A law for ground at rest. */
  LeakLaw(LeakTable still) {
    this(still, null, null, null, null);
  }

  /**
   * A law for both.
   *
   * @param stillFew at rest, at the points of the moving tables
   * @param rear edge that faces rearwards
   * @param side edge along the travel
   * @param front edge that faces forwards
   */
  LeakLaw(
      LeakTable still,
      @Nullable LeakTable stillFew,
      @Nullable LeakTable rear,
      @Nullable LeakTable side,
      @Nullable LeakTable front) {
    this.still = still;
    this.stillFew = stillFew;
    this.rear = rear;
    this.side = side;
    this.front = front;
  }

  boolean moves() {
    return stillFew != null && rear != null && side != null && front != null;
  }

  boolean holds(double gap, double suction) {
    return still.holds(gap, suction);
  }

  /** Smallest solved gap, m. */
  double leastGap() {
    return still.leastGap();
  }

  Estimate estimate(double gap, double suction) {
    return still.estimate(gap, suction);
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
    LeakTable few = stillFew;
    LeakTable r = rear;
    LeakTable s = side;
    LeakTable f = front;
    if (!moving || few == null || r == null || s == null || f == null) {
      return atRest;
    }
    double base = few.lift(lnGap, lnSuction, Side.VALUE);
    double back = r.lift(lnGap, lnSuction, Side.VALUE) - base;
    double along = s.lift(lnGap, lnSuction, Side.VALUE) - base;
    double ahead = f.lift(lnGap, lnSuction, Side.VALUE) - base;
    double c = Math.max(-1, Math.min(1, facing));
    double change = along + 0.5 * c * (ahead - back) + c * c * (0.5 * (ahead + back) - along);
    double straight = c >= 0 ? along + c * (ahead - along) : along + c * (along - back);
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
    LeakTable few = stillFew;
    LeakTable r = rear;
    LeakTable s = side;
    LeakTable f = front;
    if (!moving || few == null || r == null || s == null || f == null) {
      return atRest;
    }
    double base = few.discharge(lnGap, lnSuction, Side.VALUE);
    double back = r.discharge(lnGap, lnSuction, Side.VALUE) / base;
    double along = s.discharge(lnGap, lnSuction, Side.VALUE) / base;
    double ahead = f.discharge(lnGap, lnSuction, Side.VALUE) / base;
    double c = Math.max(-1, Math.min(1, facing));
    double smooth = along + 0.5 * c * (ahead - back) + c * c * (0.5 * (ahead + back) - along);
    if (at == Side.VALUE) {
      return atRest * smooth;
    }
    double straight = c >= 0 ? along + c * (ahead - along) : along + c * (along - back);
    double extra =
        Math.abs(smooth - straight)
            + Math.max(
                0,
                relative(r, lnGap, lnSuction, at) * Math.max(0, -c)
                    + relative(f, lnGap, lnSuction, at) * Math.max(0, c)
                    + relative(s, lnGap, lnSuction, at) * (1 - Math.abs(c))
                    - relative(few, lnGap, lnSuction, at));
    return at == Side.LOW
        ? atRest * smooth - extra * Math.abs(atRest)
        : atRest * smooth + extra * Math.abs(atRest);
  }

  private static double relative(LeakTable table, double lnGap, double lnSuction, Side at) {
    double v = table.discharge(lnGap, lnSuction, Side.VALUE);
    return v == 0 ? 0 : Math.abs((table.discharge(lnGap, lnSuction, at) - v) / v);
  }
}
