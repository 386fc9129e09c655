package hemline.solver.study;

import hemline.shared.result.Estimate;
import hemline.solver.flow.Closure;
import hemline.solver.refine.LeakSeries;
import hemline.solver.refine.ModelResidual;
import hemline.solver.refine.TransitionFade;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Leak of one lip over that of another, both summed over gaps, as an estimate of its own.
 *
 * <p>Both leaks are taken under the same flow model wherever both have one on all grids, so that a
 * difference between models is not read as one between lips. The model part of the band is what the
 * other common models make of the ratio on the finest grid both have, faded through transition; for
 * turbulent leaks at least the residual of ratios.
 */
final class LeakRatio {
  private LeakRatio() {}

  /**
   * The ratio at one gap.
   *
   * @return null when the two cannot be compared
   */
  static @Nullable Estimate of(Solved upper, Solved lower) {
    return ofSums(List.of(upper), List.of(lower), List.of(1.0));
  }

  /**
   * The ratio of weighted sums over the gaps at which the two can be compared.
   *
   * @param upper one lip, by gap
   * @param lower the other, by gap
   * @param weights by gap, not negative
   * @return null when there is no such gap
   */
  static @Nullable Estimate ofSums(List<Solved> upper, List<Solved> lower, List<Double> weights) {
    List<Solved> over = new ArrayList<>();
    List<Solved> under = new ArrayList<>();
    List<Double> weight = new ArrayList<>();
    for (int g = 0; g < upper.size(); g++) {
      if (weights.get(g) > 0 && comparable(upper.get(g), lower.get(g))) {
        weight.add(weights.get(g));
        over.add(upper.get(g));
        under.add(lower.get(g));
      }
    }
    if (over.isEmpty()) {
      return null;
    }
    Sums sums = Sums.of(over, under, weight, null);
    Estimate ratio = sums.ratio();
    if (ratio == null || sums.same()) {
      return ratio;
    }
    double low = residual(over, under) * ratio.value();
    double high = low;
    for (Closure other : common(over, under)) {
      double distance =
          fade(over, under, other) * Sums.of(over, under, weight, other).distance(sums);
      low = Math.max(low, -distance);
      high = Math.max(high, distance);
    }
    return new Estimate(
        ratio.value(), ratio.numerical(), ratio.iteration(), low, high, ratio.trend());
  }

  /** Largest residual of the flow models; 0 where none was compared with its second. */
  private static double residual(List<Solved> over, List<Solved> under) {
    return Stream.concat(over.stream(), under.stream())
        .filter(Solved::second)
        .mapToDouble(solved -> ModelResidual.ratio(solved.closure()))
        .max()
        .orElse(0);
  }

  /** Largest share of the distance to another model that the band of an answer holds. */
  private static double fade(List<Solved> over, List<Solved> under, Closure other) {
    return Stream.concat(over.stream(), under.stream())
        .filter(solved -> solved.closure() != other && solved.leaks().containsKey(other))
        .mapToDouble(solved -> TransitionFade.weight(solved.closure(), other, solved.gapReynolds()))
        .max()
        .orElse(1);
  }

  /** True when both leaks are known and run the same way. */
  static boolean comparable(Solved a, Solved b) {
    if (!a.usable() || !b.usable()) {
      return false;
    }
    LeakSeries leakA = leak(a, closure(a, b));
    LeakSeries leakB = leak(b, closure(b, a));
    return leakA.equals(leakB) || leakA.over(leakB) != null;
  }

  /**
   * Flow model to compare a under: the same as for b, unless the common one was solved on fewer
   * grids than their own; then each keeps its own and the model part of the band holds the
   * difference.
   */
  private static Closure closure(Solved a, Solved b) {
    int grids = Math.min(leak(a, a.closure()).places(), leak(b, b.closure()).places());
    // symmetric in a and b: their own models in the order of the enum
    Closure first = a.closure().compareTo(b.closure()) <= 0 ? a.closure() : b.closure();
    Closure second = first == a.closure() ? b.closure() : a.closure();
    for (Closure closure : List.of(first, second)) {
      LeakSeries leakA = a.leaks().get(closure);
      LeakSeries leakB = b.leaks().get(closure);
      if (leakA != null && leakB != null && Math.min(leakA.places(), leakB.places()) >= grids) {
        return closure;
      }
    }
    return a.closure();
  }

  private static Set<Closure> common(List<Solved> over, List<Solved> under) {
    Set<Closure> common = EnumSet.noneOf(Closure.class);
    for (int g = 0; g < over.size(); g++) {
      for (Closure closure : over.get(g).leaks().keySet()) {
        if (under.get(g).leaks().containsKey(closure)) {
          common.add(closure);
        }
      }
    }
    return common;
  }

  /** Sums of both leaks over the gaps; same where both are one lip's. */
  private record Sums(LeakSeries upper, LeakSeries lower, boolean same) {

    /** Sums under the preferred model at the gaps where both have it, else under their own. */
    static Sums of(
        List<Solved> over, List<Solved> under, List<Double> weight, @Nullable Closure preferred) {
      List<LeakSeries> upper = new ArrayList<>();
      List<LeakSeries> lower = new ArrayList<>();
      for (int g = 0; g < over.size(); g++) {
        Solved a = over.get(g);
        Solved b = under.get(g);
        boolean both =
            preferred != null
                && a.leaks().containsKey(preferred)
                && b.leaks().containsKey(preferred);
        upper.add(leak(a, both ? preferred : closure(a, b)));
        lower.add(leak(b, both ? preferred : closure(b, a)));
      }
      return new Sums(
          LeakSeries.sum(upper, weight), LeakSeries.sum(lower, weight), upper.equals(lower));
    }

    @Nullable Estimate ratio() {
      return same ? Estimate.exact(1) : upper.over(lower);
    }

    /** This ratio minus that of others on the finest grid that both have; 0 when there is none. */
    double distance(Sums others) {
      for (int k = upper.places() - 1; k >= 0; k--) {
        double distance = upper.over(lower, k) - others.upper.over(others.lower, k);
        if (Double.isFinite(distance)) {
          return distance;
        }
      }
      return 0;
    }
  }

  private static LeakSeries leak(Solved solved, @Nullable Closure closure) {
    LeakSeries leak = closure == null ? null : solved.leaks().get(closure);
    if (leak == null) {
      throw new IllegalArgumentException("no leak under " + closure);
    }
    return leak;
  }
}
