package hemline.solver.measure;

import hemline.shared.result.SolveStatus;
import hemline.shared.result.Termination;
import hemline.solver.field.FlowState;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.SolveOutcome;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;

/** A flow written down as formulas on the mesh of a section, so that its figures are known. */
final class MadeFlow {
  /** A value at each place; lengths in metres. */
  interface Field {
    double at(double x, double y);
  }

  static final double MOMENTUM_RESIDUAL = 3e-4;
  static final double MASS_RESIDUAL = 5e-9;

  private final FlowProblem problem;
  private final FlowState state;
  private final double[] boundaryPressure;
  private final double[] shearX;
  private final double[] shearY;
  private final double[] shearW;
  private final double[] psi;
  final Mesh mesh;

  MadeFlow(FlowProblem problem) {
    this.problem = problem;
    mesh = problem.geometry().mesh;
    state = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    boundaryPressure = new double[mesh.boundaryFaces];
    shearX = new double[mesh.boundaryFaces];
    shearY = new double[mesh.boundaryFaces];
    shearW = new double[mesh.boundaryFaces];
    psi = new double[(mesh.lines.nx() + 1) * (mesh.lines.ny() + 1)];
  }

  /** Velocity in cells and, as flux, on boundary faces. */
  MadeFlow velocity(Field u, Field v) {
    for (int c = 0; c < mesh.cells; c++) {
      state.u[c] = u.at(mesh.cx[c], mesh.cy[c]);
      state.v[c] = v.at(mesh.cx[c], mesh.cy[c]);
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      state.boundaryFlux[b] =
          u.at(mesh.bx[b], mesh.by[b]) * mesh.bnx[b] + v.at(mesh.bx[b], mesh.by[b]) * mesh.bny[b];
    }
    return this;
  }

  /** Pressure over density in cells and on boundary faces. */
  MadeFlow pressure(Field p) {
    for (int c = 0; c < mesh.cells; c++) {
      state.p[c] = p.at(mesh.cx[c], mesh.cy[c]);
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boundaryPressure[b] = p.at(mesh.bx[b], mesh.by[b]);
    }
    return this;
  }

  /** Wall shear stress over density, by component. */
  MadeFlow shear(Field x, Field y, Field w) {
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      double area = problem.geometry().bArea[b];
      shearX[b] = area * x.at(mesh.bx[b], mesh.by[b]);
      shearY[b] = area * y.at(mesh.bx[b], mesh.by[b]);
      shearW[b] = area * w.at(mesh.bx[b], mesh.by[b]);
    }
    return this;
  }

  MadeFlow streamfunction(Field f) {
    GridLines lines = mesh.lines;
    for (int j = 0; j <= lines.ny(); j++) {
      for (int i = 0; i <= lines.nx(); i++) {
        psi[j * (lines.nx() + 1) + i] = f.at(lines.x()[i], lines.y()[j]);
      }
    }
    return this;
  }

  FlowSolution ended(SolveStatus status, double figure, double halfSpread) {
    return new FlowSolution(
        problem,
        state,
        new SolveOutcome(
            status,
            70,
            90,
            MOMENTUM_RESIDUAL,
            MASS_RESIDUAL,
            figure,
            halfSpread,
            Termination.of(status)),
        boundaryPressure,
        shearX,
        shearY,
        shearW,
        psi);
  }

  FlowSolution settled() {
    return ended(SolveStatus.CONVERGED, 1, 0);
  }

  /** Evenly spaced lines. */
  static double[] even(double from, double to, int cells) {
    double[] x = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      x[i] = from + (to - from) * i / cells;
    }
    return x;
  }
}
