package hemline.solver.plenum;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.Machine;
import hemline.solver.refine.GridValues;
import hemline.solver.refine.ThreeGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Ranks lips by the downforce they give on the machine's own fan.
 *
 * <p>Two lips are compared by the ratio of their downforces. The balance is solved with the leaks
 * of each grid of the family in turn, so that the ratio has a grid convergence of its own, and what
 * is wrong with both lips alike cancels. To that band come: cycling iteration, both lips apart;
 * what straight lines between the solved points make of the ratio; the allowance for corners, taken
 * low and high for both together; and the other plausible flow model, on the coarsest grid, at
 * points where both lips have one. A lip is above another only where this band excludes 1.
 */
final class LipContest {
  private static final int PLACES = 3;

  private final Machine machine;
  private final Entry own;
  private final Map<Entry, Forces> known = new HashMap<>();

  /**
   * A lip or set of lips with its leaks.
   *
   * @param name unique among the lips tried
   * @param lattice sections asked
   * @param points their answers, all usable or with stand-ins
   * @param lip all round; null for the machine's own lips
   */
  record Entry(String name, LeakLattice lattice, List<LeakPoint> points, @Nullable LipProfile lip) {
    Entry(String name, LeakLattice lattice, List<LeakPoint> points) {
      this(name, lattice, points, null);
    }

    /** By identity: leaks are long lists. */
    @Override
    public boolean equals(Object o) {
      return this == o;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  /** What is read of a leak point; null where it has no such figure. */
  private interface Reading {
    @Nullable GridLeak of(LeakPoint point);
  }

  /**
   * Downforces of an entry, N; not a number where the machine does not settle or no leak is known.
   *
   * @param onGrid by place
   * @param size relative cell size by place
   * @param noise half-width left by iteration, by place
   * @param straight on the finest grid with straight lines between the points
   * @param corners on the finest grid with the allowance for corners low and high
   */
  private record Forces(
      double[] onGrid, double[] size, double[] noise, double straight, double[] corners) {
    int finest() {
      for (int k = PLACES - 1; k > 0; k--) {
        if (Double.isFinite(onGrid[k])) {
          return k;
        }
      }
      return 0;
    }
  }

  LipContest(Machine machine, Entry own) {
    this.machine = machine;
    this.own = own;
  }

  /** Lips by rank, those of one rank by downforce. */
  List<RankedLip> ranked(List<Entry> entries) {
    List<Trade> trades = new ArrayList<>();
    for (Entry e : entries) {
      trades.add(new TradeStudy(with(e), e.lattice().laws(e.points())).lip(e.name()));
    }
    int n = entries.size();
    List<RankedLip> ranked = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      boolean settles = trades.get(i).downforce() != null;
      int rank = 1;
      List<String> tied = new ArrayList<>();
      for (int j = 0; j < n; j++) {
        boolean other = trades.get(j).downforce() != null;
        int side = i == j || !settles || !other ? 0 : side(entries.get(i), entries.get(j));
        if (side < 0 || !settles && other) {
          rank++;
        } else if (side == 0 && i != j && settles && other) {
          tied.add(entries.get(j).name());
        }
      }
      ranked.add(new RankedLip(rank, trades.get(i), ratio(entries.get(i), own), tied));
    }
    ranked.sort(
        Comparator.comparingInt(RankedLip::rank)
            .thenComparingDouble(
                r -> {
                  Estimate force = r.trade().downforce();
                  return force == null ? 0 : -force.value();
                })
            .thenComparing(RankedLip::name));
    return ranked;
  }

  /** 1 when the first clearly gives more downforce, −1 when clearly less, 0 when they tie. */
  private int side(Entry a, Entry b) {
    // a pair has one band however it is asked
    boolean upright = a.name().compareTo(b.name()) < 0;
    Estimate ratio = upright ? ratio(a, b) : ratio(b, a);
    if (ratio == null) {
      return 0;
    }
    int side = ratio.low() > 1 ? 1 : ratio.high() < 1 ? -1 : 0;
    return upright ? side : -side;
  }

  /** Downforce of one over that of the other; null when there is none. */
  @Nullable Estimate ratio(Entry upper, Entry lower) {
    if (!byGrid(upper) || !byGrid(lower)) {
      return apart(upper, lower);
    }
    Forces a = known.computeIfAbsent(upper, this::forces);
    Forces b = known.computeIfAbsent(lower, this::forces);
    if (Arrays.equals(a.onGrid(), b.onGrid()) && Double.isFinite(a.onGrid()[a.finest()])) {
      return Estimate.exact(1);
    }
    double[] ratio = new double[PLACES];
    double[] size = new double[PLACES];
    double[] noise = new double[PLACES];
    int finest = -1;
    int both = 0;
    for (int k = 0; k < PLACES; k++) {
      ratio[k] = a.onGrid()[k] / b.onGrid()[k];
      size[k] = Math.sqrt(a.size()[k] * b.size()[k]);
      if (Double.isFinite(ratio[k])) {
        finest = k;
        both++;
        noise[k] =
            ratio[k] * Math.hypot(a.noise()[k] / a.onGrid()[k], b.noise()[k] / b.onGrid()[k]);
      }
    }
    if (both < 2) {
      // one grid alone says less of the error of the ratio than the bands of both do
      return apart(upper, lower);
    }
    Estimate grid = ThreeGrid.estimate(new GridValues(ratio, size, noise), 1);
    double straight = distance(a.straight() / b.straight(), ratio[finest]);
    double low = 0;
    double high = 0;
    for (int s = 0; s < 2; s++) {
      double moved = a.corners()[s] / b.corners()[s] - ratio[finest];
      if (Double.isFinite(moved)) {
        low = Math.max(low, -moved);
        high = Math.max(high, moved);
      }
    }
    double model = otherModel(upper, lower) - ratio[0];
    if (Double.isFinite(model)) {
      low = Math.hypot(low, Math.max(0, -model));
      high = Math.hypot(high, Math.max(0, model));
    }
    return new Estimate(
        grid.value(), grid.numerical() + straight, grid.iteration(), low, high, grid.trend());
  }

