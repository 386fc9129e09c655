package hemline.solver.refine;

import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;

/**
 * Best value and uncertainty from the change of a value over a family of grids.
 *
 * <p>{@link #convergence} is the procedure of Celik, Ghia, Roache, Freitas, Coleman and Raad 2008,
 * "Procedure for estimation and reporting of uncertainty due to discretization in CFD
 * applications", J. Fluids Eng. 130, 078001, as published. {@link #estimate} is what figures use;
 * it agrees with the procedure where that is safe and departs from it where practice asks for it:
 *
 * <ul>
 *   <li>The difference between the finest and the coarsest grid is used, not that between the two
 *       finest: both give the same when the observed order fits, but with cell sizes 2 : 3 : 4 the
 *       wide pair is far less touched by noise. The factor of safety is 1.25.
 *   <li>Differences of one sign with an observed order in [0.5, 2]: the best value is extrapolated
 *       to zero cell size. Sharp lip corners make errors fall about with the first power of the
 *       cell size, smooth parts with the second; an order from three values varies widely, so it is
 *       limited to [1, 1.4] for the extrapolation and the band. The band stays that of the finest
 *       grid, 1.25 times the correction: it holds that grid's value too.
 *   <li>An order above that of the scheme, 2, or an extrapolation beyond zero is accidental: the
 *       value of the finest grid stands, with a band of order 1.
 *   <li>Differences of changing sign say nothing about the order: the finest value stands, the band
 *       is twice the range.
 *   <li>Differences of one sign that hardly shrink, order below 0.5, or grow: the finest value
 *       stands with the band of order 0.5, about three times the range.
 *   <li>Changes no larger than the iteration noise are noise: the finest value stands, the band is
 *       1.25 times the range.
 *   <li>Two grids: the finer value, order 1 and factor 3 (Roache 1994, J. Fluids Eng. 116, 405).
 *   <li>One grid gives no measure at all: a fifth of the value or of its natural scale, a rule of
 *       thumb without source, so that a number never stands without a band.
 * </ul>
 *
 * <p>The limits were set so that the band covers the true error in nine of ten made-up families:
 * error terms of order 1 to 3 in any mixture, with and without scatter up to a third of the error;
 * without scatter the extrapolated values are two to twenty times closer than those of the finest
 * grid, with it no worse (the test of this class). Turbulent lips follow {@link #calibrated}
 * instead. Widths are absolute: a value near zero needs no special care. Rules depend on ratios of
 * differences alone, so that figures in proportion, such as leak flow, discharge coefficient and
 * effective gap, stay in proportion.
 */
public final class ThreeGrid {
  private static final double SAFETY = 1.25;
  private static final double SAFETY_TWO_GRIDS = 3;
  private static final double SAFETY_OSCILLATING = 2;
  private static final double LEAST_ORDER = 0.5;
  private static final double HIGHEST_USED_ORDER = 1.4;
  private static final double SCHEME_ORDER = 2;
  private static final double CORNER_ORDER = 1;
  private static final double ONE_GRID_SHARE = 0.2;
  private static final double ROUND_OFF = 1e-13;
  private static final double FURTHEST = 1.5;
  private static final double OF_RANGE = 0.48;
  private static final double OF_LAST = 1.5;
  private static final double OF_GROWING = 2.5;
  private static final double NO_SIGN = 0.1;

  private ThreeGrid() {}

  /**
   * Outcome of the published procedure.
   *
   * @param order observed order p
   * @param extrapolated value at zero cell size, from the two finest grids
   * @param relativeChange |(φ1 − φ2) / φ1|
   * @param extrapolatedChange |(φext − φ1) / φext|
   * @param fineGridIndex half-width of the band over the value: 1.25 |(φ1 − φ2) / φ1| / (r21^p − 1)
   */
  public record Convergence(
      double order,
      double extrapolated,
      double relativeChange,
      double extrapolatedChange,
      double fineGridIndex) {}

