package hemline.solver.study;

import hemline.shared.result.Estimate;
import hemline.solver.flow.Closure;
import hemline.solver.refine.GridValues;
import hemline.solver.refine.LeakSeries;
import hemline.solver.refine.ThreeGrid;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;

/**
 * Gap exponent d ln q / d ln h: slope of a straight line through ln q over ln h.
 *
 * <p>The slope is formed on each grid and then refined like any figure, so that grid errors common
 * to all gaps cancel. Its band has three parts: the grid's, with twice the standard error of the
 * slope added, which tells how far the leak is from a power of the gap; the iteration's, by
 * propagation of the spread of each leak; and the flow models'.
 */
final class GapExponent {
  private static final double COVERAGE = 2;

  private GapExponent() {}

  /**
   * Exponent over a sweep.
   *
   * @param points by gap
   * @param gaps m, same order
   * @return null when fewer than two different gaps were swept, a point has no usable leak, or
   *     leaks differ in direction
   */
  static @Nullable Estimate of(List<Solved> points, List<Double> gaps) {
    if (gaps.stream().distinct().count() < 2 || !points.stream().allMatch(Solved::usable)) {
      return null;
    }
    Slopes slopes = Slopes.of(points, gaps, null);
    Estimate slope = slopes.estimate();
    if (slope == null) {
      return null;
    }
    double low = 0;
    double high = 0;
    for (Closure other : models(points)) {
      double distance = Slopes.of(points, gaps, other).distance(slopes);
      low = Math.max(low, -distance);
      high = Math.max(high, distance);
    }
    return new Estimate(
        slope.value(), slope.numerical(), slope.iteration(), low, high, slope.trend());
  }

  private static Set<Closure> models(List<Solved> points) {
    Set<Closure> models = EnumSet.noneOf(Closure.class);
    points.forEach(point -> models.addAll(point.leaks().keySet()));
    return models;
  }

  /**
   * Slopes by place.
   *
   * @param slope not a number where a point has no leak on that grid
   * @param size cell sizes
   * @param noise from the spread of each leak
   * @param error standard error of the slope on the finest grid
   */
  private record Slopes(double[] slope, double[] size, double[] noise, double error) {

    static Slopes of(List<Solved> points, List<Double> gaps, @Nullable Closure preferred) {
      List<LeakSeries> leaks = points.stream().map(point -> leak(point, preferred)).toList();
      int places = leaks.stream().mapToInt(LeakSeries::places).min().orElse(0);
      double[] slope = new double[places];
      double[] size = new double[places];
      double[] noise = new double[places];
      double error = 0;
      for (int k = 0; k < places; k++) {
        SimpleRegression line = line(leaks, gaps, k);
        slope[k] = line == null ? Double.NaN : line.getSlope();
        for (LeakSeries leak : leaks) {
          size[k] += leak.size(k) / leaks.size();
        }
        if (line != null) {
          noise[k] = GapExponent.noise(leaks, gaps, k, line.getXSumSquares());
          error = gaps.size() > 2 ? line.getSlopeStdErr() : 0;
        }
      }
      return new Slopes(slope, size, noise, error);
    }

    @Nullable Estimate estimate() {
      if (Arrays.stream(slope).noneMatch(Double::isFinite)) {
        return null;
      }
      Estimate grid = ThreeGrid.estimate(new GridValues(slope, size, noise), 1);
      return new Estimate(
          grid.value(),
          Math.hypot(grid.numerical(), COVERAGE * error),
          grid.iteration(),
          0,
          0,
          grid.trend());
    }

    /** This slope minus another on the finest grid that both have; 0 when there is none. */
    double distance(Slopes others) {
      for (int k = Math.min(slope.length, others.slope.length) - 1; k >= 0; k--) {
        double distance = slope[k] - others.slope[k];
        if (Double.isFinite(distance)) {
          return distance;
        }
      }
      return 0;
    }
  }

  private static LeakSeries leak(Solved point, @Nullable Closure preferred) {
    LeakSeries leak = preferred == null ? null : point.leaks().get(preferred);
    if (leak == null) {
      leak = point.leaks().get(point.closure());
    }
    if (leak == null) {
      throw new IllegalArgumentException("a point of the sweep has no leak");
    }
    return leak;
  }

  private static @Nullable SimpleRegression line(
      List<LeakSeries> leaks, List<Double> gaps, int place) {
    double direction = Math.signum(leaks.get(0).leak(place));
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < gaps.size(); i++) {
      double leak = direction * leaks.get(i).leak(place);
      if (!(leak > 0)) {
        return null;
      }
      line.addData(Math.log(gaps.get(i)), Math.log(leak));
    }
    return line;
  }

  /** Root of the sum of squares of each relative spread times the leverage of its point. */
  private static double noise(
      List<LeakSeries> leaks, List<Double> gaps, int place, double sumOfSquares) {
    double mean = gaps.stream().mapToDouble(Math::log).average().orElse(0);
    double noise = 0;
    for (int i = 0; i < gaps.size(); i++) {
      LeakSeries leak = leaks.get(i);
      double relative = leak.spread(place) / Math.abs(leak.leak(place));
      noise = Math.hypot(noise, (Math.log(gaps.get(i)) - mean) / sumOfSquares * relative);
    }
    return noise;
  }
}
