package hemline.validation.run;

import hemline.shared.geometry.Ring;
import hemline.solver.flow.FlowProblem;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A plane slider: ground moving with speed 1 under a resting plane that closes from a film of
 * height 2 to one of height 1 over a length of 50; creeping.
 *
 * <p>The flow of lubrication theory enters; what leaves is free. The exact figures are those of
 * Reynolds 1886, Phil. Trans. R. Soc. 177, 157 (see the table exact/plane_slider).
 */
final class SliderFlow {
  private static final double LENGTH = 50;
  private static final double WIDE = 2;
  private static final double VISCOSITY = 10;
  private static final double FLOW = 2.0 / 3;

  private SliderFlow() {}

  static FlowCase of() {
    return new FlowCase(
        new int[] {8, 12, 16},
        SliderFlow::problem,
        0,
        Map.of(
            "load over viscosity",
            new FlowCase.Own("m/s", false, flow -> ExactBoundary.forceY(flow) / VISCOSITY),
            "friction over viscosity",
            new FlowCase.Own(
                "m/s",
                false,
                flow -> {
                  Mesh mesh = flow.problem().geometry().mesh;
                  double sum = 0;
                  for (int b = 0; b < mesh.boundaryFaces; b++) {
                    sum += mesh.bPatch[b] == Patch.BOTTOM ? -flow.shearX()[b] : 0;
                  }
                  return sum / VISCOSITY;
                })),
        OptionalDouble.of(FLOW / VISCOSITY),
        OptionalDouble.of(1 / FLOW));
  }

  private static FlowProblem problem(int n) {
    double slope = (1 - WIDE) / LENGTH;
    Ring pad =
        new Ring(
            new double[] {-1, LENGTH + 1, LENGTH + 1, -1},
            new double[] {WIDE - slope, 1 + slope, 5, 5});
    Mesh mesh =
        MeshBuilder.build(
            new GridLines(Problems.even(0, LENGTH, 8 * n), Problems.even(0, 1.05 * WIDE, 2 * n)),
            List.of(pad),
            Set.of(Patch.LEFT, Patch.RIGHT));
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      switch (mesh.bPatch[b]) {
        case Patch.BOTTOM -> boundary.u[b] = 1;
        case Patch.RIGHT -> boundary.kind[b] = Boundary.OUTLET;
        case Patch.LEFT -> {
          boundary.kind[b] = Boundary.VELOCITY;
          double half = 0.5 * Math.abs(mesh.bnx[b]);
          double low = mesh.by[b] - half;
          double high = mesh.by[b] + half;
          boundary.u[b] = (through(high) - through(low)) / (high - low);
        }
        default -> boundary.kind[b] = Boundary.WALL;
      }
    }
    return Problems.laminar(
        mesh, boundary, VISCOSITY, false, new FlowProblem.Scales(1, 1, 12 * VISCOSITY * LENGTH));
  }

  /** Flow below a height at the wide end: u = 1 − η + 6 (q/h − 1/2) η (1 − η). */
  private static double through(double y) {
    double e = Math.min(1, y / WIDE);
    double c = 6 * (FLOW / WIDE - 0.5);
    return WIDE * (e - 0.5 * e * e + c * (0.5 * e * e - e * e * e / 3));
  }
}
