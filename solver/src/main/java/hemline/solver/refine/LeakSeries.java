package hemline.solver.refine;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.section.Section;
import hemline.solver.grid.MeshLevel;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Leak flow over the places of a grid family, ready for sums and ratios.
 *
 * <p>Ratios are formed place by place and then refined like any figure: two lips solved on matching
 * families share most of their grid error, and it cancels in the ratio. Series with the same
 * numbers are equal: they are one lip's, whatever it is called.
 */
public final class LeakSeries {
  /** Below this gap Reynolds number there is no leak to speak of, only round-off. */
  private static final double LEAST_REYNOLDS = 1e-9;

  private final double[] leak;
  private final double[] size;
  private final double[] spread;

  /** Least half-width of the numerical part, of the value. */
  private final double least;

  private LeakSeries(double[] leak, double[] size, double[] spread, double least) {
    this.leak = leak;
    this.size = size;
    this.spread = spread;
    this.least = least;
  }

  /**
   * Leak flow of a family.
   *
   * @param runs coarsest first, by place
   * @param kinematicViscosity m²/s
   */
  public static LeakSeries of(List<GridRun> runs, double kinematicViscosity) {
    return of(runs, kinematicViscosity, 0);
  }

  private static LeakSeries of(List<GridRun> runs, double kinematicViscosity, double least) {
    FigureSeries series = new FigureSeries(runs);
    int n = runs.size();
    double[] leak = new double[n];
    double[] size = new double[n];
    double[] spread = new double[n];
    for (int k = 0; k < n; k++) {
      double q = series.scalar(Figure.LEAK_FLOW, k);
      leak[k] = Math.abs(q) > LEAST_REYNOLDS * kinematicViscosity ? q : Double.NaN;
      spread[k] = Double.isFinite(leak[k]) ? Math.abs(q) * series.relativeSpread(k) : 0;
      double relative = series.size(k) / series.size(0);
      size[k] = Double.isFinite(relative) ? relative : 2.0 / (2 + k);
    }
    return new LeakSeries(leak, size, spread, least);
  }

  /**
   * Leak flow of a family, with the least band of its kind of lip; where the finest grid holds two
   * flows, the spread there reaches both.
   *
   * @param level of its grids
   */
  public static LeakSeries of(GridFamily family, Section section, MeshLevel level) {
    LeakSeries series =
        of(
            family.runs(),
            section.fluid().kinematicViscosity(),
            GridClass.leastWidth(section, level, family.closure()));
    if (family.other() != null) {
      int k = series.places() - 1;
      double other = family.other().figures().scalars().getOrDefault(Figure.LEAK_FLOW, Double.NaN);
      double distance = Math.abs(other - series.leak[k]);
      series.spread[k] = Math.max(series.spread[k], Double.isFinite(distance) ? distance : 0);
    }
    return series;
  }

  /**
   * Place by place weighted sum; a place is usable where it is in all parts. Independent cycling
   * adds as squares.
   *
   * @param parts at least one
   * @param weights one for each part, not negative
   */
  public static LeakSeries sum(List<LeakSeries> parts, List<Double> weights) {
    int n = parts.stream().mapToInt(LeakSeries::places).min().orElseThrow();
    double[] leak = new double[n];
    double[] size = new double[n];
    double[] spread = new double[n];
    double least = parts.stream().mapToDouble(part -> part.least).max().orElse(0);
    for (int k = 0; k < n; k++) {
      for (int i = 0; i < parts.size(); i++) {
        LeakSeries part = parts.get(i);
        double weight = weights.get(i);
        leak[k] += weight * part.leak[k];
        size[k] += part.size[k] / parts.size();
        spread[k] = Math.hypot(spread[k], weight * part.spread[k]);
      }
    }
    return new LeakSeries(leak, size, spread, least);
  }

  public int places() {
    return leak.length;
  }

  /** Leak flow at place k, m²/s; not a number where the grid has none. */
  public double leak(int k) {
    return leak[k];
  }

  /** Cell size at place k over that at place 0. */
  public double size(int k) {
    return size[k];
  }

  /** Half the spread of the leak flow left by iteration at place k, m²/s. */
  public double spread(int k) {
    return spread[k];
  }

  /** Leak flow on the finest usable grid, m²/s; not a number when there is none. */
  public double finest() {
    for (int k = leak.length - 1; k >= 0; k--) {
      if (Double.isFinite(leak[k])) {
        return leak[k];
      }
    }
    return Double.NaN;
  }

  /** True when at least one grid has a leak flow. */
  public boolean usable() {
    return Double.isFinite(finest());
  }

  /** This leak over another at place k; not a number unless both run the same way there. */
  public double over(LeakSeries other, int k) {
    double ratio = k < places() && k < other.places() ? leak[k] / other.leak[k] : Double.NaN;
    return ratio > 0 && Double.isFinite(ratio) ? ratio : Double.NaN;
  }

  /**
   * This leak over another as an estimate with its own grid convergence.
   *
   * @return null when no grid has both leaks with the same direction
   */
  public @Nullable Estimate over(LeakSeries other) {
    if (equals(other)) {
      return usable() ? Estimate.exact(1) : null;
    }
    int n = Math.min(places(), other.places());
    double[] ratio = new double[n];
    double[] sizes = new double[n];
    double[] noise = new double[n];
    boolean any = false;
    for (int k = 0; k < n; k++) {
      ratio[k] = over(other, k);
      sizes[k] = Math.sqrt(size[k] * other.size[k]);
      if (Double.isFinite(ratio[k])) {
        any = true;
        noise[k] =
            ratio[k]
                * Math.hypot(
                    spread[k] / Math.abs(leak[k]), other.spread[k] / Math.abs(other.leak[k]));
      }
    }
    return any ? estimate(new GridValues(ratio, sizes, noise), Math.max(least, other.least)) : null;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LeakSeries series
        && Arrays.equals(leak, series.leak)
        && Arrays.equals(size, series.size)
        && Arrays.equals(spread, series.spread)
        && least == series.least;
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(leak);
  }

  /** Errors of two lips cancel in part: the campaign's ratios keep to the larger of both bands. */
  private static Estimate estimate(GridValues ratio, double least) {
    double finest = ratio.value(ratio.count() - 1);
    return least > 0
        ? ThreeGrid.calibrated(ratio, 1, least * finest)
        : ThreeGrid.estimate(ratio, 1);
  }
}
