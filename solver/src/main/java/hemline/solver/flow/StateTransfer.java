package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;

/** Carries a flow from one mesh to another over the same or a similar domain. */
final class StateTransfer {
  private StateTransfer() {}

  /**
   * Start state for a problem from the flow of another.
   *
   * <p>Velocity is carried on with its gradient, the other fields cell by cell; fluxes are
   * interpolated and made to conserve mass by the solver's first pass.
   *
   * @param from problem that the flow solves
   * @param s its flow, not modified
   * @param to problem to start
   */
  static FlowState transfer(FlowProblem from, FlowState s, FlowProblem to) {
    Mesh source = from.geometry().mesh;
    Mesh target = to.geometry().mesh;
    FlowState t = new FlowState(target.cells, target.faces, target.boundaryFaces);
    VelocityGradients g = new VelocityGradients(from.geometry(), from.boundary(), from.spanwise());
    g.update(s);
    for (int c = 0; c < target.cells; c++) {
      int k = locate(source, target.cx[c], target.cy[c]);
      double dx = target.cx[c] - source.cx[k];
      double dy = target.cy[c] - source.cy[k];
      t.u[c] = s.u[k] + g.ux[k] * dx + g.uy[k] * dy;
      t.v[c] = s.v[k] + g.vx[k] * dx + g.vy[k] * dy;
      t.w[c] = s.w[k] + g.wx[k] * dx + g.wy[k] * dy;
      t.p[c] = s.p[k];
      t.k[c] = s.k[k];
      t.omega[c] = s.omega[k];
      t.nuTilde[c] = s.nuTilde[k];
      t.eddyViscosity[c] = s.eddyViscosity[k];
    }
    for (int f = 0; f < target.faces; f++) {
      double[] q = target.vertical[f] ? t.u : t.v;
      double wo = to.geometry().ownerWeight[f];
      t.flux[f] = target.area[f] * (wo * q[target.owner[f]] + (1 - wo) * q[target.neighbour[f]]);
    }
    for (int b = 0; b < target.boundaryFaces; b++) {
      int c = target.bCell[b];
      if (to.boundary().isOpen(b)) {
        t.boundaryFlux[b] = t.u[c] * target.bnx[b] + t.v[c] * target.bny[b];
      } else if (to.boundary().kind[b] == Boundary.VELOCITY) {
        t.boundaryFlux[b] =
            (to.boundary().u[b] + to.boundary().uPerFlow[b] * s.inletFlow) * target.bnx[b]
                + to.boundary().v[b] * target.bny[b];
      }
    }
    t.outletPressure = s.outletPressure;
    t.inletFlow = s.inletFlow;
    return t;
  }

  /** Cell at a point, or the nearest fluid cell of the rectangles around. */
  private static int locate(Mesh mesh, double x, double y) {
    int i = index(mesh.lines.x(), x);
    int j = index(mesh.lines.y(), y);
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    int here = mesh.cellAt[j * nx + i];
    if (here >= 0) {
      return here;
    }
    int best = -1;
    double bestDistance = Double.POSITIVE_INFINITY;
    for (int reach = 1; best < 0 && reach < Math.max(nx, ny); reach++) {
      for (int l = Math.max(0, j - reach); l <= Math.min(ny - 1, j + reach); l++) {
        for (int k = Math.max(0, i - reach); k <= Math.min(nx - 1, i + reach); k++) {
          int c = mesh.cellAt[l * nx + k];
          if (c >= 0) {
            double d = Math.hypot(mesh.cx[c] - x, mesh.cy[c] - y);
            if (d < bestDistance) {
              bestDistance = d;
              best = c;
            }
          }
        }
      }
    }
    return best;
  }

  private static int index(double[] lines, double x) {
    int k = Arrays.binarySearch(lines, x);
    int i = k >= 0 ? k : -k - 2;
    return Math.max(0, Math.min(lines.length - 2, i));
  }
}
