package hemline.solver.study;

import hemline.shared.result.Estimate;
import hemline.solver.flow.Closure;
import hemline.solver.refine.LeakSeries;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Leak of one lip over that of another, both summed over gaps, as an estimate of its own.
 *
 * <p>Both leaks are taken under the same flow model wherever both have one in common, so that a
 * difference between models is not read as one between lips. The model part of the band is what the
 * other common models make of the ratio.
 */
final class LeakRatio {
  private LeakRatio() {}

  /**
   * The ratio at one gap.
   *
   * @return null when the two cannot be compared
   */
  static @Nullable Estimate of(Solved upper, Solved lower) {
    return ofSums(List.of(upper), List.of(lower));
  }

  /**
   * The ratio of sums over the gaps at which the two can be compared.
   *
   * @param upper one lip, by gap
   * @param lower the other, by gap
   * @return null when there is no such gap
   */
  static @Nullable Estimate ofSums(List<Solved> upper, List<Solved> lower) {
    List<Solved> over = new ArrayList<>();
    List<Solved> under = new ArrayList<>();
    for (int g = 0; g < upper.size(); g++) {
      if (comparable(upper.get(g), lower.get(g))) {
        over.add(upper.get(g));
        under.add(lower.get(g));
      }
    }
    if (over.isEmpty()) {
      return null;
    }
    Estimate ratio = ratio(over, under, null);
    if (ratio == null || over.equals(under)) {
      return ratio;
    }
    double low = 0;
    double high = 0;
    for (Closure other : common(over, under)) {
      Estimate there = ratio(over, under, other);
      if (there != null) {
        low = Math.max(low, ratio.value() - there.value());
        high = Math.max(high, there.value() - ratio.value());
      }
    }
    return new Estimate(
        ratio.value(), ratio.numerical(), ratio.iteration(), low, high, ratio.trend());
  }

  /** True when both leaks are known and run the same way. */
  static boolean comparable(Solved a, Solved b) {
    if (!a.usable() || !b.usable()) {
      return false;
    }
    LeakSeries leakA = leak(a, closure(a, b));
    LeakSeries leakB = leak(b, closure(b, a));
    return leakA == leakB || leakA.over(leakB) != null;
  }

  /** Flow model to compare a under: the same as for b where they have one in common. */
  private static Closure closure(Solved a, Solved b) {
    // Symmetric in a and b: the answers' own models first, then any other, in the order of the enum
    Closure first = a.closure().compareTo(b.closure()) <= 0 ? a.closure() : b.closure();
    Closure second = first == a.closure() ? b.closure() : a.closure();
    for (Closure closure : List.of(first, second)) {
      if (a.leaks().containsKey(closure) && b.leaks().containsKey(closure)) {
        return closure;
      }
    }
    for (Closure closure : a.leaks().keySet()) {
      if (b.leaks().containsKey(closure)) {
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

  private static @Nullable Estimate ratio(
      List<Solved> over, List<Solved> under, @Nullable Closure preferred) {
    List<LeakSeries> upper = new ArrayList<>();
    List<LeakSeries> lower = new ArrayList<>();
    for (int g = 0; g < over.size(); g++) {
      Solved a = over.get(g);
      Solved b = under.get(g);
      if (preferred != null
          && a.leaks().containsKey(preferred)
          && b.leaks().containsKey(preferred)) {
        upper.add(leak(a, preferred));
        lower.add(leak(b, preferred));
      } else {
        upper.add(leak(a, closure(a, b)));
        lower.add(leak(b, closure(b, a)));
      }
    }
    if (upper.equals(lower)) {
      return Estimate.exact(1);
    }
    return LeakSeries.sum(upper).over(LeakSeries.sum(lower));
  }

  private static LeakSeries leak(Solved solved, Closure closure) {
    LeakSeries leak = solved.leaks().get(closure);
    if (leak == null) {
      throw new IllegalArgumentException("no leak under " + closure);
    }
    return leak;
  }
}
