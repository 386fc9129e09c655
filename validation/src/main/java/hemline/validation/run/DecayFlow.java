package hemline.validation.run;

import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.validation.exact.DecayingTurbulence;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** Turbulence that dies away in an even stream between walls without shear. */
final class DecayFlow {
  private static final double LENGTH = 2;
  private static final double VISCOSITY = 1e-6;
  private static final DecayingTurbulence EXACT = new DecayingTurbulence(1e-4, 20);

  private DecayFlow() {}

  static FlowCase of() {
    return new FlowCase(
        new int[] {16, 32, 64},
        DecayFlow::problem,
        0,
        Map.of(
            "relative error of k",
            new FlowCase.Own("1", true, flow -> error(flow, true)),
            "relative error of omega",
            new FlowCase.Own("1", true, flow -> error(flow, false))),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static FlowProblem problem(int n) {
    Mesh mesh =
        MeshBuilder.build(
            new GridLines(
                Problems.even(0, LENGTH, (int) LENGTH * n), Problems.even(0, 0.25, n / 4)),
            List.of(),
            Set.of(Patch.LEFT, Patch.RIGHT));
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boundary.kind[b] =
          switch (mesh.bPatch[b]) {
            case Patch.LEFT -> Boundary.VELOCITY;
            case Patch.RIGHT -> Boundary.OUTLET;
            default -> Boundary.SLIP;
          };
      boundary.u[b] = 1;
    }
    return Problems.turbulentStream(
        mesh,
        boundary,
        VISCOSITY,
        new FlowProblem.InflowTurbulence(
            EXACT.k(0), EXACT.eddyViscosity(0), EXACT.eddyViscosity(0)));
  }

  /** Root of the mean squared relative distance over the cells. */
  private static double error(FlowSolution flow, boolean energy) {
    Mesh mesh = flow.problem().geometry().mesh;
    double sum = 0;
    double area = 0;
    for (int c = 0; c < mesh.cells; c++) {
      double x = mesh.cx[c];
      double ratio =
          energy ? flow.state().k[c] / EXACT.k(x) : flow.state().omega[c] / EXACT.omega(x);
      sum += mesh.volume[c] * (ratio - 1) * (ratio - 1);
      area += mesh.volume[c];
    }
    return Math.sqrt(sum / area);
  }
}
