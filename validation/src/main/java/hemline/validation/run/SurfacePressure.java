package hemline.validation.run;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.refine.GridSolution;
import java.util.Comparator;
import java.util.stream.IntStream;

/** Pressure on the surface of a solid. */
final class SurfacePressure {
  private SurfacePressure() {}

  /**
   * Pressure at a point of a surface, from the two nearest pieces of it; relative to any constant.
   */
  static double at(GridSolution grid, double x, double y) {
    FlowSolution flow = grid.flow();
    if (flow == null) {
      return Double.NaN;
    }
    Mesh mesh = flow.problem().geometry().mesh;
    int[] near =
        IntStream.range(0, mesh.boundaryFaces)
            .filter(b -> mesh.bPatch[b] >= Patch.FIRST_SOLID)
            .boxed()
            .sorted(Comparator.comparingDouble(b -> Math.hypot(mesh.bx[b] - x, mesh.by[b] - y)))
            .limit(2)
            .mapToInt(Integer::intValue)
            .toArray();
    if (near.length < 2) {
      return Double.NaN;
    }
    double a = Math.hypot(mesh.bx[near[0]] - x, mesh.by[near[0]] - y);
    double b = Math.hypot(mesh.bx[near[1]] - x, mesh.by[near[1]] - y);
    double share = a + b == 0 ? 0 : a / (a + b);
    double p =
        (1 - share) * flow.boundaryPressure()[near[0]] + share * flow.boundaryPressure()[near[1]];
    return WallShear.of(grid, true).density() * p;
  }
}
