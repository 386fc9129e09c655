package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.SolveStatus;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Laminar flow over a backward-facing step at Re 800.
 *
 * <p>Reference: Gartling 1990, Int. J. Numer. Meth. Fluids 11, 953–967: reattachment on the lower
 * wall at 6.10 channel heights, upper eddy from 4.85 to 10.48 (from memory; an independent
 * computation gives 6.10, 4.80, 10.52). Channel height 1, parabola with mean speed 2 entering the
 * upper half.
 */
class BackwardStepTest {

  private static FlowProblem problem(int nx, int ny) {
    // spacing grows gently downstream
    double[] x = new double[nx + 1];
    for (int i = 0; i <= nx; i++) {
      double t = (double) i / nx;
      x[i] = 30 * (0.45 * t + 0.55 * t * t * t);
    }
    Mesh mesh = Flows.mesh(new GridLines(x, Flows.even(-0.5, 0.5, ny)), List.of(), Patch.LEFT);
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT && mesh.by[b] > 0) {
        boundary.kind[b] = Boundary.VELOCITY;
        // mean of 24 y (1/2 - y) over the face
        double a = mesh.by[b] - 0.5 / ny;
        double c = mesh.by[b] + 0.5 / ny;
        boundary.u[b] = 6 * (a + c) - 8 * (a * a + a * c + c * c);
      } else if (mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.OUTLET;
      }
    }
    return Flows.problem(
        mesh, boundary, 1.0 / 800, Closure.LAMINAR, 0, false, new FlowProblem.Scales(1, 1, 1));
  }

  /** Places along a wall where the shear along x changes sign, after the first step heights. */
  private static double[] zeroShear(FlowSolution flow, int patch) {
    Mesh mesh = flow.problem().geometry().mesh;
    double[] found = new double[8];
    int n = 0;
    double lastX = Double.NaN;
    double last = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] != patch) {
        continue;
      }
      double shear = flow.shearX()[b];
      if (mesh.bx[b] > 1 && !Double.isNaN(lastX) && last * shear < 0 && n < found.length) {
        found[n++] = lastX + (mesh.bx[b] - lastX) * last / (last - shear);
      }
      lastX = mesh.bx[b];
      last = shear;
    }
    return java.util.Arrays.copyOf(found, n);
  }

  @Test
  void eddiesEndWhereGartlingFoundThem() {
    int[] nx = {120, 240};
    int[] ny = {32, 64};
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> problem(nx[g], ny[g]),
            2,
            0,
            0,
            StoppingLimits.FIELD,
            new CancelToken(),
            ProgressListener.NONE);
    FlowSolution flow = flows.get(1);
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    double[] lower = zeroShear(flow, Patch.BOTTOM);
    double[] upper = zeroShear(flow, Patch.TOP);
    assertThat(lower).hasSize(1);
    assertThat(upper).hasSize(2);
    assertThat(lower[0]).isCloseTo(6.10, within(0.02 * 6.10));
    assertThat(upper[0]).isCloseTo(4.85, within(0.02 * 4.85));
    assertThat(upper[1]).isCloseTo(10.48, within(0.02 * 10.48));
  }
}
