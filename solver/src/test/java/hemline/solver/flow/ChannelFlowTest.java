package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.geometry.Ring;
import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Developed channel flows against their exact solutions.
 *
 * <p>Couette–Poiseuille flow: u = U η + G h²/(2 ν) η (1 - η) with η = y/h from the resting wall and
 * G the driving force per mass; textbook (White, Viscous Fluid Flow).
 */
class ChannelFlowTest {

  /** One column of cells: developed flow that does not vary along x. */
  private static double couettePoiseuilleError(int cells, double wall, double span, double force) {
    Mesh mesh =
        Flows.mesh(
            new GridLines(new double[] {0, 0.1}, Flows.even(0, 1, cells)), List.of(), Patch.LEFT);
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT || mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.NONE;
      } else if (mesh.bPatch[b] == Patch.TOP) {
        boundary.u[b] = wall;
        boundary.w[b] = span;
      }
    }
    FlowSolution flow =
        Flows.solve(
            Flows.problem(
                mesh,
                boundary,
                1,
                Closure.LAMINAR,
                force,
                span != 0,
                new FlowProblem.Scales(1, 1, 1)),
            Flows.rest(mesh));
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    double sum = 0;
    for (int c = 0; c < mesh.cells; c++) {
      double y = mesh.cy[c];
      double u = wall * y + 0.5 * force * y * (1 - y);
      double w = span * y;
      sum +=
          mesh.volume[c]
              * (Math.pow(flow.state().u[c] - u, 2) + Math.pow(flow.state().w[c] - w, 2));
    }
    return Math.sqrt(sum / 0.1);
  }

  @Test
  void couettePoiseuilleIsSecondOrder() {
    for (double wall : new double[] {0, 1, -1}) {
      double coarse = couettePoiseuilleError(16, wall, 0.5, 6);
      double fine = couettePoiseuilleError(32, wall, 0.5, 6);
      assertThat(Flows.order(coarse, fine)).as("wall speed %s", wall).isGreaterThan(1.9);
      assertThat(fine).isLessThan(1e-2);
    }
  }

  /** Channel of height 1 laid at 20° across the grid; returns velocity error and pressure error. */
  private static double[] slantedErrors(int perHeight) {
    double angle = Math.toRadians(20);
    double tan = Math.tan(angle);
    double half = 0.5 / Math.cos(angle);
    double length = 4;
    double rise = length * tan;
    double height = rise + 2 * half + 0.6;
    double low = -0.3 - half;
    // walls y = x tan ± half
    Ring below =
        new Ring(
            new double[] {-1, length + 1, length + 1, -1},
            new double[] {low - 2, low - 2, (length + 1) * tan - half, -tan - half});
    Ring above =
        new Ring(
            new double[] {-1, length + 1, length + 1, -1},
            new double[] {
              -tan + half, (length + 1) * tan + half, low + height + 2, low + height + 2
            });
    int nx = (int) Math.round(length * perHeight);
    int ny = (int) Math.round(height * perHeight);
    Mesh mesh =
        Flows.mesh(
            new GridLines(Flows.even(0, length, nx), Flows.even(low, low + height, ny)),
            List.of(below, above),
            Patch.LEFT,
            Patch.RIGHT);
    Boundary boundary = new Boundary(mesh);
    double re = 20;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT || mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.VELOCITY;
        double s = faceMean(mesh, b, angle, Math.abs(mesh.bnx[b]));
        boundary.u[b] = s * Math.cos(angle);
        boundary.v[b] = s * Math.sin(angle);
      }
    }
    FlowSolution flow =
        Flows.solve(
            Flows.problem(
                mesh, boundary, 1 / re, Closure.LAMINAR, 0, false, new FlowProblem.Scales(1, 1, 1)),
            Flows.rest(mesh));
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    double sum = 0;
    double volume = 0;
    double sp = 0;
    double ss = 0;
    double mean = 0;
    double meanS = 0;
    for (int c = 0; c < mesh.cells; c++) {
      double n = mesh.cy[c] * Math.cos(angle) - mesh.cx[c] * Math.sin(angle);
      double u = 1.5 * (1 - 4 * n * n);
      double du = flow.state().u[c] - u * Math.cos(angle);
      double dv = flow.state().v[c] - u * Math.sin(angle);
      sum += mesh.volume[c] * (du * du + dv * dv);
      volume += mesh.volume[c];
      double s = mesh.cx[c] * Math.cos(angle) + mesh.cy[c] * Math.sin(angle);
      mean += mesh.volume[c] * flow.state().p[c];
      meanS += mesh.volume[c] * s;
    }
    mean /= volume;
    meanS /= volume;
    for (int c = 0; c < mesh.cells; c++) {
      double s = mesh.cx[c] * Math.cos(angle) + mesh.cy[c] * Math.sin(angle) - meanS;
      sp += mesh.volume[c] * s * (flow.state().p[c] - mean);
      ss += mesh.volume[c] * s * s;
    }
    // dp/ds = -12 ν u_mean / h²
    double gradient = sp / ss / (-12 / re);
    return new double[] {Math.sqrt(sum / volume), Math.abs(gradient - 1)};
  }

  /** Mean of the exact speed over a vertical face, exact for the parabola (Simpson). */
  private static double faceMean(Mesh mesh, int b, double angle, double length) {
    double sum = 0;
    double[] weight = {1.0 / 6, 4.0 / 6, 1.0 / 6};
    for (int k = 0; k < 3; k++) {
      double y = mesh.by[b] + (k - 1) * 0.5 * length;
      double n = y * Math.cos(angle) - mesh.bx[b] * Math.sin(angle);
      sum += weight[k] * 1.5 * (1 - 4 * n * n);
    }
    return sum;
  }

  @Test
  void channelAcrossTheGridIsSecondOrderThroughCutCells() {
    double[] coarse = slantedErrors(8);
    double[] medium = slantedErrors(16);
    double[] fine = slantedErrors(32);
    String all =
        String.format(
            "velocity %.2e %.2e %.2e, pressure gradient %.2e %.2e %.2e",
            coarse[0], medium[0], fine[0], coarse[1], medium[1], fine[1]);
    assertThat(0.5 * Flows.order(coarse[0], fine[0])).as(all).isGreaterThan(1.7);
    assertThat(fine[1]).as(all).isLessThan(2e-3);
  }

  @Test
  void startDoesNotMatter() {
    Mesh mesh = Flows.mesh(new GridLines(Flows.even(0, 1, 16), Flows.even(0, 1, 16)), List.of());
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.TOP) {
        boundary.u[b] = 1;
      }
    }
    FlowProblem problem =
        Flows.problem(
            mesh, boundary, 0.01, Closure.LAMINAR, 0, false, new FlowProblem.Scales(1, 1, 1));
    FlowState stirred = Flows.rest(mesh);
    for (int c = 0; c < mesh.cells; c++) {
      stirred.u[c] = 0.3 * Math.sin(7.0 * c);
    }
    double a = Flows.solve(problem, Flows.rest(mesh)).outcome().figure();
    double b = Flows.solve(problem, stirred).outcome().figure();
    assertThat(b).isCloseTo(a, org.assertj.core.api.Assertions.within(1e-5 * a));
  }
}
