package hemline.solver.scheme;

import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import java.util.Arrays;

/**
 * Cells that hold a slit narrower than themselves: walls of solids on both sides.
 *
 * <p>Nothing in such a cell measures what happens across the slit: its neighbours lie along it.
 */
public final class SlitCells {
  /** Cosine between the outward normals of two walls from which on they face each other. */
  private static final double FACING = -0.7;

  private SlitCells() {}

  /** True for cells with two walls of solids that face each other, by cell. */
  public static boolean[] of(FaceGeometry geometry) {
    Mesh mesh = geometry.mesh;
    boolean[] slit = new boolean[mesh.cells];
    int[] last = new int[mesh.cells];
    int[] before = new int[mesh.boundaryFaces];
    Arrays.fill(last, -1);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      if (mesh.bPatch[b] < Patch.FIRST_SOLID) {
        continue;
      }
      for (int other = last[c]; other >= 0 && !slit[c]; other = before[other]) {
        slit[c] =
            geometry.bux[b] * geometry.bux[other] + geometry.buy[b] * geometry.buy[other] < FACING;
      }
      before[b] = last[c];
      last[c] = b;
    }
    return slit;
  }
}
