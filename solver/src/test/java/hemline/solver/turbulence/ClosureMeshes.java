package hemline.solver.turbulence;

import hemline.shared.geometry.Ring;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.TimeDifference;
import java.util.Arrays;
import java.util.List;

/** A mesh of rectangles with one kind of boundary, and a state on it to be filled by hand. */
final class ClosureMeshes {
  final Mesh mesh;
  final FaceGeometry geometry;
  final Boundary boundary;
  final FlowState state;

  private ClosureMeshes(Mesh mesh, byte kind) {
    this.mesh = mesh;
    geometry = new FaceGeometry(mesh);
    boundary = new Boundary(mesh);
    Arrays.fill(boundary.kind, kind);
    state = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
  }

  /** Cells of unit size. */
  static ClosureMeshes unit(int nx, int ny, byte kind) {
    double[] x = new double[nx + 1];
    double[] y = new double[ny + 1];
    for (int i = 0; i <= nx; i++) {
      x[i] = i;
    }
    for (int j = 0; j <= ny; j++) {
      y[j] = j;
    }
    return of(x, y, kind);
  }

  static ClosureMeshes of(double[] x, double[] y, byte kind, Ring... solids) {
    return new ClosureMeshes(MeshBuilder.build(new GridLines(x, y), List.of(solids)), kind);
  }

  double[] everywhere(double value) {
    double[] field = new double[mesh.cells];
    Arrays.fill(field, value);
    return field;
  }

  /** A first step in time from the state as it is: the new value less the old one over the step. */
  TimeDifference step(double step) {
    TimeDifference t = new TimeDifference(mesh, step);
    t.begin(state);
    return t;
  }

  /** Boundary face of a cell on one patch. */
  int face(int cell, int patch) {
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bCell[b] == cell && mesh.bPatch[b] == patch) {
        return b;
      }
    }
    throw new IllegalArgumentException("cell " + cell + " has no face on patch " + patch);
  }
}
