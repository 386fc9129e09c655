package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A turbulent channel of height 1 and mean speed 1 laid across a square grid: friction cannot hang
 * on the angle between walls and grid lines.
 *
 * <p>Friction: Dean 1978, J. Fluids Eng. 100, 215–223, C_f = 0.073 Re_m^-1/4.
 */
class SlantedChannelTest {
  private static final double REYNOLDS = 13_750;
  private static final double DEAN = 0.073 * Math.pow(REYNOLDS, -0.25);
  private static final int CELLS = 12;
  private static final double LENGTH = 14;

  @ParameterizedTest(name = "{0} at {1} degrees")
  @CsvSource({"SST, 10", "SST, 35", "SA, 20"})
  void frictionIsThatOfTheStraightChannelAndSmooth(Closure closure, double degrees) {
    DoubleSummaryStatistics straight = friction(closure, 0);
    DoubleSummaryStatistics slanted = friction(closure, Math.toRadians(degrees));
    double mean = slanted.getAverage();
    assertThat(mean).isCloseTo(straight.getAverage(), within(0.05 * straight.getAverage()));
    assertThat(slanted.getMin()).isGreaterThan(0.95 * mean);
    assertThat(slanted.getMax()).isLessThan(1.05 * mean);
    if (closure == Closure.SST) {
      assertThat(mean).isCloseTo(DEAN, within(0.05 * DEAN));
    }
  }

  /** Friction coefficients of the wall faces where the flow has developed, tiny faces left out. */
  private static DoubleSummaryStatistics friction(Closure closure, double angle) {
    FlowSolution flow = solve(closure, angle);
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    DoubleSummaryStatistics friction = new DoubleSummaryStatistics();
    Mesh mesh = flow.problem().geometry().mesh;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      double along = mesh.bx[b] * Math.cos(angle) + mesh.by[b] * Math.sin(angle);
      double area = flow.problem().geometry().bArea[b];
      if (flow.problem().boundary().kind[b] == Boundary.WALL
          && along > 0.65 * LENGTH
          && along < 0.9 * LENGTH
          && area > 0.1 / CELLS) {
        double force = flow.shearX()[b] * Math.cos(angle) + flow.shearY()[b] * Math.sin(angle);
        friction.accept(2 * force / area);
      }
    }
    return friction;
  }

  private static FlowSolution solve(Closure closure, double angle) {
    double tangent = Math.tan(angle);
    double upright = 1 / Math.cos(angle);
    double length = LENGTH * Math.cos(angle);
    double top = length * tangent + upright;
    int across = (int) Math.round(top * CELLS);
    GridLines lines =
        new GridLines(
            Flows.even(0, length, (int) Math.round(length * CELLS)), Flows.even(0, top, across));
    Ring below =
        new Ring(
            new double[] {-1, length + 1, length + 1},
            new double[] {-tangent, -2, top - upright + tangent});
    Ring above =
        new Ring(
            new double[] {-1, -1, length + 1},
            new double[] {top + 2 * tangent, upright - tangent, top + tangent});
    Mesh mesh =
        Flows.mesh(lines, angle == 0 ? List.of() : List.of(below, above), Patch.LEFT, Patch.RIGHT);
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT) {
        boundary.kind[b] = Boundary.VELOCITY;
        double half = 0.5 * Math.abs(mesh.bnx[b]);
        double low = (mesh.by[b] - half) / upright;
        double high = (mesh.by[b] + half) / upright;
        double mean = (flowBelow(high) - flowBelow(low)) / (high - low);
        boundary.u[b] = mean * Math.cos(angle);
        boundary.v[b] = mean * Math.sin(angle);
      } else if (mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.OUTLET;
      }
    }
    FlowState start = Flows.rest(mesh);
    Arrays.fill(start.u, Math.cos(angle));
    Arrays.fill(start.v, Math.sin(angle));
    Arrays.fill(start.k, 0.004);
    Arrays.fill(start.omega, 1);
    Arrays.fill(start.nuTilde, 0.004);
    Arrays.fill(start.eddyViscosity, 0.004);
    boolean[] all = new boolean[mesh.cells];
    Arrays.fill(all, true);
    double[] share = new double[mesh.faces];
    Arrays.fill(share, 1);
    FlowProblem problem =
        new FlowProblem(
            new FaceGeometry(mesh),
            boundary,
            closure,
            new FlowProblem.Momentum(1 / REYNOLDS, 0, false, share, all),
            new FlowProblem.Turbulence(
                WallDistance.of(mesh, boundary.walls()),
                new FlowProblem.InflowTurbulence(0.004, 0.004, 0.004)),
            Flows.watch(mesh),
            new FlowProblem.Scales(1, 1, 0.5));
    return new SteadyFlowSolver(
            problem, start, new StoppingLimits(1000, 100, 30, 1e-4, 3e-4, 1e-3), new CancelToken())
        .solve();
  }

  /** Flow below a height of the power law u ~ y^1/7 on either half. */
  private static double flowBelow(double height) {
    double y = Math.max(0, Math.min(1, height));
    return y <= 0.5 ? 0.5 * Math.pow(2 * y, 8.0 / 7) : 1 - flowBelow(1 - y);
  }
}
