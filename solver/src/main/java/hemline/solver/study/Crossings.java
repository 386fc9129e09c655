package hemline.solver.study;

import hemline.shared.result.Estimate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.interpolation.AkimaSplineInterpolator;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * Gaps at which two lips swap places: where the logarithm of their leak ratio changes sign.
 *
 * <p>Between solved gaps it is interpolated over the logarithm of the gap, by an Akima spline from
 * five gaps on (it does not overshoot at kinks), else by straight lines. A swap is certain when the
 * band of the ratio excludes 1 on both sides, with opposite order; the gaps in between, if any,
 * tie. It is possible when the sign changes between two gaps of which only one is clear.
 */
final class Crossings {
  private static final int SPLINE_FROM = 5;
  private static final int MOST_STEPS = 200;

  private Crossings() {}

  /**
   * A swap.
   *
   * @param gap m
   * @param certain true when both sides are beyond the bands
   * @param firstLeaksLessBelow true when the upper lip of the ratio leaks less at smaller gaps
   */
  record Swap(double gap, boolean certain, boolean firstLeaksLessBelow) {}

  /**
   * Finds the swaps of one pair.
   *
   * @param gaps m, increasing
   * @param ratio leak of the first lip over that of the second by gap; null where unknown
   */
  static List<Swap> find(List<Double> gaps, List<@Nullable Estimate> ratio) {
    List<Double> known = new ArrayList<>();
    List<Estimate> estimates = new ArrayList<>();
    for (int g = 0; g < gaps.size(); g++) {
      Estimate r = ratio.get(g);
      if (r != null && r.value() > 0) {
        known.add(Math.log(gaps.get(g)));
        estimates.add(r);
      }
    }
    int n = known.size();
    if (n < 2) {
      return List.of();
    }
    double[] x = known.stream().mapToDouble(Double::doubleValue).toArray();
    double[] y = estimates.stream().mapToDouble(r -> Math.log(r.value())).toArray();
    UnivariateFunction curve =
        n >= SPLINE_FROM
            ? new AkimaSplineInterpolator().interpolate(x, y)
            : new LinearInterpolator().interpolate(x, y);
    List<Swap> swaps = new ArrayList<>();
    int clear = -1; // last gap with a clear order
    for (int i = 0; i < n; i++) {
      if (side(estimates.get(i)) != 0) {
        if (clear >= 0 && side(estimates.get(i)) != side(estimates.get(clear))) {
          removeUncertain(swaps, x[clear]);
          swaps.add(swap(curve, x, y, clear, i, true));
        }
        clear = i;
      }
      boolean oneClear = i + 1 < n && (clear == i) != (side(estimates.get(i + 1)) != 0);
      if (oneClear && y[i] * y[i + 1] < 0) {
        swaps.add(swap(curve, x, y, i, i + 1, false));
      }
    }
    return swaps;
  }

  /** −1 when the first lip clearly leaks less, 1 when clearly more, 0 when they tie. */
  static int side(Estimate ratio) {
    return ratio.high() < 1 ? -1 : ratio.low() > 1 ? 1 : 0;
  }

  private static void removeUncertain(List<Swap> swaps, double afterLogGap) {
    swaps.removeIf(swap -> !swap.certain() && Math.log(swap.gap()) >= afterLogGap);
  }

  private static Swap swap(
      UnivariateFunction curve, double[] x, double[] y, int from, int to, boolean certain) {
    double root = new BrentSolver(1e-12, 1e-12).solve(MOST_STEPS, curve, x[from], x[to]);
    return new Swap(Math.exp(root), certain, y[from] < 0);
  }
}
