package hemline.solver.refine;

import hemline.shared.result.Estimate;
import hemline.shared.result.GridRun;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Widens an estimate by what other plausible flow models give. */
final class ModelSpread {
  private ModelSpread() {}

  /**
   * The estimate with the distance to each other model in its model parts.
   *
   * @param estimate without model parts
   * @param series runs it came from
   * @param others families under other models
   * @param of the quantity
   */
  static Estimate widen(
      Estimate estimate,
      FigureSeries series,
      List<GridFamily> others,
      ToDoubleFunction<GridRun> of) {
    double low = 0;
    double high = 0;
    for (GridFamily other : others) {
      double distance = distance(series, FigureSeries.of(other), of);
      low = Math.max(low, -distance);
      high = Math.max(high, distance);
    }
    return withSpread(estimate, low, high);
  }

  static Estimate withSpread(Estimate e, double low, double high) {
    return new Estimate(e.value(), e.numerical(), e.iteration(), low, high, e.trend());
  }

  /** Other minus this on the finest grid that both have; 0 when there is none. */
  private static double distance(
      FigureSeries series, FigureSeries other, ToDoubleFunction<GridRun> of) {
    for (int k = Math.min(series.places(), other.places()) - 1; k >= 0; k--) {
      double distance = other.number(k, of) - series.number(k, of);
      if (Double.isFinite(distance)) {
        return distance;
      }
    }
    return 0;
  }
}
