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
 * Laminar flow over a backward-facing step: channel height 1, ground at y = 0, step at x = 0, mean
 * speed 1 above the step.
 */
final class StepFlow {
  private static final double HALF = 0.5;
  private static final double DOWNSTREAM = 30;

  private StepFlow() {}

  /** A step of half the channel's height. */
  static FlowCase of(double reynolds, double entry, int coarsest) {
    return of(reynolds, HALF, entry, coarsest);
  }

  /**
   * The step of Armaly, Durst, Pereira and Schönung 1983: channel wider by 1.94 behind it.
   *
   * @param reynolds mean speed times twice the height over the step over viscosity
   */
  static FlowCase armaly(double reynolds) {
    double open = 1 / 1.94;
    return of(reynolds / (2 * open), 1 - open, 10, 2);
  }

  /**
   * The case.
   *
   * @param reynolds mean speed over the step times channel height over viscosity
   * @param step its height
   * @param entry length of the channel before the step; 0 when the parabola enters at the step
   * @param coarsest sets the cells over the height: 16, 24 and 32 times this
   */
  static FlowCase of(double reynolds, double step, double entry, int coarsest) {
    return new FlowCase(
        new int[] {2 * coarsest, 3 * coarsest, 4 * coarsest},
        n -> problem(reynolds, step, entry, n),
        0,
        Map.of(),
        OptionalDouble.of(reynolds * (1 - step)),
        OptionalDouble.of(0));
  }

  private static FlowProblem problem(double reynolds, double step, double entry, int n) {
    int ny = 8 * n;
    int down = 30 * n;
    int up = entry > 0 ? 4 * n : 0;
    double[] x = new double[up + down + 1];
    for (int i = 0; i < up; i++) {
      double t = 1 - (double) i / up;
      x[i] = -entry * (0.45 * t + 0.55 * t * t);
    }
    for (int i = 0; i <= down; i++) {
      double t = (double) i / down;
      x[up + i] = DOWNSTREAM * (0.45 * t + 0.55 * t * t * t);
    }
    List<Ring> solids =
        entry > 0
            ? List.of(
                new Ring(
                    new double[] {-entry - 1, 0, 0, -entry - 1}, new double[] {-1, -1, step, step}))
            : List.of();
    Mesh mesh =
        MeshBuilder.build(
            new GridLines(x, Problems.even(0, 1, ny)), solids, Set.of(Patch.LEFT, Patch.RIGHT));
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.OUTLET;
      } else if (mesh.bPatch[b] == Patch.LEFT && mesh.by[b] > step) {
        boundary.kind[b] = Boundary.VELOCITY;
        double half = 0.5 * Math.abs(mesh.bnx[b]);
        double open = 1 - step;
        boundary.u[b] =
            parabola((mesh.by[b] - half - step) / open, (mesh.by[b] + half - step) / open);
      }
    }
    return Problems.laminar(mesh, boundary, 1 / reynolds, false, new FlowProblem.Scales(1, 1, 1));
  }

  /** Mean of 6 y (1 - y), whose own mean over the opening is 1. */
  private static double parabola(double a, double c) {
    return 3 * (a + c) - 2 * (a * a + a * c + c * c);
  }
}