  /**
   * The published procedure, without any limit on the order.
   *
   * @param value three values, coarsest grid first; neighbours must differ
   * @param size representative cell sizes, falling; only their ratios count
   * @return may hold infinities when the fine value is zero or no order fits
   */
  public static Convergence convergence(double[] value, double[] size) {
    if (value.length != 3 || size.length != 3) {
      throw new IllegalArgumentException("the procedure needs exactly three grids");
    }
    double r21 = size[1] / size[2];
    double r32 = size[0] / size[1];
    double p = observedOrder(value[1] - value[2], value[0] - value[1], r21, r32);
    double rp = Math.pow(r21, p);
    double extrapolated = (rp * value[2] - value[1]) / (rp - 1);
    double ea = Math.abs((value[2] - value[1]) / value[2]);
    return new Convergence(
        p,
        extrapolated,
        ea,
        Math.abs((extrapolated - value[2]) / extrapolated),
        SAFETY * ea / (rp - 1));
  }

  /**
   * Best value with its numerical and iteration half-widths from one to three grids.
   *
   * @param values the family
   * @param scale natural size of the figure, not negative; counts only where one grid is all there
   *     is
   */
  public static Estimate estimate(GridValues values, double scale) {
    int n = values.count();
    double best = values.value(n - 1);
    double iteration = values.iteration(n - 1);
    if (n == 1) {
      double width = ONE_GRID_SHARE * Math.max(Math.abs(best), scale);
      return new Estimate(best, width, iteration, 0, 0, Trend.UNKNOWN);
    }
    double e21 = values.value(n - 2) - best;
    double r21 = values.size(n - 2) / values.size(n - 1);
    if (n == 2) {
      double width = SAFETY_TWO_GRIDS * Math.abs(e21) / (Math.pow(r21, CORNER_ORDER) - 1);
      return new Estimate(best, width, iteration, 0, 0, Trend.UNKNOWN);
    }
    double r32 = values.size(n - 3) / values.size(n - 2);
    double e32 = values.value(n - 3) - values.value(n - 2);
    double range = Math.max(Math.abs(e21 + e32), Math.max(Math.abs(e21), Math.abs(e32)));
    Trend trend = trend(e21, e32, r21, r32, ROUND_OFF * Math.abs(best));
    if (range <= 2 * values.noise()) {
      return new Estimate(best, SAFETY * range, iteration, 0, 0, trend);
    }
    if (trend == Trend.OSCILLATING) {
      return new Estimate(best, SAFETY_OSCILLATING * range, iteration, 0, 0, trend);
    }
    double r31 = r21 * r32;
    double ratio = e32 / e21; // infinite where the finest two agree
    if (trend == Trend.DIVERGING || trend == Trend.SLOW) {
      double width = SAFETY * range / (Math.pow(r31, LEAST_ORDER) - 1);
      return new Estimate(best, width, iteration, 0, 0, trend);
    }
    double order = ratio <= differenceRatio(SCHEME_ORDER, r21, r32) ? order(ratio, r21, r32) : 0;
    double correction = -(e21 + e32) / (Math.pow(r31, Math.max(order, CORNER_ORDER)) - 1);
    double width = SAFETY * Math.abs(correction);
    boolean trusted = order > 0 && (best + correction) * best > 0;
    return new Estimate(trusted ? best + correction : best, width, iteration, 0, 0, trend);
  }

