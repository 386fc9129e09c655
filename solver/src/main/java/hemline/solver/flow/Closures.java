package hemline.solver.flow;

import hemline.solver.turbulence.EddyViscosity;
import hemline.solver.turbulence.KOmegaSst;
import hemline.solver.turbulence.Laminar;
import hemline.solver.turbulence.SpalartAllmaras;

/** Makes the flow model a problem asks for. */
final class Closures {
  private Closures() {}

  static EddyViscosity of(FlowProblem problem) {
    int boundaryFaces = problem.geometry().mesh.boundaryFaces;
    return switch (problem.closure()) {
      case SST ->
          new KOmegaSst(
              problem.geometry(),
              problem.boundary(),
              problem.momentum().viscosity(),
              problem.turbulence().wallDistance(),
              problem.turbulence().inflow().k(),
              problem.turbulence().inflow().eddyViscosity(),
              problem.scales().velocity() / length(problem),
              problem.momentum().spanwise());
      case SA ->
          new SpalartAllmaras(
              problem.geometry(),
              problem.boundary(),
              problem.momentum().viscosity(),
              problem.turbulence().wallDistance(),
              problem.turbulence().inflow().nuTilde(),
              problem.momentum().spanwise());
      case LAMINAR, AUTO ->
          new Laminar(boundaryFaces, problem.geometry().mesh.faces, problem.momentum().viscosity());
    };
  }

  private static double length(FlowProblem problem) {
    double[] x = problem.geometry().mesh.lines.x();
    double[] y = problem.geometry().mesh.lines.y();
    return Math.max(x[x.length - 1] - x[0], y[y.length - 1] - y[0]);
  }
}
