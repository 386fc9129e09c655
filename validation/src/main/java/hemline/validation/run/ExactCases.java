package hemline.validation.run;

import hemline.shared.geometry.Ring;
import hemline.solver.flow.FlowProblem;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.validation.exact.JefferyHamel;
import hemline.validation.exact.Kovasznay;
import hemline.validation.exact.PlaneFlow;
import hemline.validation.exact.SlantedChannel;
import hemline.validation.exact.Wannier;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** Exact flows given on the sides of a domain. */
final class ExactCases {
  private static final Set<Integer> ENDS = Set.of(Patch.LEFT, Patch.RIGHT);
  private static final Set<Integer> ALL = Set.of(Patch.LEFT, Patch.RIGHT, Patch.BOTTOM, Patch.TOP);

  private ExactCases() {}

  /** Developed flow that does not vary along x: one column of cells between two walls. */
  static FlowCase column(double ground, double spanwise) {
    double force = 6;
    return new FlowCase(
        new int[] {16, 32, 64},
        n -> {
          Mesh mesh =
              MeshBuilder.build(
                  new GridLines(new double[] {0, 0.1}, Problems.even(0, 1, n)), List.of(), ENDS);
          Boundary boundary = new Boundary(mesh);
          for (int b = 0; b < mesh.boundaryFaces; b++) {
            if (ENDS.contains(mesh.bPatch[b])) {
              boundary.kind[b] = Boundary.NONE;
            } else if (mesh.bPatch[b] == Patch.BOTTOM) {
              boundary.u[b] = ground;
              boundary.w[b] = spanwise;
            }
          }
          return Problems.driven(mesh, boundary, 1, force, spanwise != 0);
        },
        0,
        Map.of(
            "velocity error",
            new FlowCase.Own(
                "m/s",
                true,
                flow -> {
                  Mesh mesh = flow.problem().geometry().mesh;
                  double sum = 0;
                  double area = 0;
                  for (int c = 0; c < mesh.cells; c++) {
                    double y = mesh.cy[c];
                    double du = flow.state().u[c] - ground * (1 - y) - 0.5 * force * y * (1 - y);
                    double dw = flow.state().w[c] - spanwise * (1 - y);
                    sum += mesh.volume[c] * (du * du + dw * dw);
                    area += mesh.volume[c];
                  }
                  return Math.sqrt(sum / area);
                })),
        OptionalDouble.of(1 + 0.5 * ground),
        OptionalDouble.of(ground / (1 + 0.5 * ground)));
  }

