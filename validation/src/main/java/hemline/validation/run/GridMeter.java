package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.GridValues;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.ThreeGrid;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Measures a quantity on the grids of a family. */
final class GridMeter {
  private GridMeter() {}

  /**
   * Value and band of a quantity.
   *
   * @param scale natural size of the quantity
   * @param grids coarsest first
   * @param figure the estimate where the answer to the section has one already
   * @return null when no grid has the quantity
   */
  static @Nullable Measured measure(
      String quantity,
      Probe probe,
      double scale,
      List<GridSolution> grids,
      @Nullable Estimate figure) {
    List<Measured.GridPoint> points = new ArrayList<>();
    double[] values = new double[grids.size()];
    double[] sizes = new double[values.length];
    for (int g = 0; g < values.length; g++) {
      GridSolution grid = grids.get(g);
      SolveStatus status = grid.run().status();
      boolean usable = status == SolveStatus.CONVERGED || status == SolveStatus.UNSTEADY;
      values[g] = usable ? probe.of(grid) : Double.NaN;
      sizes[g] = 1 / Math.sqrt(Math.max(1, grid.run().cells()));
      if (Double.isFinite(values[g])) {
        points.add(new Measured.GridPoint(grid.run().cells(), values[g]));
      }
    }
    if (points.isEmpty()) {
      return null;
    }
    Estimate estimate = figure;
    if (estimate == null) {
      estimate =
          probe.distance()
              ? Estimate.exact(points.get(points.size() - 1).value())
              : ThreeGrid.estimate(new GridValues(values, sizes, new double[values.length]), scale);
    }
    boolean hasBand = !probe.distance() && points.size() == SectionFamily.GRIDS;
    return new Measured(quantity, probe.unit(), estimate, points, hasBand);
  }

  /**
   * Observed order of a quantity that falls to zero with the cell size, from the two finest grids.
   *
   * @param sizes cells per length on each grid
   */
  static double order(List<Measured.GridPoint> points, int[] sizes) {
    int n = sizes.length;
    double fall = points.get(n - 2).value() / points.get(n - 1).value();
    return Math.log(Math.abs(fall)) / Math.log((double) sizes[n - 1] / sizes[n - 2]);
  }
}