  /** True when every section at rest is known on its finest grids, none stood in for. */
  private static boolean byGrid(Entry e) {
    return e.points().stream()
        .filter(LeakLattice::atRest)
        .allMatch(p -> p.usable() && !p.grids().own().isEmpty());
  }

  private static double distance(double a, double b) {
    return Double.isFinite(a - b) ? Math.abs(a - b) : 0;
  }

  /** The ratio with both bands apart, where they are not known by grid. */
  private @Nullable Estimate apart(Entry upper, Entry lower) {
    Estimate a = trade(upper).downforce();
    Estimate b = trade(lower).downforce();
    if (a == null || b == null || !(a.value() > 0) || !(b.low() > 0)) {
      return null;
    }
    double value = a.value() / b.value();
    return new Estimate(
        value,
        0,
        0,
        Math.max(0, value - a.low() / b.high()),
        Math.max(0, a.high() / b.low() - value),
        Estimate.Trend.UNKNOWN);
  }

  private Trade trade(Entry e) {
    return new TradeStudy(with(e), e.lattice().laws(e.points())).lip(e.name());
  }

  private Machine with(Entry e) {
    LipProfile lip = e.lip();
    return lip == null ? machine : machine.withFloor(machine.floor().withLip(lip));
  }

  private Forces forces(Entry e) {
    double[] force = new double[PLACES];
    double[] size = new double[PLACES];
    double[] noise = new double[PLACES];
    int finest = 0;
    for (int k = 0; k < PLACES; k++) {
      int place = k;
      force[k] = force(e, p -> at(p, place), 0, true, Side.VALUE);
      size[k] = size(e, k);
      double leaky = force(e, p -> at(p, place), 1, true, Side.VALUE);
      noise[k] = distance(leaky, force[k]);
      finest = Double.isFinite(force[k]) ? k : finest;
    }
    int best = finest;
    return new Forces(
        force,
        size,
        noise,
        force(e, p -> at(p, best), 0, false, Side.VALUE),
        new double[] {
          force(e, p -> at(p, best), 0, true, Side.LOW),
          force(e, p -> at(p, best), 0, true, Side.HIGH)
        });
  }

  private static @Nullable GridLeak at(LeakPoint p, int place) {
    return p.grids().own().stream().filter(g -> g.place() == place).findFirst().orElse(null);
  }

  /** Mean cell size at a place over that at the first. */
  private static double size(Entry e, int place) {
    double sum = 0;
    int count = 0;
    for (LeakPoint p : e.points()) {
      GridLeak first = at(p, 0);
      GridLeak here = at(p, place);
      if (first != null && here != null) {
        sum += Math.sqrt((double) first.cells() / here.cells());
        count++;
      }
    }
    // three grids of every family have 2 : 3 : 4 cells along each interval
    return count > 0 ? sum / count : 2.0 / (2 + place);
  }

  /**
   * Downforce ratio with the other flow model on the coarsest grid, at points where both have it.
   */
  private double otherModel(Entry upper, Entry lower) {
    Set<List<Double>> both = others(upper);
    both.retainAll(others(lower));
    if (both.isEmpty()) {
      return Double.NaN;
    }
    Reading reading = p -> both.contains(place(p)) ? p.grids().otherModel().get(0) : at(p, 0);
    return force(upper, reading, 0, true, Side.VALUE) / force(lower, reading, 0, true, Side.VALUE);
  }

  private static Set<List<Double>> others(Entry e) {
    Set<List<Double>> places = new HashSet<>();
    for (LeakPoint p : e.points()) {
      if (LeakLattice.atRest(p) && !p.grids().otherModel().isEmpty()) {
        places.add(place(p));
      }
    }
    return places;
  }

  private static List<Double> place(LeakPoint p) {
    return List.of(p.conditions().gap(), p.conditions().suction());
  }

  /**
   * Downforce with the leaks so read.
   *
   * @param spreads how many half-spreads of iteration are added to all leaks
   * @param smooth false for straight lines between the points
   * @param side of the allowance for corners
   */
  private double force(Entry e, Reading reading, double spreads, boolean smooth, Side side) {
    List<LeakPoint> read = new ArrayList<>();
    for (LeakPoint p : e.points()) {
      GridLeak leak = LeakLattice.atRest(p) ? reading.of(p) : null;
      if (leak == null) {
        if (LeakLattice.atRest(p)) {
          return Double.NaN;
        }
        read.add(p);
      } else {
        read.add(
            p.with(
                Estimate.exact(leak.discharge() + spreads * leak.spread()),
                Estimate.exact(leak.lift())));
      }
    }
    Map<String, LeakLaw> laws = e.lattice().lawsAtRest(read, smooth);
    PlenumState state = new PlenumBalance(with(e), laws).settled(Stand.REST.at(side));
    return state == null ? Double.NaN : state.parts().sum();
  }
}
