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
 * @param second what the second turbulence model makes of it: the value and the distance between
 *     both on a grid that both have; not a number where none was asked
 */
public record Measured(
    String quantity,
    String unit,
    Estimate estimate,
    List<GridPoint> grids,
    boolean hasBand,
    double second) {

  /** Value of a quantity on a grid. */
  public record GridPoint(int cells, double value) {}

  public Measured {
    grids = List.copyOf(grids);
  }

  /** A quantity without a second opinion. */
  public Measured(
      String quantity, String unit, Estimate estimate, List<GridPoint> grids, boolean hasBand) {
    this(quantity, unit, estimate, grids, hasBand, Double.NaN);
  }

  /** The same with other model parts of the band. */
  Measured withModel(double low, double high) {
    Estimate e = estimate;
    return new Measured(
        quantity,
        unit,
        new Estimate(e.value(), e.numerical(), e.iteration(), low, high, e.trend()),
        grids,
        hasBand,
        second);
  }

  /**
   * The same with a second opinion and the band that holds it.
   *
   * @param distance second turbulence model less this one; not a number where there is none
   * @param residual least half-width of the model part
   */
  Measured withSecond(double distance, double residual) {
    double away = Double.isFinite(distance) ? distance : 0;
    Measured wide = withModel(Math.max(residual, -away), Math.max(residual, away));
    return new Measured(quantity, unit, wide.estimate, grids, hasBand, estimate.value() + distance);
  }
}
