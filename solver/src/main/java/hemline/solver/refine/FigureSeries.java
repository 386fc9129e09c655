package hemline.solver.refine;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * The runs of a family by place, with what is usable of them.
 *
 * <p>A grid is usable when its solve converged or cycled around a mean, and it has more cells than
 * the usable grid before it.
 */
final class FigureSeries {
  /** No figure of a real flow is this large in SI units; such a number is the wreck of a solve. */
  private static final double ABSURD = 1e60;

  private final List<GridRun> runs;
  private final boolean[] usable;
  private final double[] size;

  FigureSeries(List<GridRun> runs) {
    this.runs = List.copyOf(runs);
    usable = new boolean[runs.size()];
    size = new double[runs.size()];
    int cellsBefore = 0;
    for (int k = 0; k < runs.size(); k++) {
      GridRun run = runs.get(k);
      boolean settled =
          run.status() == SolveStatus.CONVERGED || run.status() == SolveStatus.UNSTEADY;
      usable[k] = settled && run.cells() > cellsBefore;
      size[k] = run.cells() > 0 ? 1 / Math.sqrt(run.cells()) : Double.NaN;
      if (usable[k]) {
        cellsBefore = run.cells();
      }
    }
  }

  static FigureSeries of(GridFamily family) {
    return new FigureSeries(family.runs());
  }

  static boolean sane(double value) {
    return Math.abs(value) < ABSURD;
  }

  int places() {
    return runs.size();
  }

  boolean usable(int k) {
    return k < usable.length && usable[k];
  }

  GridRun run(int k) {
    return runs.get(k);
  }

  /** Cell size of place k up to a common factor. */
  double size(int k) {
    return size[k];
  }

  /** Place of the finest usable grid, -1 when there is none. */
  int finest() {
    for (int k = usable.length - 1; k >= 0; k--) {
      if (usable[k]) {
        return k;
      }
    }
    return -1;
  }

  /** The figure at place k, or not a number where it is absent or the grid is not usable. */
  double scalar(Figure figure, int k) {
    return number(k, run -> run.figures().scalars().getOrDefault(figure, Double.NaN));
  }

  /** Any number of a run at place k, or not a number where the grid is not usable. */
  double number(int k, ToDoubleFunction<GridRun> of) {
    if (!usable(k)) {
      return Double.NaN;
    }
    double value = of.applyAsDouble(runs.get(k));
    return sane(value) ? value : Double.NaN;
  }

  /** Half the spread of the leak flow over the closing iterations, relative to the leak flow. */
  double relativeSpread(int k) {
    double leak = Math.abs(scalar(Figure.LEAK_FLOW, k));
    double spread = number(k, GridRun::leakSpread);
    if (!(leak > 0) || !(spread > 0)) {
      return 0;
    }
    return Math.min(1, spread / leak);
  }

  /**
   * A quantity as values over the usable grids.
   *
   * @param of the quantity
   * @param noise half-width left by iteration, from the quantity and the relative spread of the
   *     leak flow on that grid
   * @return null when no usable grid has it
   */
  @Nullable GridValues values(ToDoubleFunction<GridRun> of, Noise noise) {
    double[] value = new double[places()];
    double[] iteration = new double[places()];
    boolean any = false;
    for (int k = 0; k < places(); k++) {
      value[k] = number(k, of);
      boolean has = Double.isFinite(value[k]);
      any |= has;
      iteration[k] = has ? noise.of(value[k], relativeSpread(k)) : 0;
    }
    return any ? new GridValues(value, size, iteration) : null;
  }

  /** How the cycling of the leak flow shows in another quantity. */
  @FunctionalInterface
  interface Noise {
    double of(double value, double relativeSpread);
  }
}
