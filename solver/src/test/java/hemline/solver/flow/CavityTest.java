package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.SolveStatus;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Lid-driven cavity at Re 1000 on 128² cells.
 *
 * <p>Reference: Botella & Peyret 1998, Computers & Fluids 27, 421–433 (values from memory,
 * confirmed to 2e-5 by an independent computation); Ghia, Ghia & Shin 1982, J. Comput. Phys. 48,
 * 387–411 give the same within their grid error.
 */
class CavityTest {
  private static final int CELLS = 128;

  private static FlowProblem problem(int cells) {
    double[] lines = Flows.clustered(0, 1, cells, 1.2);
    Mesh mesh = Flows.mesh(new GridLines(lines, lines.clone()), List.of());
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.TOP) {
        boundary.u[b] = 1;
      }
    }
    return Flows.problem(
        mesh, boundary, 1e-3, Closure.LAMINAR, 0, false, new FlowProblem.Scales(1, 1, 1));
  }

  @Test
  void vortexAndCentreLinesAgreeWithTheSpectralSolution() {
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> problem(g == 0 ? CELLS / 2 : CELLS),
            2,
            0,
            0,
            StoppingLimits.FIELD,
            new CancelToken(),
            ProgressListener.NONE);
    FlowSolution flow = flows.get(1);
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    double vortex = Arrays.stream(flow.streamfunction()).min().orElseThrow();
    assertThat(vortex).isCloseTo(-0.1189366, within(0.005 * 0.1189366));
    double[] u = new double[CELLS];
    double[] v = new double[CELLS];
    Mesh mesh = flow.problem().geometry().mesh;
    int half = CELLS / 2;
    for (int k = 0; k < CELLS; k++) {
      u[k] =
          0.5
              * (flow.state().u[mesh.cellAt[k * CELLS + half - 1]]
                  + flow.state().u[mesh.cellAt[k * CELLS + half]]);
      v[k] =
          0.5
              * (flow.state().v[mesh.cellAt[(half - 1) * CELLS + k]]
                  + flow.state().v[mesh.cellAt[half * CELLS + k]]);
    }
    assertThat(Arrays.stream(u).min().orElseThrow())
        .isCloseTo(-0.3885698, within(0.01 * 0.3885698));
    assertThat(Arrays.stream(v).max().orElseThrow()).isCloseTo(0.3769447, within(0.01 * 0.3769447));
    assertThat(Arrays.stream(v).min().orElseThrow())
        .isCloseTo(-0.5270771, within(0.01 * 0.5270771));
  }
}
