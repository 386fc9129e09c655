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
 * The cylinder in a channel of Schäfer and Turek 1996, Notes on Numerical Fluid Mechanics 52, 547
 * (test 2D-1) on grids that are even around the cylinder: lengths in cylinder diameters of 0.1 m,
 * mean speed 0.2 m/s, viscosity 0.001 m²/s.
 */
final class CylinderFlow {
  private static final double HEIGHT = 0.41;
  private static final double LENGTH = 2.2;
  private static final double EVEN_UNTIL = 0.4;
  private static final double DIAMETER = 0.1;
  private static final double CENTRE = 0.2;
  private static final double SPEED = 0.2;
  private static final int CHORDS = 720;

  private CylinderFlow() {}

  static FlowCase of() {
    return new FlowCase(
        new int[] {20, 30, 40},
        CylinderFlow::problem,
        0,
        Map.of(
            "drag",
            new FlowCase.Own("N/m", false, ExactBoundary::forceX),
            "lift",
            new FlowCase.Own("N/m", false, ExactBoundary::forceY)),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** The problem with n cells over the diameter. */
  private static FlowProblem problem(int n) {
    int even = (int) Math.round(EVEN_UNTIL / DIAMETER * n);
    int rest = 2 * n;
    double[] x = new double[even + rest + 1];
    for (int i = 0; i <= even; i++) {
      x[i] = EVEN_UNTIL * i / even;
    }
    double first = EVEN_UNTIL / even * rest;
    for (int i = 1; i <= rest; i++) {
      double t = (double) i / rest;
      x[even + i] = EVEN_UNTIL + first * t + (LENGTH - EVEN_UNTIL - first) * t * t;
    }
    double[] cx = new double[CHORDS];
    double[] cy = new double[CHORDS];
    for (int k = 0; k < CHORDS; k++) {
      cx[k] = CENTRE + 0.5 * DIAMETER * Math.cos(2 * Math.PI * k / CHORDS);
      cy[k] = CENTRE + 0.5 * DIAMETER * Math.sin(2 * Math.PI * k / CHORDS);
    }
    int ny = (int) Math.round(HEIGHT / DIAMETER * n);
    Mesh mesh =
        MeshBuilder.build(
            new GridLines(x, Problems.even(0, HEIGHT, ny)),
            List.of(new Ring(cx, cy)),
            Set.of(Patch.LEFT, Patch.RIGHT));
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.OUTLET;
      } else if (mesh.bPatch[b] == Patch.LEFT) {
        boundary.kind[b] = Boundary.VELOCITY;
        double a = (mesh.by[b] - 0.5 * HEIGHT / ny) / HEIGHT;
        double c = (mesh.by[b] + 0.5 * HEIGHT / ny) / HEIGHT;
        // mean of 6 η (1 - η) over the face
        boundary.u[b] = SPEED * (3 * (a + c) - 2 * (a * a + a * c + c * c));
      }
    }
    return Problems.laminar(
        mesh, boundary, 1e-3, false, new FlowProblem.Scales(DIAMETER, SPEED, SPEED * SPEED));
  }
}
