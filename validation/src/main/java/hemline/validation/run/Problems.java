package hemline.validation.run;

import hemline.solver.field.FlowState;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import java.util.Arrays;

/** Flow problems with a boundary given in code. */
final class Problems {
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
        viscosity,
        Closure.LAMINAR,
        new double[0],
        force,
        spanwise,
        share,
        all,
        new FlowProblem.InflowTurbulence(
            1e-3 * scales.velocity() * scales.velocity(), 10 * viscosity),
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
