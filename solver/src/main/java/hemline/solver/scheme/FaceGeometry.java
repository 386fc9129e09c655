package hemline.solver.scheme;

import hemline.solver.grid.Mesh;
import hemline.solver.linear.SparsePattern;

/**
 * Distances, weights and links that the discretisation needs, computed once per mesh.
 *
 * <p>Symbols: O owner, N neighbour of a face; d vector from the centroid of O to that of N; n the
 * face's axis; t the other axis. Read-only by agreement.
 */
public final class FaceGeometry {
  /** A centroid never counts as closer to a boundary face than this share of the cell's size. */
  private static final double DISTANCE_FLOOR = 0.05;

  public final Mesh mesh;
  public final SparsePattern pattern;

  /** Weight of the owner in linear interpolation along n to the face. */
  public final double[] ownerWeight;

  /** Open length over distance along n: conductance of the face for unit diffusivity. */
  public final double[] conductance;

  /** Components of d, m. */
  public final double[] dx;

  public final double[] dy;

  /**
   * Faces whose centroid lies off the line of d or whose d is not along n: the flux there needs
   * corrections.
   */
  public final int[] irregular;

  /** For each irregular face: open length times -d_t / d_n, factor of the tangential derivative. */
  public final double[] crossLength;

  /** For each irregular face: tangential distance of its centroid from the line of d, m. */
  public final double[] skew;

  // ---- boundary faces
  /** Length, m. */
  public final double[] bArea;

  /** Outward unit normal. */
  public final double[] bux;

  public final double[] buy;

  /** Length over normal distance of the cell centroid: conductance for unit diffusivity. */
  public final double[] bConductance;

  /** Normal distance of the cell centroid, m. */
  public final double[] bDistance;

  public FaceGeometry(Mesh mesh) {
    this.mesh = mesh;
    pattern = new SparsePattern(mesh.cells, mesh.owner, mesh.neighbour);
    int n = mesh.faces;
    ownerWeight = new double[n];
    conductance = new double[n];
    dx = new double[n];
    dy = new double[n];
    int[] odd = new int[n];
    double[] cross = new double[n];
    double[] off = new double[n];
    int count = 0;
    for (int f = 0; f < n; f++) {
      int o = mesh.owner[f];
      int k = mesh.neighbour[f];
      dx[f] = mesh.cx[k] - mesh.cx[o];
      dy[f] = mesh.cy[k] - mesh.cy[o];
      boolean vertical = mesh.vertical[f];
      double dn = vertical ? dx[f] : dy[f];
      double dt = vertical ? dy[f] : dx[f];
      double toFace = vertical ? mesh.fx[f] - mesh.cx[o] : mesh.fy[f] - mesh.cy[o];
      // joined cells may lie oddly; keep distances positive and of the size of |d|
      double size = Math.hypot(dn, dt);
      double normal = Math.max(dn, 0.3 * size);
      double share = Math.min(0.95, Math.max(0.05, toFace / normal));
      ownerWeight[f] = 1 - share;
      conductance[f] = mesh.area[f] / normal;
      double faceT = vertical ? mesh.fy[f] - mesh.cy[o] : mesh.fx[f] - mesh.cx[o];
      double skewness = faceT - share * dt;
      double tolerance = 1e-9 * size;
      if (Math.abs(skewness) > tolerance || Math.abs(dt) > tolerance) {
        odd[count] = f;
        cross[count] = -mesh.area[f] * dt / normal;
        off[count] = skewness;
        count++;
      }
    }
    irregular = java.util.Arrays.copyOf(odd, count);
    crossLength = java.util.Arrays.copyOf(cross, count);
    skew = java.util.Arrays.copyOf(off, count);

    int m = mesh.boundaryFaces;
    bArea = new double[m];
    bux = new double[m];
    buy = new double[m];
    bConductance = new double[m];
    bDistance = new double[m];
    for (int b = 0; b < m; b++) {
      int c = mesh.bCell[b];
      double a = Math.hypot(mesh.bnx[b], mesh.bny[b]);
      bArea[b] = a;
      bux[b] = mesh.bnx[b] / a;
      buy[b] = mesh.bny[b] / a;
      double distance = (mesh.bx[b] - mesh.cx[c]) * bux[b] + (mesh.by[b] - mesh.cy[c]) * buy[b];
      double floor = DISTANCE_FLOOR * Math.sqrt(mesh.volume[c]);
      bDistance[b] = Math.max(distance, Math.min(floor, 0.5 * mesh.volume[c] / a));
      bConductance[b] = a / bDistance[b];
    }
  }
}
