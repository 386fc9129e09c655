package hemline.solver.flow;

import hemline.solver.turbulence.EddyViscosity;
import hemline.solver.turbulence.KOmegaSst;
import hemline.solver.turbulence.Laminar;

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
              problem.viscosity(),
              problem.wallDistance(),
              problem.inflowTurbulence().k(),
              problem.inflowTurbulence().eddyViscosity(),
              problem.spanwise());
      case LAMINAR, AUTO, SA -> new Laminar(boundaryFaces, problem.viscosity());
    };
  }
}
