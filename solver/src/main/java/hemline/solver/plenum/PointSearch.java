package hemline.solver.plenum;

import hemline.shared.vehicle.FanCurve;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.math3.analysis.solvers.IllinoisSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the operating points of one stand: all zeros of demand minus flow, with pairs that lie
 * between two steps of the scan.
 *
 * <p>A point is stable when at its height a rise of the suction draws in more than the fan gains
 * (static condition of surge, p′(Q) dD/dp < 1), and when the same holds with the springs following.
 */
final class PointSearch {
  private static final int SCAN = 36;
  private static final int MOST_EVALUATIONS = 500;

  /** Width, relatively, to which the lowest point of a dip is known. */
  private static final double DIP_WIDTH = 1e-7;

  private static final double SMALL = 1e-6;
  private static final double ROOT_WIDTH = 1e-11;

  /** Difference of fan and leak flow, relatively, up to which they agree. */
  private static final double AGREED = 1e-6;

  /** Shares of a flow within which a state that differs little is looked for. */
  private static final double[] WIDTHS = {0.005, 0.04, 0.12};

  /** Suctions below this share of the fan's peak are taken as none. */
  private static final double LEAST_SUCTION = 1e-4;

  private final PlenumBalance balance;
  private final FanCurve fan;
  private final Stand stand;

  PointSearch(PlenumBalance balance, Stand stand) {
    this.balance = balance;
    this.fan = balance.fan();
    this.stand = stand;
  }

  /** All, by rising fan flow. */
  List<PlenumState> all() {
    List<PlenumState> points = scan(false);
    Collections.reverse(points);
    return points;
  }

  /** The point at which the machine settles as the fan runs up; null when there is none. */
  @Nullable PlenumState settled() {
    for (PlenumState p : scan(true)) {
      if (settles(p)) {
        return p;
      }
    }
    return null;
  }

  /** The settled point close to a flow; null when there is none or it may be another one. */
  @Nullable PlenumState near(double flow) {
    for (double width : WIDTHS) {
      double low = flow * (1 - width);
      double high = Math.min(fan.largestFlow(), flow * (1 + width));
      double atLow = residual(low);
      if (atLow > 0 != residual(high) > 0) {
        PlenumState p = judged(root(low, high));
        return settles(p) && agrees(p) ? p : null;
      }
    }
    return null;
  }

  /**
   * Operating points by falling fan flow.
   *
   * @param first true to stop at the first that is stable and clear of the ground
   */
  private List<PlenumState> scan(boolean first) {
    List<PlenumState> points = new ArrayList<>();
    double step = fan.largestFlow() / SCAN;
    double beforeLast = Double.NaN;
    double last = residual(fan.largestFlow());
    for (int k = SCAN - 1; k >= 0; k--) {
      double flow = k * step;
      double r = residual(flow);
      if (last > 0 != r > 0) {
        add(points, root(flow, flow + step));
      } else if (last > 0 == beforeLast > 0
          && Math.abs(last) < Math.abs(r)
          && Math.abs(last) < Math.abs(beforeLast)) {
        dip(flow, flow + 2 * step, last, points);
      }
      if (first && points.stream().anyMatch(PointSearch::settles)) {
        return points;
      }
      beforeLast = last;
      last = r;
    }
    return points;
  }

  private void add(List<PlenumState> points, double flow) {
    PlenumState p = judged(flow);
    if (agrees(p)) {
      points.add(p);
    }
  }

  /**
   * False where the flows do not agree after all: the demand leaps where the wheels can no longer
   * carry the machine, and a leap is no operating point.
   */
  private static boolean agrees(PlenumState p) {
    return Math.abs(p.demand() - p.flows().fan()) <= AGREED * p.flows().fan();
  }

  private static boolean settles(PlenumState p) {
    return p.stable() && !p.touches();
  }

  /** Looks for a pair of points where the residual comes close to zero and turns back. */
  private void dip(double low, double high, double middle, List<PlenumState> points) {
    double sign = Math.signum(middle);
    UnivariatePointValuePair deepest =
        new BrentOptimizer(DIP_WIDTH, DIP_WIDTH * high, (k, before, now) -> now.getValue() <= 0)
            .optimize(
                new MaxEval(MOST_EVALUATIONS),
                new UnivariateObjectiveFunction(flow -> sign * residual(flow)),
                GoalType.MINIMIZE,
                new SearchInterval(low, high));
    if (deepest.getValue() <= 0) {
      add(points, root(deepest.getPoint(), high));
      add(points, root(low, deepest.getPoint()));
    }
  }

  private double residual(double flow) {
    return least(fan.pressureAt(flow))
        ? -flow
        : balance.at(flow, fan.pressureAt(flow), stand).demand() - flow;
  }

  private boolean least(double suction) {
    return suction < LEAST_SUCTION * fan.peakPressure();
  }

  /** Zero, or leap over zero, of the residual between two flows at which its signs differ. */
  private double root(double low, double high) {
    double width = ROOT_WIDTH * high;
    return new IllinoisSolver(ROOT_WIDTH, width, width)
        .solve(MOST_EVALUATIONS, this::residual, low, high);
  }

  private PlenumState judged(double flow) {
    double p = fan.pressureAt(flow);
    PlenumState here = balance.at(flow, p, stand);
    double slope = fan.slopeAt(flow);
    double step = SMALL * p;
    Stand fixed = stand.held(here.sink());
    double atHeight =
        (balance.at(flow, p + step, fixed).demand() - balance.at(flow, p - step, fixed).demand())
            / (2 * step);
    double free =
        (balance.at(flow, p + step, stand).demand() - balance.at(flow, p - step, stand).demand())
            / (2 * step);
    boolean stable = slope * atHeight < 1 && slope * free < 1;
    return here.judged(stable, slope > 0);
  }
}
