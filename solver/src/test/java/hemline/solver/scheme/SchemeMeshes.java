package hemline.solver.scheme;

import hemline.shared.geometry.Ring;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import java.util.List;
import java.util.function.DoubleBinaryOperator;

/** Meshes for tests of the discretisation, metres. */
final class SchemeMeshes {
  private static final double[] X = {0, 0.1, 0.25, 0.45, 0.6, 0.7, 0.85, 1};
  private static final double[] Y = {0, 0.15, 0.3, 0.4, 0.55, 0.75, 0.9, 1};

  private SchemeMeshes() {}

  /** Uneven rectangles. */
  static Mesh plain() {
    return MeshBuilder.build(new GridLines(X, Y), List.of());
  }

  /** The same with a slanted solid in the middle. */
  static Mesh cut() {
    Ring solid = new Ring(new double[] {0.31, 0.66, 0.52}, new double[] {0.33, 0.47, 0.81});
    return MeshBuilder.build(new GridLines(X, Y), List.of(solid));
  }

  static double[] cells(Mesh mesh, DoubleBinaryOperator f) {
    double[] value = new double[mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      value[c] = f.applyAsDouble(mesh.cx[c], mesh.cy[c]);
    }
    return value;
  }

  static double[] boundary(Mesh mesh, DoubleBinaryOperator f) {
    double[] value = new double[mesh.boundaryFaces];
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      value[b] = f.applyAsDouble(mesh.bx[b], mesh.by[b]);
    }
    return value;
  }
}
