package hemline.validation.run;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.refine.GridSolution;
import hemline.solver.scheme.Boundary;

/** Balance of forces over a whole domain. */
final class Balance {
  private Balance() {}

  /**
   * Size of what pressure on all sides and solids, friction, and the momentum that enters and
   * leaves through the ends leave unbalanced along x, N/m.
   */
  static double force(GridSolution grid) {
    FlowSolution flow = grid.flow();
    if (flow == null) {
      return Double.NaN;
    }
    Mesh mesh = flow.problem().geometry().mesh;
    Boundary boundary = flow.problem().boundary();
    double sum = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      sum += flow.boundaryPressure()[b] * mesh.bnx[b] + flow.shearX()[b];
      if (mesh.bPatch[b] == Patch.LEFT || mesh.bPatch[b] == Patch.RIGHT) {
        double u =
            boundary.kind[b] == Boundary.VELOCITY
                ? flow.state().boundaryFlux[b] / mesh.bnx[b]
                : flow.state().u[mesh.bCell[b]];
        sum += flow.state().boundaryFlux[b] * u;
      }
    }
    return WallShear.of(grid, true).density() * Math.abs(sum);
  }
}
