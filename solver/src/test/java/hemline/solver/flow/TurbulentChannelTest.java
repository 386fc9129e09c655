package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Developed turbulent channel at Re_τ = 395 with near-wall cells from the sublayer to the log
 * layer.
 *
 * <p>Friction: Dean 1978, J. Fluids Eng. 100, 215–223, C_f = 0.073 Re_m^-1/4 on the full height and
 * bulk speed. The direct simulation of Moser, Kim & Mansour 1999, Phys. Fluids 11, 943 (bulk values
 * from memory) lies 3.5 % below Dean's line at this Reynolds number: C_f 0.00650 at Re_m 13 760.
 */
class TurbulentChannelTest {
  private static final double RE_TAU = 395;

  /** Half channel of height 1, friction velocity 1, ground below, symmetry above. */
  private static double frictionOverDean(Closure closure, int cells, double growth) {
    double[] y = new double[cells + 1];
    double size = 1;
    for (int j = 0; j < cells; j++) {
      y[j + 1] = y[j] + size;
      size *= growth;
    }
    double scale = 1 / y[cells];
    for (int j = 0; j <= cells; j++) {
      y[j] = j == cells ? 1 : y[j] * scale;
    }
    Mesh mesh = Flows.mesh(new GridLines(new double[] {0, 0.1}, y), List.of(), Patch.LEFT);
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boundary.kind[b] =
          switch (mesh.bPatch[b]) {
            case Patch.LEFT, Patch.RIGHT -> Boundary.NONE;
            case Patch.TOP -> Boundary.SLIP;
            default -> Boundary.WALL;
          };
    }
    FlowState start = Flows.rest(mesh);
    for (int c = 0; c < mesh.cells; c++) {
      start.u[c] = 18;
    }
    FlowProblem problem =
        Flows.problem(
            mesh, boundary, 1 / RE_TAU, closure, 1, false, new FlowProblem.Scales(1, 18, 1));
    FlowSolution flow = Flows.solve(problem, start);
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    double bulk = 0;
    for (int c = 0; c < mesh.cells; c++) {
      bulk += mesh.volume[c] * flow.state().u[c] / 0.1;
    }
    double friction = 2 / (bulk * bulk);
    double dean = 0.073 * Math.pow(2 * bulk * RE_TAU, -0.25);
    return friction / dean;
  }

  @ParameterizedTest(name = "SST, {0} cells, growth {1}")
  @CsvSource({"42, 1.15", "26, 1.15", "20, 1.15", "16, 1.15", "12, 1.15", "10, 1", "6, 1", "4, 1"})
  void sstFrictionIsWithinFivePercentOnAnySpacing(int cells, double growth) {
    assertThat(frictionOverDean(Closure.SST, cells, growth)).isCloseTo(1, within(0.05));
  }

  @ParameterizedTest(name = "SA, {0} cells, growth {1}")
  @CsvSource({"40, 1.15", "26, 1.15", "16, 1.15", "10, 1", "5, 1"})
  void oneEquationFrictionIsWithinTwelvePercentOnAnySpacing(int cells, double growth) {
    assertThat(frictionOverDean(Closure.SA, cells, growth)).isCloseTo(1, within(0.12));
  }
}
