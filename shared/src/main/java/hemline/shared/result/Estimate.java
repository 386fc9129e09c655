package hemline.shared.result;

/**
 * A computed value with its uncertainty; {@code low} and {@code high} always bracket {@code value}.
 *
 * <p>What the grid leaves open and what the flow model leaves open have nothing to do with each
 * other, so both parts of the band add as squares: JCGM 100:2008, "Guide to the expression of
 * uncertainty in measurement", 5.1.2; ASME V&amp;V 20-2009 combines numerical and other
 * uncertainties in the same way (both from memory). Unfinished iteration belongs to the grid's part
 * and adds to it in full.
 *
 * @param value best value, finite
 * @param numerical half-width from the grid, not negative
 * @param iteration half-width from incomplete or cycling iteration, not negative
 * @param modelLow how far below the value other plausible flow models lie, not negative
 * @param modelHigh how far above the value other plausible flow models lie, not negative
 * @param trend how the value behaved from grid to grid
 */
public record Estimate(
    double value,
    double numerical,
    double iteration,
    double modelLow,
    double modelHigh,
    Trend trend) {

  /** Behaviour of a value over a family of grids. */
  public enum Trend {
    /** Differences shrink with one sign, at an order of at least a half. */
    MONOTONE,
    /**
     * Differences of one sign shrink, but so slowly that no limit can be told: order below a half.
     */
    SLOW,
    /** Differences change sign. */
    OSCILLATING,
    /** Differences do not shrink; the band is the scatter itself. */
    DIVERGING,
    /** Fewer than three grids. */
    UNKNOWN
  }

  public Estimate {
    if (!Double.isFinite(value)
        || !(numerical >= 0)
        || !(iteration >= 0)
        || !(modelLow >= 0)
        || !(modelHigh >= 0)
        || !Double.isFinite(numerical + iteration + modelLow + modelHigh)) {
      throw new IllegalArgumentException(
          "an estimate needs a finite value and finite, non-negative widths, got "
              + value
              + " ± "
              + numerical
              + ", "
              + iteration
              + ", "
              + modelLow
              + ", "
              + modelHigh);
    }
  }

  public static Estimate exact(double value) {
    return new Estimate(value, 0, 0, 0, 0, Trend.UNKNOWN);
  }

  /** Lower end of the band: both parts together. */
  public double low() {
    return value - Math.hypot(grid(), modelLow);
  }

  /** Upper end of the band: both parts together. */
  public double high() {
    return value + Math.hypot(grid(), modelHigh);
  }

  /** Half-width of the grid's part, with what iteration leaves. */
  public double grid() {
    return numerical + iteration;
  }

  /** Half-width of the model part: half the distance between its ends. */
  public double model() {
    return 0.5 * (modelLow + modelHigh);
  }

  /**
   * The same estimate with one more independent uncertainty in its model part.
   *
   * @param more half-width, not negative
   */
  public Estimate with(double more) {
    return new Estimate(
        value,
        numerical,
        iteration,
        Math.hypot(modelLow, more),
        Math.hypot(modelHigh, more),
        trend);
  }

  /** The same estimate in another unit: every part times the factor, which may be negative. */
  public Estimate times(double factor) {
    double f = Math.abs(factor);
    return factor < 0
        ? new Estimate(
            value * factor, numerical * f, iteration * f, modelHigh * f, modelLow * f, trend)
        : new Estimate(
            value * factor, numerical * f, iteration * f, modelLow * f, modelHigh * f, trend);
  }
}
