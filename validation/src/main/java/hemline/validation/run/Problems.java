package hemline.validation.run;

import hemline.solver.field.FlowState;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.turbulence.SpalartAllmaras;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Flow problems with a boundary given in code. */
final class Problems {
  /** Wall distance where walls do not count, m. */
  private static final double FAR = 1e6;

  private Problems() {}

  /**
   * A laminar flow, second order everywhere.
   *
   * @param viscosity kinematic, m²/s
   * @param spanwise true when the third velocity component counts
   * @param scales typical length, velocity and pressure over density
   */
  static FlowProblem laminar(
      Mesh mesh, Boundary boundary, double viscosity, boolean spanwise, FlowProblem.Scales scales) {
    return laminar(mesh, boundary, viscosity, 0, spanwise, scales);
  }

  /** A laminar flow of unit scales driven by a force per mass along x, m/s². */
  static FlowProblem driven(
      Mesh mesh, Boundary boundary, double viscosity, double force, boolean spanwise) {
    return laminar(mesh, boundary, viscosity, force, spanwise, new FlowProblem.Scales(1, 1, 1));
  }

  private static FlowProblem laminar(
      Mesh mesh,
      Boundary boundary,
      double viscosity,
      double force,
      boolean spanwise,
      FlowProblem.Scales scales) {
    double[] share = new double[mesh.faces];
    Arrays.fill(share, 1);
    boolean[] all = new boolean[mesh.cells];
    Arrays.fill(all, true);
    return new FlowProblem(
        new FaceGeometry(mesh),
        boundary,
        Closure.LAMINAR,
        new FlowProblem.Momentum(viscosity, force, spanwise, share, all),
        new FlowProblem.Turbulence(
            new double[0],
            new FlowProblem.InflowTurbulence(
                1e-3 * scales.velocity() * scales.velocity(),
                10 * viscosity,
                SpalartAllmaras.INFLOW_RATIO * viscosity)),
        new Watch(mesh, scales),
        scales);
  }

  /**
   * A turbulent flow that no longer changes along x, one cell long.
   *
   * @param y lines over the height; ground at the first, a still ceiling at the last
   * @param viscosity kinematic, m²/s
   * @param closure not laminar
   * @param force that drives it, over density, m/s²
   * @param groundSpeed m/s
   * @param speed typical speed, m/s
   */
  static FlowProblem developed(
      double[] y,
      double viscosity,
      Closure closure,
      double force,
      double groundSpeed,
      double speed) {
    double height = y[y.length - 1] - y[0];
    Mesh mesh =
        MeshBuilder.build(
            new GridLines(new double[] {0, 0.1 * height}, y),
            List.of(),
            Set.of(Patch.LEFT, Patch.RIGHT));
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boolean wall = mesh.bPatch[b] == Patch.BOTTOM || mesh.bPatch[b] == Patch.TOP;
      boundary.kind[b] = wall ? Boundary.WALL : Boundary.NONE;
      boundary.u[b] = mesh.bPatch[b] == Patch.BOTTOM ? groundSpeed : 0;
    }
    double[] share = new double[mesh.faces];
    Arrays.fill(share, 1);
    boolean[] all = new boolean[mesh.cells];
    Arrays.fill(all, true);
    FlowProblem.Scales scales = new FlowProblem.Scales(height, speed, speed * speed);
    return new FlowProblem(
        new FaceGeometry(mesh),
        boundary,
        closure,
        new FlowProblem.Momentum(viscosity, force, false, share, all),
        new FlowProblem.Turbulence(
            WallDistance.of(mesh, boundary.walls()),
            new FlowProblem.InflowTurbulence(
                1e-3 * speed * speed, 10 * viscosity, SpalartAllmaras.INFLOW_RATIO * viscosity)),
        new Watch(mesh, scales),
        scales);
  }

  /** A turbulent flow of unit scales far from walls, by the k-ω closure. */
  static FlowProblem turbulentStream(
      Mesh mesh, Boundary boundary, double viscosity, FlowProblem.InflowTurbulence inflow) {
    return turbulent(
        mesh, boundary, viscosity, Closure.SST, inflow, new FlowProblem.Scales(1, 1, 1));
  }

  /**
   * A turbulent flow, second order everywhere.
   *
   * @param viscosity kinematic, m²/s
   * @param closure not laminar
   * @param inflow what enters with the fluid
   * @param scales typical length, velocity and pressure over density
   */
  static FlowProblem turbulent(
      Mesh mesh,
      Boundary boundary,
      double viscosity,
      Closure closure,
      FlowProblem.InflowTurbulence inflow,
      FlowProblem.Scales scales) {
    double[] share = new double[mesh.faces];
    Arrays.fill(share, 1);
    boolean[] all = new boolean[mesh.cells];
    Arrays.fill(all, true);
    boolean[] walls = boundary.walls();
    double[] distance;
    if (IntStream.range(0, walls.length).anyMatch(b -> walls[b])) {
      distance = WallDistance.of(mesh, walls);
    } else {
      distance = new double[mesh.cells];
      Arrays.fill(distance, FAR);
    }
    return new FlowProblem(
        new FaceGeometry(mesh),
        boundary,
        closure,
        new FlowProblem.Momentum(viscosity, 0, false, share, all),
        new FlowProblem.Turbulence(distance, inflow),
        new Watch(mesh, scales),
        scales);
  }

  /** Even lines. */
  static double[] even(double from, double to, int cells) {
    double[] x = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      x[i] = from + (to - from) * i / cells;
    }
    return x;
  }

  /** Watches the kinetic energy; controls nothing. */
  private record Watch(Mesh mesh, FlowProblem.Scales scales) implements FlowProblem.Drive {
    @Override
    public void adjust(FlowState state, double gain) {}

    @Override
    public double monitor(FlowState s) {
      double sum = 0;
      for (int c = 0; c < mesh.cells; c++) {
        sum += mesh.volume[c] * (s.u[c] * s.u[c] + s.v[c] * s.v[c] + s.w[c] * s.w[c]);
      }
      return sum;
    }

    @Override
    public double miss(FlowState state) {
      return 0;
    }
  }
}
