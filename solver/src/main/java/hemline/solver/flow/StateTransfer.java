package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.Gradient;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;

/** Carries a flow from one mesh to another over the same or a similar domain. */
final class StateTransfer {
  private StateTransfer() {}

  /** Start state for a problem from the flow of another over the same domain. */
  static FlowState transfer(FlowProblem from, FlowState s, FlowProblem to) {
    return transfer(from, s, to, PlaceMap.same());
  }

  /**
   * Start state for a problem from the flow of a similar one.
   *
   * <p>Velocity and pressure are carried on with their gradients, the other fields cell by cell,
   * all in the scales of their problem; fluxes are interpolated and made to conserve mass by the
   * solver's first pass.
   *
   * @param from problem that the flow solves
   * @param s its flow, not modified
   * @param to problem to start
   * @param places of {@code from} that correspond to those of {@code to}
   */
  static FlowState transfer(FlowProblem from, FlowState s, FlowProblem to, PlaceMap places) {
    Mesh source = from.geometry().mesh;
    Mesh target = to.geometry().mesh;
    double velocity = to.scales().velocity() / from.scales().velocity();
    double pressure = to.scales().pressure() / from.scales().pressure();
    double length = to.scales().length() / from.scales().length();
    FlowState t = new FlowState(target.cells, target.faces, target.boundaryFaces);
    VelocityGradients g =
        new VelocityGradients(from.geometry(), from.boundary(), from.momentum().spanwise());
    g.update(s);
    double[] px = new double[source.cells];
    double[] py = new double[source.cells];
    double[] none = new double[source.boundaryFaces];
    new Gradient(from.geometry(), new boolean[source.boundaryFaces]).of(s.p, none, px, py);
    for (int c = 0; c < target.cells; c++) {
      double x = places.x(target.cx[c]);
      double y = places.y(target.cy[c]);
      int k = locate(source, x, y);
      double dx = x - source.cx[k];
      double dy = y - source.cy[k];
      t.u[c] = velocity * (s.u[k] + g.ux[k] * dx + g.uy[k] * dy);
      t.v[c] = velocity * (s.v[k] + g.vx[k] * dx + g.vy[k] * dy);
      t.w[c] = velocity * (s.w[k] + g.wx[k] * dx + g.wy[k] * dy);
      t.p[c] = pressure * (s.p[k] + px[k] * dx + py[k] * dy);
      t.k[c] = velocity * velocity * s.k[k];
      t.omega[c] = velocity / length * s.omega[k];
      t.nuTilde[c] = velocity * length * s.nuTilde[k];
      t.eddyViscosity[c] = velocity * length * s.eddyViscosity[k];
    }
    t.outletPressure = pressure * s.outletPressure;
    t.inletFlow = velocity * length * s.inletFlow;
    fluxes(t, to);
    return t;
  }

  private static void fluxes(FlowState t, FlowProblem to) {
    Mesh target = to.geometry().mesh;
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
            (to.boundary().u[b] + to.boundary().uPerFlow[b] * t.inletFlow) * target.bnx[b]
                + to.boundary().v[b] * target.bny[b];
      }
    }
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
