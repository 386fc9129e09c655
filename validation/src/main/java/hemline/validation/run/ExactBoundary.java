package hemline.validation.run;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.validation.exact.PlaneFlow;
import java.util.Set;

/** Puts an exact flow on the sides of a domain and measures the distance to it inside. */
final class ExactBoundary {
  private ExactBoundary() {}

  /**
   * Gives the exact velocity on some sides: fluxes from the streamfunction, so that they sum to
   * zero, and means along the side by Simpson's rule.
   *
   * @param sides patches; the others stay walls at rest
   */
  static Boundary of(Mesh mesh, PlaneFlow exact, Set<Integer> sides) {
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int patch = mesh.bPatch[b];
      if (!sides.contains(patch)) {
        continue;
      }
      boundary.kind[b] = Boundary.VELOCITY;
      boolean upright = patch == Patch.LEFT || patch == Patch.RIGHT;
      double length = Math.hypot(mesh.bnx[b], mesh.bny[b]);
      double x = mesh.bx[b];
      double y = mesh.by[b];
      double dx = upright ? 0 : 0.5 * length;
      double dy = upright ? 0.5 * length : 0;
      double flux =
          (exact.streamfunction(x + dx, y + dy) - exact.streamfunction(x - dx, y - dy)) / length;
      boundary.u[b] =
          upright ? flux : mean(exact.u(x - dx, y - dy), exact.u(x, y), exact.u(x + dx, y + dy));
      boundary.v[b] =
          upright ? mean(exact.v(x - dx, y - dy), exact.v(x, y), exact.v(x + dx, y + dy)) : -flux;
    }
    return boundary;
  }

  private static double mean(double a, double b, double c) {
    return (a + 4 * b + c) / 6;
  }

  /** Root of the mean squared distance of the velocity in cells to the exact one. */
  static double velocityError(FlowSolution flow, PlaneFlow exact) {
    Mesh mesh = flow.problem().geometry().mesh;
    double sum = 0;
    double area = 0;
    for (int c = 0; c < mesh.cells; c++) {
      double du = flow.state().u[c] - exact.u(mesh.cx[c], mesh.cy[c]);
      double dv = flow.state().v[c] - exact.v(mesh.cx[c], mesh.cy[c]);
      sum += mesh.volume[c] * (du * du + dv * dv);
      area += mesh.volume[c];
    }
    return Math.sqrt(sum / area);
  }

  /** The same for the pressure, up to a constant. */
  static double pressureError(FlowSolution flow, PlaneFlow exact) {
    Mesh mesh = flow.problem().geometry().mesh;
    double shift = 0;
    double area = 0;
    for (int c = 0; c < mesh.cells; c++) {
      shift += mesh.volume[c] * (flow.state().p[c] - exact.pressure(mesh.cx[c], mesh.cy[c]));
      area += mesh.volume[c];
    }
    shift /= area;
    double sum = 0;
    for (int c = 0; c < mesh.cells; c++) {
      double dp = flow.state().p[c] - exact.pressure(mesh.cx[c], mesh.cy[c]) - shift;
      sum += mesh.volume[c] * dp * dp;
    }
    return Math.sqrt(sum / area);
  }

  /** Force of the fluid on the solids along x, over density and per metre of span. */
  static double forceX(FlowSolution flow) {
    return force(flow, true);
  }

  /** Force of the fluid on the solids along y, over density and per metre of span. */
  static double forceY(FlowSolution flow) {
    return force(flow, false);
  }

  private static double force(FlowSolution flow, boolean alongX) {
    Mesh mesh = flow.problem().geometry().mesh;
    double sum = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] >= Patch.FIRST_SOLID) {
        sum +=
            alongX
                ? flow.boundaryPressure()[b] * mesh.bnx[b] + flow.shearX()[b]
                : flow.boundaryPressure()[b] * mesh.bny[b] + flow.shearY()[b];
      }
    }
    return sum;
  }
}