  /**
   * Best value and half-width for turbulent lips, fitted on sections solved on grids twice as fine
   * ({@link GridClass}).
   *
   * <p>The errors of such sections hardly follow an order: what three grids say only widens a band
   * that the kind of lip gives. Differences of one sign move the value on by the last of them,
   * which is between first and second order, and by no more than {@link #FURTHEST} least bands;
   * where they grow, or fall more slowly than with any order, the band holds {@link #OF_GROWING} of
   * it instead of {@link #OF_LAST}. A difference below {@link #NO_SIGN} of the last has the sign of
   * chance and counts as of the same.
   *
   * @param values the family
   * @param scale natural size of the figure, not negative; counts only where one grid is all there
   *     is
   * @param least least half-width, in the value's unit, positive
   */
  public static Estimate calibrated(GridValues values, double scale, double least) {
    Estimate plain = estimate(values, scale);
    int n = values.count();
    if (n < SectionFamily.GRIDS) {
      return with(plain, plain.value(), Math.max(plain.numerical(), least));
    }
    double best = values.value(n - 1);
    double last = best - values.value(n - 2);
    double first = values.value(n - 2) - values.value(n - 3);
    double range = Math.max(Math.abs(last + first), Math.max(Math.abs(last), Math.abs(first)));
    boolean noise = range <= 2 * values.noise();
    double most = FURTHEST * least;
    boolean chance = Math.abs(first) < NO_SIGN * Math.abs(last);
    boolean oneSign = chance || last * first > 0;
    double moved = oneSign && !noise ? Math.max(-most, Math.min(most, last)) : 0;
    double ofLast = chance || plain.trend() == Trend.DIVERGING ? OF_GROWING : OF_LAST;
    double width = Math.max(least, Math.max(OF_RANGE * range, ofLast * Math.abs(last)));
    return with(plain, best + moved, width);
  }

  private static Estimate with(Estimate e, double value, double numerical) {
    return new Estimate(value, numerical, e.iteration(), 0, 0, e.trend());
  }

  private static Trend trend(double e21, double e32, double r21, double r32, double roundOff) {
    boolean still21 = Math.abs(e21) <= roundOff;
    boolean still32 = Math.abs(e32) <= roundOff;
    if (still21) {
      return Trend.MONOTONE;
    }
    if (still32) {
      return Trend.DIVERGING;
    }
    if (e21 * e32 < 0) {
      return Trend.OSCILLATING;
    }
    double ratio = e32 / e21;
    if (ratio <= differenceRatio(0, r21, r32)) {
      return Trend.DIVERGING;
    }
    return ratio < differenceRatio(LEAST_ORDER, r21, r32) ? Trend.SLOW : Trend.MONOTONE;
  }

  /** Observed order within [1, 1.4], from differences of one sign that shrink. */
  private static double order(double ratio, double r21, double r32) {
    double low = CORNER_ORDER;
    double high = HIGHEST_USED_ORDER;
    if (ratio <= differenceRatio(low, r21, r32)) {
      return low;
    }
    if (ratio >= differenceRatio(high, r21, r32)) {
      return high;
    }
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (low + high);
      if (differenceRatio(middle, r21, r32) < ratio) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  /** e32 / e21 of a pure error term of order p: r21^p (r32^p − 1) / (r21^p − 1), rising in p. */
  private static double differenceRatio(double p, double r21, double r32) {
    if (p == 0) {
      return Math.log(r32) / Math.log(r21);
    }
    return Math.pow(r21, p) * (Math.pow(r32, p) - 1) / (Math.pow(r21, p) - 1);
  }

  /**
   * p = |ln|e32/e21| + q(p)| / ln r21, q(p) = ln((r21^p − s) / (r32^p − s)), s = sign(e32/e21), by
   * fixed-point iteration from q = 0.
   */
  private static double observedOrder(double e21, double e32, double r21, double r32) {
    double ratio = e32 / e21;
    double s = Math.signum(ratio);
    double p = Math.abs(Math.log(Math.abs(ratio))) / Math.log(r21);
    for (int i = 0; i < 200; i++) {
      double q = Math.log((Math.pow(r21, p) - s) / (Math.pow(r32, p) - s));
      double next = Math.abs(Math.log(Math.abs(ratio)) + q) / Math.log(r21);
      if (Math.abs(next - p) < 1e-12 * Math.max(1, p)) {
        return next;
      }
      p = next;
    }
    return p;
  }
}
