package hemline.solver.scheme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GradientTest {
  private static boolean[] known(Mesh mesh, boolean value) {
    boolean[] known = new boolean[mesh.boundaryFaces];
    Arrays.fill(known, value);
    return known;
  }

  /** Exact for linear fields on cut cells, with and without values at the boundary. */
  @Test
  void linearFieldsAreExact() {
    Mesh mesh = SchemeMeshes.cut();
    FaceGeometry geometry = new FaceGeometry(mesh);
    double[] value = SchemeMeshes.cells(mesh, (x, y) -> 3 - 2 * x + 5 * y);
    double[] beside = SchemeMeshes.boundary(mesh, (x, y) -> 3 - 2 * x + 5 * y);
    for (boolean at : new boolean[] {true, false}) {
      double[] gx = new double[mesh.cells];
      double[] gy = new double[mesh.cells];
      new Gradient(geometry, known(mesh, at)).of(value, beside, gx, gy);
      for (int c = 0; c < mesh.cells; c++) {
        assertThat(gx[c]).as("cell %d", c).isCloseTo(-2, within(1e-7));
        assertThat(gy[c]).as("cell %d", c).isCloseTo(5, within(1e-7));
      }
    }
  }

  /** Exact for quadratic fields along the lines of an uneven grid, away from its sides. */
  @Test
  void quadraticFieldsAlongLinesAreExact() {
    Mesh mesh = SchemeMeshes.plain();
    double[] gx = new double[mesh.cells];
    double[] gy = new double[mesh.cells];
    double[] value = SchemeMeshes.cells(mesh, (x, y) -> 4 * x * x - 7 * y * y);
    new Gradient(new FaceGeometry(mesh), known(mesh, false))
        .of(value, new double[mesh.boundaryFaces], gx, gy);
    int nx = mesh.lines.nx();
    for (int j = 1; j < mesh.lines.ny() - 1; j++) {
      for (int i = 1; i < nx - 1; i++) {
        int c = mesh.cellAt[j * nx + i];
        assertThat(gx[c]).isCloseTo(8 * mesh.cx[c], within(1e-8));
        assertThat(gy[c]).isCloseTo(-14 * mesh.cy[c], within(1e-8));
      }
    }
  }

  /** A row of cells knows nothing of the direction across. */
  @Test
  void anOpenDirectionHasNoGradient() {
    Mesh mesh =
        MeshBuilder.build(new GridLines(new double[] {0, 1, 3, 4}, new double[] {0, 1}), List.of());
    double[] gx = new double[3];
    double[] gy = new double[3];
    new Gradient(new FaceGeometry(mesh), known(mesh, false))
        .of(new double[] {1, 4, 7}, new double[mesh.boundaryFaces], gx, gy);
    assertThat(gx[1]).isCloseTo(2, within(1e-9));
    assertThat(gy).containsOnly(0);
    Mesh one =
        MeshBuilder.build(new GridLines(new double[] {0, 1}, new double[] {0, 1}), List.of());
    double[] lonely = {9};
    new Gradient(new FaceGeometry(one), known(one, false))
        .of(new double[] {5}, new double[4], lonely, lonely);
    assertThat(lonely).containsExactly(0);
  }

  /** Some cells alone give the same there; the weights are the derivatives. */
  @Test
  void someCellsAndWeights() {
    Mesh mesh = SchemeMeshes.cut();
    FaceGeometry geometry = new FaceGeometry(mesh);
    Gradient gradient = new Gradient(geometry, known(mesh, true));
    double[] value = SchemeMeshes.cells(mesh, (x, y) -> Math.sin(5 * x + 3 * y));
    double[] beside = SchemeMeshes.boundary(mesh, (x, y) -> Math.cos(x));
    double[] gx = new double[mesh.cells];
    double[] gy = new double[mesh.cells];
    gradient.of(value, beside, gx, gy);
    int[] some =
        IntStream.concat(IntStream.of(mesh.bCell), IntStream.of(mesh.cells / 2))
            .distinct()
            .toArray();
    double[] sx = new double[mesh.cells];
    double[] sy = new double[mesh.cells];
    gradient.of(some, value, beside, sx, sy);
    for (int c : some) {
      assertThat(sx[c]).isEqualTo(gx[c]);
      assertThat(sy[c]).isEqualTo(gy[c]);
    }
    for (int r : new int[] {0, mesh.cells / 2, mesh.cells - 1}) {
      for (int e = geometry.pattern.rowStart[r]; e < geometry.pattern.rowStart[r + 1]; e++) {
        double[] moved = value.clone();
        moved[geometry.pattern.column[e]] += 1;
        double[] mx = new double[mesh.cells];
        double[] my = new double[mesh.cells];
        gradient.of(moved, beside, mx, my);
        assertThat(mx[r] - gx[r]).isCloseTo(gradient.entryX(e), within(1e-9));
        assertThat(my[r] - gy[r]).isCloseTo(gradient.entryY(e), within(1e-9));
      }
    }
  }
}
