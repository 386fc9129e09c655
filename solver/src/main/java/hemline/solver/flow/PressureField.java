package hemline.solver.flow;

import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.Gradient;
import hemline.solver.scheme.SlitCells;
import java.util.stream.IntStream;

/**
 * Pressure on faces and the force it exerts on cells.
 *
 * <p>Interior faces interpolate linearly; walls and given-velocity faces extrapolate with the
 * least-squares gradient; open faces have their own value. Corrections of the pressure are taken as
 * constant to the wall instead: extrapolated ones grow from pass to pass in slivers at a wall, and
 * what is wrong with a correction is gone when the flow has settled.
 */
final class PressureField {
  private final FaceGeometry geometry;
  private final Boundary boundary;
  private final Gradient leastSquares;

  /** Cells beside a boundary or an irregular face: only there the extrapolation counts. */
  private final int[] slopes;

  private final boolean sloped;
  private final double[] lx;
  private final double[] ly;

  /** Pressure on boundary faces, over density. */
  final double[] onBoundary;

  /** Mean pressure gradient of cells: Σ p S / V. */
  final double[] gx;

  final double[] gy;

  /** The field of a pressure. */
  PressureField(FaceGeometry geometry, Boundary boundary) {
    this(geometry, boundary, true);
  }

  /** The field of corrections of a pressure. */
  static PressureField ofCorrections(FaceGeometry geometry, Boundary boundary) {
    return new PressureField(geometry, boundary, false);
  }

  private PressureField(FaceGeometry geometry, Boundary boundary, boolean sloped) {
    this.sloped = sloped;
    this.geometry = geometry;
    this.boundary = boundary;
    Mesh mesh = geometry.mesh;
    boolean[] known = new boolean[mesh.boundaryFaces];
    for (int b = 0; b < known.length; b++) {
      known[b] = boundary.isOpen(b);
    }
    leastSquares = new Gradient(geometry, known, SlitCells.of(geometry));
    boolean[] needed = new boolean[mesh.cells];
    for (int c : mesh.bCell) {
      needed[c] = true;
    }
    for (int f : geometry.irregular) {
      needed[mesh.owner[f]] = true;
      needed[mesh.neighbour[f]] = true;
    }
    slopes = IntStream.range(0, mesh.cells).filter(c -> needed[c]).toArray();
    lx = new double[mesh.cells];
    ly = new double[mesh.cells];
    gx = new double[mesh.cells];
    gy = new double[mesh.cells];
    onBoundary = new double[mesh.boundaryFaces];
  }

  /** The extrapolation to walls. */
  Gradient leastSquares() {
    return leastSquares;
  }

  /**
   * Computes boundary values and gradients.
   *
   * @param p in cells; not modified; {@link #onBoundary} must already hold the value of open faces
   */
  void update(double[] p) {
    Mesh mesh = geometry.mesh;
    if (sloped) {
      leastSquares.of(slopes, p, onBoundary, lx, ly);
    }
    java.util.Arrays.fill(gx, 0);
    java.util.Arrays.fill(gy, 0);
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double share = geometry.ownerWeight[f];
      // p_f S: the face's normal is an axis
      double force = (share * p[o] + (1 - share) * p[n]) * mesh.area[f];
      double[] g = mesh.vertical[f] ? gx : gy;
      g[o] += force;
      g[n] -= force;
    }
    for (int i = 0; i < geometry.irregular.length; i++) {
      int f = geometry.irregular[i];
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double share = geometry.ownerWeight[f];
      double[] t = mesh.vertical[f] ? ly : lx;
      double force = geometry.skew[i] * (share * t[o] + (1 - share) * t[n]) * mesh.area[f];
      double[] g = mesh.vertical[f] ? gx : gy;
      g[o] += force;
      g[n] -= force;
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      if (boundary.kind[b] == Boundary.NONE) {
        onBoundary[b] = p[c];
      } else if (!boundary.isOpen(b)) {
        onBoundary[b] =
            p[c] + lx[c] * (mesh.bx[b] - mesh.cx[c]) + ly[c] * (mesh.by[b] - mesh.cy[c]);
      }
      gx[c] += onBoundary[b] * mesh.bnx[b];
      gy[c] += onBoundary[b] * mesh.bny[b];
    }
    for (int c = 0; c < mesh.cells; c++) {
      gx[c] /= mesh.volume[c];
      gy[c] /= mesh.volume[c];
    }
  }
}
