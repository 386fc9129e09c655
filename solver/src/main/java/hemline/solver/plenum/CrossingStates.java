package hemline.solver.plenum;

import org.jspecify.annotations.Nullable;

/**
 * How the plenum stands over a dip or ledge, at the ride height before it or at the one that the
 * springs settle at.
 */
final class CrossingStates {
  private final HoldStatics statics;
  private final PlenumBalance balance;
  private final Crossing crossing;
  private final boolean held;
  private final HoldSearch search;
  private @Nullable PlenumState rest;

  /**
   * States over a crossing.
   *
   * @param held true for the ride height before it
   */
  CrossingStates(HoldStatics statics, Crossing crossing, boolean held) {
    this.statics = statics;
    this.balance = statics.balance();
    this.crossing = crossing;
    this.held = held;
    search = new HoldSearch(statics, (a, side, like) -> clear(state(a, side, like)));
  }

  HoldSearch search() {
    return search;
  }

  /** True where a balance exists but for a ledge that reaches the lip. */
  boolean strikes(Attitude a) {
    PlenumState s = state(a, Side.VALUE, null);
    return s != null && clear(s) == null;
  }

  private @Nullable PlenumState state(Attitude a, Side side, @Nullable PlenumState like) {
    Stand stand = statics.stand(a, side);
    if (!held) {
      return balance.settled(stand.over(crossing), like);
    }
    PlenumState before = balance.settled(stand, rest == null ? like : rest);
    if (before == null) {
      return null;
    }
    rest = before;
    return balance.settled(stand.over(crossing).held(before.sink()), like);
  }

  /** None where a ledge lifts the lip: the machine then stands on it. */
  private @Nullable PlenumState clear(@Nullable PlenumState s) {
    return s == null || crossing.leastGap(balance, s) <= 0 ? null : s;
  }
}
