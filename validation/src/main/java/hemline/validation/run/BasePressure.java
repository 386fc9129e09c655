package hemline.validation.run;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.refine.GridSolution;

/**
 * Pressures of a lip in a duct against the total pressure before it and the pressure on its
 * downstream face; lengths in gaps, mean speed in the gap and density 1.
 */
final class BasePressure {
  /** Where the total pressure is taken, upstream edge of the lip at 0. */
  private static final double BEFORE = -6.5;

  /** Stretch of the downstream face whose mean pressure counts. */
  private static final double FROM = 2;

  private static final double TO = 6;

  private BasePressure() {}

  /** C_d = q / (h √(2 (p_t − p_base) / ρ)) at unit flow, gap and density. */
  static double coefficient(GridSolution grid) {
    FlowSolution flow = grid.flow();
    return flow == null ? Double.NaN : 1 / Math.sqrt(2 * (total(flow, grid) - base(flow)));
  }

  /** (p_t − p) / (p_t − p_base) with p at a place in the fluid. */
  static double share(GridSolution grid, double x, double y) {
    FlowSolution flow = grid.flow();
    if (flow == null) {
      return Double.NaN;
    }
    double total = total(flow, grid);
    double there = new FieldSampler(grid.field()).at(flow.state().p, x, y);
    return (total - there) / (total - base(flow));
  }

  /** (p − p_t) / (½ ρ U²) with p on the ground at a place. */
  static double onGround(GridSolution grid, double x) {
    FlowSolution flow = grid.flow();
    if (flow == null) {
      return Double.NaN;
    }
    double there = new FieldSampler(grid.field()).at(flow.state().p, x, 1e-6);
    return 2 * (there - total(flow, grid));
  }

  /** Mean over the height of the total pressure over density before the lip. */
  private static double total(FlowSolution flow, GridSolution grid) {
    FieldSampler sampler = new FieldSampler(grid.field());
    double[] y = flow.problem().geometry().mesh.lines.y();
    double sum = 0;
    for (int j = 0; j + 1 < y.length; j++) {
      double middle = 0.5 * (y[j] + y[j + 1]);
      double u = sampler.at(flow.state().u, BEFORE, middle);
      sum += (y[j + 1] - y[j]) * (sampler.at(flow.state().p, BEFORE, middle) + 0.5 * u * u);
    }
    return sum / (y[y.length - 1] - y[0]);
  }

  /** Mean pressure over density on the part of the last face that looks downstream. */
  private static double base(FlowSolution flow) {
    Mesh mesh = flow.problem().geometry().mesh;
    double end = Double.NEGATIVE_INFINITY;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] >= Patch.FIRST_SOLID) {
        end = Math.max(end, mesh.bx[b]);
      }
    }
    double sum = 0;
    double length = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boolean last = mesh.bPatch[b] >= Patch.FIRST_SOLID && mesh.bx[b] > end - 1e-6;
      if (last && mesh.by[b] > FROM && mesh.by[b] < TO) {
        sum += Math.abs(mesh.bnx[b]) * flow.boundaryPressure()[b];
        length += Math.abs(mesh.bnx[b]);
      }
    }
    return sum / length;
  }
}
