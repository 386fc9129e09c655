package hemline.solver.refine;

import hemline.shared.result.Estimate;
import hemline.shared.result.GridRun;
import hemline.solver.flow.Closure;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Model part of a band: how far other plausible flow models lie to either side, at least the
 * residual that a turbulent model is known to have.
 */
final class ModelSpread {
  private final FigureSeries series;
  private final List<GridFamily> others;
  private final Closure closure;
  private final double gapReynolds;

  /**
   * Prepares for the figures of one answer.
   *
   * @param closure flow model of the answer
   * @param series runs it came from
   * @param others families under other models
   * @param gapReynolds of the answer
   */
  ModelSpread(Closure closure, FigureSeries series, List<GridFamily> others, double gapReynolds) {
    this.closure = closure;
    this.series = series;
    this.others = others;
    this.gapReynolds = gapReynolds;
  }

  /** True when a turbulent answer was compared with the second turbulent model. */
  boolean second() {
    return closure != Closure.LAMINAR
        && others.stream().anyMatch(other -> other.closure() != Closure.LAMINAR);
  }

  /** Share of the distance to another model that counts. */
  double weight(GridFamily other) {
    return TransitionFade.weight(closure, other.closure(), gapReynolds);
  }

  /**
   * The estimate with its model parts.
   *
   * @param estimate without model parts
   * @param of the quantity
   * @param residual least half-width where {@link #second} holds, in the quantity's unit
   */
  Estimate widen(Estimate estimate, ToDoubleFunction<GridRun> of, double residual) {
    double low = second() ? residual : 0;
    double high = low;
    for (GridFamily other : others) {
      double distance = weight(other) * distance(FigureSeries.of(other), of);
      low = Math.max(low, -distance);
      high = Math.max(high, distance);
    }
    return withSpread(estimate, low, high);
  }

  static Estimate withSpread(Estimate e, double low, double high) {
    return new Estimate(e.value(), e.numerical(), e.iteration(), low, high, e.trend());
  }

  /** Other minus this on the finest grid that both have; 0 when there is none. */
  private double distance(FigureSeries other, ToDoubleFunction<GridRun> of) {
    for (int k = Math.min(series.places(), other.places()) - 1; k >= 0; k--) {
      double distance = other.number(k, of) - series.number(k, of);
      if (Double.isFinite(distance)) {
        return distance;
      }
    }
    return 0;
  }
}
