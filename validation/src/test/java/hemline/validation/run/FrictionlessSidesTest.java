package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.SteadyFlowSolver;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.validation.exact.Kovasznay;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Kovasznay's flow between two of its lines of symmetry, y = -0.5 and y = 0.5, taken as
 * frictionless walls. The gradient of v along the normal is large there, so a wall that forgets the
 * viscous stress along its normal shows.
 */
class FrictionlessSidesTest {

  private static double error(int cells) {
    Kovasznay exact = new Kovasznay(10);
    Set<Integer> ends = Set.of(Patch.LEFT, Patch.RIGHT);
    Mesh mesh =
        MeshBuilder.build(
            new GridLines(Problems.even(-0.5, 1, 3 * cells / 2), Problems.even(-0.5, 0.5, cells)),
            List.of(),
            ends);
    Boundary boundary = ExactBoundary.of(mesh, exact, ends);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (!ends.contains(mesh.bPatch[b])) {
        boundary.kind[b] = Boundary.SLIP;
      }
    }
    FlowProblem problem =
        Problems.laminar(mesh, boundary, 0.1, false, new FlowProblem.Scales(1, 1, 1));
    FlowState rest = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    FlowSolution flow =
        new SteadyFlowSolver(
                problem,
                rest,
                new StoppingLimits(600, 100, 30, 1e-6, 1e-6, 1e-6),
                new CancelToken())
            .solve();
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    return ExactBoundary.velocityError(flow, exact);
  }

  @Test
  void frictionlessWallsAreSecondOrder() {
    double coarse = error(24);
    double fine = error(48);
    assertThat(Math.log(coarse / fine) / Math.log(2))
        .as("order from %.2e to %.2e", coarse, fine)
        .isGreaterThan(1.9);
  }
}
