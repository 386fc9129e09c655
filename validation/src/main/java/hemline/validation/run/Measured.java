package hemline.validation.run;

import hemline.shared.result.Estimate;
import java.util.List;

/**
 * A computed quantity of a case.
 *
 * @param quantity as the case names it
 * @param unit SI, "1" for a pure number
 * @param estimate value and band
 * @param grids the value on each grid, coarsest first; empty for a formula
 * @param hasBand true when the band claims to hold the true value: it comes from three grids and
 *     the quantity is a value of its own, not an order or a distance
 */
public record Measured(
    String quantity, String unit, Estimate estimate, List<GridPoint> grids, boolean hasBand) {

  /** Value of a quantity on a grid. */
  public record GridPoint(int cells, double value) {}

  public Measured {
    grids = List.copyOf(grids);
  }

  /** The same with other model parts of the band. */
  Measured withModel(double low, double high) {
    Estimate e = estimate;
    return new Measured(
        quantity,
        unit,
        new Estimate(e.value(), e.numerical(), e.iteration(), low, high, e.trend()),
        grids,
        hasBand);
  }
}
