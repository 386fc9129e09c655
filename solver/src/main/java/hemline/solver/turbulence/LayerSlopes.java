package hemline.solver.turbulence;

import hemline.solver.grid.Mesh;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;
import java.util.stream.IntStream;

/**
 * Slopes of the velocity in cells next to those at slanted walls.
 *
 * <p>The wall cell lies where the profile is steep, often nearer to the wall than half a spacing.
 * Least squares take the mean slope towards it for that in the cell, up to three times too steep;
 * convection, which crosses these faces at an angle, then carries momentum to the wall cell that no
 * stress carries, and the source of eddy viscosity is wrong by as much. So only that share of the
 * difference to the wall cell counts that gives the wall law's mean slope over the cell: with y⁺
 * from a to b the cell's, and o and c at the two centroids,
 *
 * <p>share = (u⁺(b) - u⁺(a)) / (b - a) · (c - o) / (u⁺(c) - u⁺(o)).
 */
final class LayerSlopes {
  /** Least share. */
  private static final double LEAST = 0.1;

  /** Relative difference below which two distances are one. */
  private static final double TIE = 1e-6;

  private final VelocityLaw law;
  private final SlantedWalls slanted;

  /** Cells without a wall, the entry of each with a wall cell, and a wall face of that. */
  private final int[] cell;

  private final int[] entry;
  private final int[] face;
  private final double[] share;

  /** Distances from the wall, m: of the wall cell, of the other, and half of the other's extent. */
  private final double[] inner;

  private final double[] outer;
  private final double[] half;

  LayerSlopes(FaceGeometry geometry, SlantedWalls slanted, VelocityLaw law) {
    this.law = law;
    this.slanted = slanted;
    Mesh mesh = geometry.mesh;
    boolean[] atWall = new boolean[mesh.cells];
    int[] slantedFace = new int[mesh.cells];
    java.util.Arrays.fill(slantedFace, -1);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      atWall[mesh.bCell[b]] = true;
      if (slanted.isSlanted(b)) {
        slantedFace[mesh.bCell[b]] = b;
      }
    }
    int[] start = geometry.pattern.rowStart;
    int[] column = geometry.pattern.column;
    IntStream.Builder cells = IntStream.builder();
    IntStream.Builder entries = IntStream.builder();
    for (int r = 0; r < mesh.cells; r++) {
      for (int e = start[r]; e < start[r + 1] && !atWall[r]; e++) {
        if (slantedFace[column[e]] >= 0) {
          cells.add(r);
          entries.add(e);
        }
      }
    }
    cell = cells.build().toArray();
    entry = entries.build().toArray();
    int n = cell.length;
    face = new int[n];
    share = new double[n];
    inner = new double[n];
    outer = new double[n];
    half = new double[n];
    for (int i = 0; i < n; i++) {
      int r = cell[i];
      int b = slantedFace[column[entry[i]]];
      face[i] = b;
      inner[i] = geometry.bDistance[b];
      outer[i] =
          (mesh.bx[b] - mesh.cx[r]) * geometry.bux[b] + (mesh.by[b] - mesh.cy[r]) * geometry.buy[b];
      half[i] = Math.min(0.5 * slanted.extent(b, r), outer[i]);
    }
  }

  /**
   * Updates the shares and lets the gradients see them.
   *
   * @param yPlus of the places read, by boundary face; not modified
   */
  void update(double[] yPlus, VelocityGradients g) {
    for (int i = 0; i < share.length; i++) {
      double scale = yPlus[face[i]] / slanted.distance[face[i]];
      share[i] = scale > 0 && outer[i] > inner[i] * (1 + TIE) ? share(scale, i) : 1;
    }
    g.seeNeighbours(cell, entry, share);
  }

  private double share(double scale, int i) {
    double from = scale * (outer[i] - half[i]);
    double to = scale * (outer[i] + half[i]);
    double mean = (law.velocity(to) - law.velocity(from)) / (to - from);
    double wall = scale * inner[i];
    double here = scale * outer[i];
    double towards = (law.velocity(here) - law.velocity(wall)) / (here - wall);
    return Math.max(LEAST, Math.min(1, mean / towards));
  }
}