  /** Flow behind a row of bodies, all sides given. */
  static FlowCase kovasznay(double reynolds) {
    Kovasznay exact = new Kovasznay(reynolds);
    return new FlowCase(
        new int[] {24, 48, 96},
        n -> {
          Mesh mesh =
              MeshBuilder.build(
                  new GridLines(Problems.even(-0.5, 1, 3 * n / 2), Problems.even(-0.5, 1.5, 2 * n)),
                  List.of(),
                  ALL);
          return Problems.laminar(
              mesh,
              ExactBoundary.of(mesh, exact, ALL),
              1 / reynolds,
              false,
              new FlowProblem.Scales(1, 1, 1));
        },
        0,
        errors(exact),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** A channel laid across the grid. */
  static FlowCase slanted(double degrees, double reynolds) {
    SlantedChannel exact = new SlantedChannel(Math.toRadians(degrees), 1 / reynolds);
    double tan = Math.tan(exact.angle());
    double half = 0.5 / Math.cos(exact.angle());
    double length = 4;
    double low = -0.3 - half;
    double high = length * tan + half + 0.3;
    double end = length + 1;
    Ring below =
        new Ring(
            new double[] {-1, end, end, -1},
            new double[] {low - 2, low - 2, end * tan - half, -tan - half});
    Ring above =
        new Ring(
            new double[] {-1, end, end, -1},
            new double[] {-tan + half, end * tan + half, high + 2, high + 2});
    return new FlowCase(
        new int[] {8, 16, 32},
        n -> {
          Mesh mesh =
              MeshBuilder.build(
                  new GridLines(
                      Problems.even(0, length, (int) length * n),
                      Problems.even(low, high, (int) Math.round((high - low) * n))),
                  List.of(below, above),
                  ENDS);
          return Problems.laminar(
              mesh,
              ExactBoundary.of(mesh, exact, ENDS),
              exact.viscosity(),
              false,
              new FlowProblem.Scales(1, 1, 1));
        },
        0,
        errors(exact),
        OptionalDouble.of(reynolds),
        OptionalDouble.of(0));
  }

  /** A wedge with its apex at the origin, between r = 1 and 2 on the axis. */
  static FlowCase wedge(double degrees, double reynolds, double curvature) {
    double alpha = Math.toRadians(degrees);
    JefferyHamel exact = new JefferyHamel(alpha, reynolds, curvature);
    double tan = Math.tan(alpha);
    double top = 2.05 * tan;
    Ring above = new Ring(new double[] {0, 3, 3, 0}, new double[] {0, 3 * tan, 4, 4});
    Ring below = new Ring(new double[] {0, 0, 3, 3}, new double[] {0, -4, -4, -3 * tan});
    return new FlowCase(
        new int[] {8, 16, 32},
        n -> {
          Mesh mesh =
              MeshBuilder.build(
                  new GridLines(Problems.even(1, 2, 3 * n), Problems.even(-top, top, 2 * n)),
                  List.of(below, above),
                  ENDS);
          return Problems.laminar(
              mesh,
              ExactBoundary.of(mesh, exact, ENDS),
              exact.viscosity(),
              false,
              new FlowProblem.Scales(tan, 1, 1));
        },
        0,
        errors(exact),
        OptionalDouble.of(2 * Math.abs(reynolds)),
        OptionalDouble.of(0));
  }

  /** A cylinder over a moving plane, creeping; the exact flow on the outer sides. */
  static FlowCase cylinderOverPlane(double r, double d) {
    Wannier exact = new Wannier(r, d);
    double viscosity = 1000;
    int chords = 720;
    double[] x = new double[chords];
    double[] y = new double[chords];
    for (int k = 0; k < chords; k++) {
      x[k] = r * Math.cos(2 * Math.PI * k / chords);
      y[k] = d + r * Math.sin(2 * Math.PI * k / chords);
    }
    Set<Integer> outer = Set.of(Patch.LEFT, Patch.RIGHT, Patch.TOP);
    return new FlowCase(
        new int[] {8, 16, 32},
        n -> {
          Mesh mesh =
              MeshBuilder.build(
                  new GridLines(Problems.even(-2.5, 2.5, 5 * n), Problems.even(0, 4, 4 * n)),
                  List.of(new Ring(x, y)),
                  outer);
          Boundary boundary = ExactBoundary.of(mesh, exact, outer);
          for (int b = 0; b < mesh.boundaryFaces; b++) {
            if (mesh.bPatch[b] == Patch.BOTTOM) {
              boundary.u[b] = 1;
            }
          }
          return Problems.laminar(
              mesh,
              boundary,
              viscosity,
              false,
              new FlowProblem.Scales(d - r, 1, 12 * viscosity / (d - r)));
        },
        0,
        Map.of(
            "velocity error",
            new FlowCase.Own("m/s", true, flow -> ExactBoundary.velocityError(flow, exact)),
            "force over viscosity",
            new FlowCase.Own("m/s", false, flow -> ExactBoundary.forceX(flow) / viscosity)),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static Map<String, FlowCase.Own> errors(PlaneFlow exact) {
    return Map.of(
        "velocity error",
        new FlowCase.Own("m/s", true, flow -> ExactBoundary.velocityError(flow, exact)),
        "pressure error",
        new FlowCase.Own("Pa", true, flow -> ExactBoundary.pressureError(flow, exact)));
  }
}
