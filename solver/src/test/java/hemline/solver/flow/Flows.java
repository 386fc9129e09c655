package hemline.solver.flow;

import hemline.shared.geometry.Ring;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import java.util.List;
import java.util.Set;

/** Small flow problems for tests. */
final class Flows {
  private Flows() {}

  /** Watches the kinetic energy; controls nothing. */
  static FlowProblem.Drive watch(Mesh mesh) {
    return new FlowProblem.Drive() {
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
    };
  }

  static Mesh mesh(GridLines lines, List<Ring> solids, Integer... open) {
    return MeshBuilder.build(lines, solids, Set.of(open));
  }

  static FlowProblem problem(
      Mesh mesh,
      Boundary boundary,
      double viscosity,
      Closure closure,
      double bodyForce,
      boolean spanwise,
      FlowProblem.Scales scales) {
    double[] share = new double[mesh.faces];
    java.util.Arrays.fill(share, 1);
    boolean[] all = new boolean[mesh.cells];
    java.util.Arrays.fill(all, true);
    return new FlowProblem(
        new FaceGeometry(mesh),
        boundary,
        closure,
        new FlowProblem.Momentum(viscosity, bodyForce, spanwise, share, all),
        new FlowProblem.Turbulence(
            closure == Closure.LAMINAR ? new double[0] : WallDistance.of(mesh, boundary.walls()),
            new FlowProblem.InflowTurbulence(
                1e-3 * scales.velocity() * scales.velocity(), 10 * viscosity, 4 * viscosity)),
        watch(mesh),
        scales);
  }

  static FlowState rest(Mesh mesh) {
    return new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
  }

  static FlowSolution solve(FlowProblem problem, FlowState start) {
    return new SteadyFlowSolver(
            problem, start, new StoppingLimits(3000, 100, 30, 1e-6, 1e-5, 1e-6), new CancelToken())
        .solve();
  }

  static double[] even(double from, double to, int cells) {
    double[] x = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      x[i] = from + (to - from) * i / cells;
    }
    return x;
  }

  /** Lines clustered to both ends. */
  static double[] clustered(double from, double to, int cells, double strength) {
    double[] x = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      double t = 2.0 * i / cells - 1;
      x[i] = from + (to - from) * 0.5 * (1 + Math.tanh(strength * t) / Math.tanh(strength));
    }
    x[0] = from;
    x[cells] = to;
    return x;
  }

  /** Observed order from errors on grids refined by two. */
  static double order(double coarse, double fine) {
    return Math.log(coarse / fine) / Math.log(2);
  }
}
