package hemline.solver.plenum;

import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.GroundStep;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
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
  private final Bands<PlenumState> before;
  private final List<Hold> whole;
  private final List<Judged> judged;

  /**
   * A study.
   *
   * @param before settled on level ground
   * @param whole holds with the seal whole: where there is none, none is looked for
   */
  StepStudy(PlenumBalance balance, Bands<PlenumState> before, List<Hold> whole) {
    this.balance = balance;
    this.whole = whole;
    this.before = before;
    GroundStep step = balance.machine().duty().step();
    // each knows nothing of the others
    judged = step == null ? List.of() : asked().parallelStream().map(a -> judged(a, step)).toList();
  }

  /** All crossings; empty when no step is asked. */
  static List<StepCrossing> of(PlenumBalance balance, Bands<PlenumState> before, List<Hold> whole) {
    return new StepStudy(balance, before, whole).all();
  }

  List<StepCrossing> all() {
    return judged.stream().map(Judged::told).toList();
  }

  /** What is asked: the kind and where. */
  private record Asked(StepCrossing.Kind kind, Set<Integer> edges, int vertex) {
    Crossing over(GroundStep step) {
      return new Crossing(
          kind.ledge() ? -step.height() : step.height(),
          vertex < 0 ? step.length() : 0.5 * step.length(),
          edges,
          vertex);
    }

    HoldSearch search(PlenumBalance b, boolean held) {
      return new CrossingStates(
              new HoldStatics(b, true),
              over(Objects.requireNonNull(b.machine().duty().step())),
              held)
          .search();
    }
  }

  /** The worst of a hold over a crossing, and whether it is at the ride height before. */
  private record Worst(String place, HoldSearch.Worst found, boolean held) {}

  private record Judged(Asked asked, StepCrossing told, List<Worst> worst) {}

  private List<Asked> asked() {
    int n = balance.machine().floor().edges().size();
    List<Asked> all = new ArrayList<>();
    for (boolean ledge : new boolean[] {false, true}) {
      for (int e = 0; e < n; e++) {
        all.add(new Asked(ledge ? StepCrossing.Kind.LEDGE : StepCrossing.Kind.DIP, Set.of(e), -1));
      }
      for (Set<Integer> pair : opposite()) {
        all.add(new Asked(ledge ? StepCrossing.Kind.RIDGE : StepCrossing.Kind.GROOVE, pair, -1));
      }
      for (int v = 0; v < n; v++) {
        Set<Integer> edges = Set.of(v, Math.floorMod(v - 1, n));
        all.add(
            new Asked(ledge ? StepCrossing.Kind.LEDGE_CORNER : StepCrossing.Kind.CORNER, edges, v));
      }
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

  private Judged judged(Asked asked, GroundStep step) {
    Crossing c = asked.over(step);
    List<Hold> holds = new ArrayList<>();
    List<Worst> worst = new ArrayList<>();
    for (Hold h : whole) {
      if (PLACES.contains(h.place().name())) {
        boolean none = h.margins().least() != null && h.margins().least().low() < 1;
        holds.add(none ? h : hold(h, c, worst));
      }
    }
    return new Judged(asked, told(asked, c, holds), worst);
  }

  /** The lesser of the holds at the ride height before and at the one that follows. */
  private Hold hold(Hold h, Crossing c, List<Worst> worst) {
    CrossingStates held = new CrossingStates(new HoldStatics(balance, true), c, true);
    CrossingStates follows = new CrossingStates(new HoldStatics(balance, true), c, false);
    HoldSearch.Worst first = held.search().among(held.search().headings(h.place().angle()));
    HoldSearch.Worst second = follows.search().among(follows.search().headings(h.place().angle()));
    boolean later = second.least() < first.least();
    CrossingStates states = later ? follows : held;
    HoldSearch.Worst found = later ? second : first;
    worst.add(new Worst(h.place().name(), found, !later));
    Hold told = HoldStudy.told(h.place().name(), found, states.search(), null, c);
    boolean strikes =
        !found.worst().margins().settles() && states.strikes(found.worst().attitude());
    return strikes ? told.limitedBy("ledge") : told;
  }

  private StepCrossing told(Asked asked, Crossing c, List<Hold> holds) {
    List<Integer> edges = c.edges().stream().sorted().toList();
    PlenumState was = before.value();
    double floor = balance.machine().floor().ceilingHeight() - mostSink(was) + c.height();
    StepCrossing.Strike strikes =
        c.leastGap(balance, was) > 0
            ? StepCrossing.Strike.NOTHING
            : floor > 0 ? StepCrossing.Strike.LIP : StepCrossing.Strike.FLOOR;
    PlenumState value = strikes == StepCrossing.Strike.NOTHING ? over(c, Side.VALUE, was) : null;
    if (value == null) {
      return new StepCrossing(asked.kind(), edges, strikes, null, null, null, holds);
    }
    PlenumState low = over(c, Side.LOW, before.low());
    PlenumState high = over(c, Side.HIGH, before.high());
    Bands<PlenumState> b = new Bands<>(value, low, high, before.numerical(), before.iteration());
    Bands<double[]> pair =
        new Bands<>(
            pair(value, was),
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

  /** Sink of the deepest point of the floor's edge, m. */
  private double mostSink(PlenumState s) {
    return balance.machine().floor().pieces().stream()
        .mapToDouble(p -> s.sink()[0] + s.sink()[1] * p.x0() + s.sink()[2] * p.y0())
        .max()
        .orElse(0);
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

  /** What the least hold over all crossings hangs on, at each place that has one. */
  List<Sensitivity> sensitivities() {
    SensitivityStudy study = new SensitivityStudy(balance);
    List<UncertainInput> inputs = Stream.concat(study.inputs().stream(), step().stream()).toList();
    return PLACES.parallelStream()
        .map(place -> sensitivity(study, inputs, place))
        .filter(Objects::nonNull)
        .toList();
  }

  private List<UncertainInput> step() {
    GroundStep step = balance.machine().duty().step();
    if (step == null) {
      return List.of();
    }
    double tenth = UncertainInput.TENTH;
    return List.of(
        new UncertainInput(
            "height of the step",
            "1",
            0,
            tenth,
            t -> with(new GroundStep((1 + t) * step.height(), step.length()))),
        new UncertainInput(
            "length of the step",
            "1",
            0,
            tenth,
            t -> with(new GroundStep(step.height(), (1 + t) * step.length()))));
  }

  private PlenumBalance with(GroundStep step) {
    return balance.changed(balance.machine().withStep(step));
  }

  private @Nullable Sensitivity sensitivity(
      SensitivityStudy study, List<UncertainInput> inputs, String place) {
    Judged least = null;
    Worst of = null;
    for (Judged j : judged) {
      for (Worst w : j.worst()) {
        boolean counts = w.place().equals(place) && w.found().worst().margins().settles();
        if (counts && (of == null || w.found().least() < of.found().least())) {
          least = j;
          of = w;
        }
      }
    }
    if (least == null || of == null) {
      return null;
    }
    Asked asked = least.asked();
    boolean held = of.held();
    Sensitivity s =
        study.of(
            place,
            StepCrossing.named(least.told().kind(), least.told().edges()),
            of.found(),
            inputs,
            b -> asked.search(b, held));
    return s.effects().isEmpty() ? null : s;
  }
}
