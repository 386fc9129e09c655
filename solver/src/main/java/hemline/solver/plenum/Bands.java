package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Carries the bands of the leaks through to any figure of the machine: the balance is solved with
 * all leaks as estimated, all at the low and all at the high end, and a figure's band reaches from
 * the least to the most of the three.
 *
 * <p>The band is shared out to grid, iteration and flow model as it is in the leaks.
 *
 * @param value state with leaks as estimated
 * @param low state with leaks at their low end; null when it has no operating point
 * @param high state with leaks at their high end; null when it has no operating point
 * @param numerical share of the band that comes from grids and interpolation
 * @param iteration share of the band that comes from iteration
 */
record Bands<T>(T value, @Nullable T low, @Nullable T high, double numerical, double iteration) {

  /** A figure of the machine. A side without operating point counts as far off as the value. */
  Estimate of(ToDoubleFunction<T> figure) {
    double v = figure.applyAsDouble(value);
    double a = low == null ? 0 : figure.applyAsDouble(low);
    double b = high == null ? 0 : figure.applyAsDouble(high);
    return of(v, a, b);
  }

  Estimate of(double v, double a, double b) {
    double down = Math.max(0, v - Math.min(a, b));
    double up = Math.max(0, Math.max(a, b) - v);
    double common = Math.min(down, up);
    double grid = numerical * common;
    double cycle = iteration * common;
    return new Estimate(
        v, grid, cycle, rest(down, grid + cycle), rest(up, grid + cycle), Estimate.Trend.UNKNOWN);
  }

  /** What adds as a square to a part so that both are the whole. */
  private static double rest(double whole, double part) {
    return Math.sqrt(Math.max(0, (whole - part) * (whole + part)));
  }

  <R> Bands<R> map(Function<T, R> to) {
    return new Bands<>(
        to.apply(value),
        low == null ? null : to.apply(low),
        high == null ? null : to.apply(high),
        numerical,
        iteration);
  }
}
