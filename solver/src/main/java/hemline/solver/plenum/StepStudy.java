package hemline.solver.plenum;

import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.GroundStep;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Dips and ledges of the ground passing under the seal: under each edge, under two opposite edges,
 * under each corner.
 *
 * <p>The plenum fills in milliseconds, so the suction follows at once. The ride height follows
 * later: a hold is judged at the height that the machine had in that attitude before, and at the
 * one the springs then settle at, and the lesser counts.
 */
final class StepStudy {
  private static final List<String> PLACES = List.of("slope", "wall", "ceiling");

  /** Cosine between two edges' directions below which they face each other. */
  private static final double OPPOSITE = -0.9;

  private final PlenumBalance balance;
  private final HoldStatics statics;
  private final Bands<PlenumState> before;
  private final List<Hold> whole;

  private StepStudy(PlenumBalance balance, Bands<PlenumState> before, List<Hold> whole) {
    this.balance = balance;
    this.whole = whole;
    this.before = before;
    statics = new HoldStatics(balance, true);
  }

  /**
   * All crossings; empty when no step is asked.
   *
   * @param before settled on level ground
   * @param whole holds with the seal whole: where there is none, none is looked for
   */
  static List<StepCrossing> of(PlenumBalance balance, Bands<PlenumState> before, List<Hold> whole) {
    GroundStep step = balance.machine().step();
    if (step == null) {
      return List.of();
    }
    StepStudy study = new StepStudy(balance, before, whole);
    // each knows nothing of the others
    return study.asked(step).parallelStream().map(study::crossing).toList();
  }

  private record Asked(StepCrossing.Kind kind, Crossing crossing) {}

  private List<Asked> asked(GroundStep step) {
    int n = balance.machine().floor().edges().size();
    List<Asked> all = new ArrayList<>();
    double h = step.height();
    for (int e = 0; e < n; e++) {
      all.add(new Asked(StepCrossing.Kind.DIP, new Crossing(h, step.length(), Set.of(e), -1)));
    }
    for (Set<Integer> pair : opposite()) {
      all.add(new Asked(StepCrossing.Kind.GROOVE, new Crossing(h, step.length(), pair, -1)));
    }
    for (int v = 0; v < n; v++) {
      Set<Integer> edges = Set.of(v, Math.floorMod(v - 1, n));
      all.add(new Asked(StepCrossing.Kind.CORNER, new Crossing(h, 0.5 * step.length(), edges, v)));
    }
    for (int e = 0; e < n; e++) {
      all.add(new Asked(StepCrossing.Kind.LEDGE, new Crossing(-h, step.length(), Set.of(e), -1)));
    }
    return all;
  }

  /** Pairs of edges that face away from each other. */
  private Set<Set<Integer>> opposite() {
    int n = balance.machine().floor().edges().size();
    double[][] out = new double[n][2];
    for (FloorOutline.Piece p : balance.machine().floor().pieces()) {
      out[p.edge()][0] += p.outwardX() * p.length();
      out[p.edge()][1] += p.outwardY() * p.length();
    }
    Set<Set<Integer>> pairs = new LinkedHashSet<>();
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        double cosine =
            (out[i][0] * out[j][0] + out[i][1] * out[j][1])
                / (Math.hypot(out[i][0], out[i][1]) * Math.hypot(out[j][0], out[j][1]));
        if (cosine < OPPOSITE) {
          pairs.add(new LinkedHashSet<>(List.of(i, j)));
        }
      }
    }
    return pairs;
  }

  private StepCrossing crossing(Asked asked) {
    Crossing c = asked.crossing();
    List<Integer> edges = c.edges().stream().sorted().toList();
    boolean strikes =
        edges.stream().anyMatch(e -> balance.leastGap(e, before.value().sink()) + c.height() <= 0);
    List<Hold> holds = new ArrayList<>();
    for (Hold h : whole) {
      if (PLACES.contains(h.place())) {
        holds.add(h.margin() != null && h.margin().low() < 1 ? h : hold(h.place(), h.angle(), c));
      }
    }
    PlenumState value = over(c, Side.VALUE, before.value());
    if (value == null) {
      return new StepCrossing(asked.kind(), edges, strikes, null, null, null, holds);
    }
    PlenumState low = over(c, Side.LOW, before.low());
    PlenumState high = over(c, Side.HIGH, before.high());
    Bands<PlenumState> b = new Bands<>(value, low, high, before.numerical(), before.iteration());
    Bands<double[]> pair =
        new Bands<>(
            pair(value, before.value()),
            pair(low, before.low()),
            pair(high, before.high()),
            before.numerical(),
            before.iteration());
    return new StepCrossing(
        asked.kind(),
        edges,
        strikes,
        b.of(PlenumState::suction),
        b.of(s -> s.parts().sum()),
        pair.of(p -> p[0] / p[1]),
        holds);
  }

  /** The lesser of the holds at the ride height before and at the one that follows. */
  private Hold hold(String place, double tilt, Crossing c) {
    HoldSearch held =
        new HoldSearch(
            statics,
            (a, side, like) -> {
              PlenumState rest = balance.settled(statics.stand(a, side), like);
              return rest == null
                  ? null
                  : struck(
                      c, balance.settled(statics.stand(a, side).over(c).held(rest.sink()), like));
            });
    HoldSearch follows =
        new HoldSearch(
            statics,
            (a, side, like) -> struck(c, balance.settled(statics.stand(a, side).over(c), like)));
    HoldSearch.Worst first = held.among(held.headings(tilt));
    HoldSearch.Worst second = follows.among(follows.headings(tilt));
    return second.least() < first.least()
        ? HoldStudy.told(place, second, follows, null)
        : HoldStudy.told(place, first, held, null);
  }

  /** None where a ledge lifts the lip: the machine then stands on it. */
  private @Nullable PlenumState struck(Crossing c, @Nullable PlenumState s) {
    return s != null
            && c.edges().stream().anyMatch(e -> balance.leastGap(e, s.sink()) + c.height() <= 0)
        ? null
        : s;
  }

  private static double[] pair(@Nullable PlenumState over, @Nullable PlenumState was) {
    return over == null || was == null
        ? new double[] {0, 1}
        : new double[] {over.parts().sum(), was.parts().sum()};
  }

  private @Nullable PlenumState over(Crossing c, Side side, @Nullable PlenumState was) {
    return was == null
        ? null
        : balance.settled(Stand.REST.at(side).over(c).held(Objects.requireNonNull(was).sink()));
  }
}
