package hemline.solver.scheme;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;

/** Gradients of the velocity components in cells, and their values on boundary faces. */
public final class VelocityGradients {
  public final double[] ux;
  public final double[] uy;
  public final double[] vx;
  public final double[] vy;
  public final double[] wx;
  public final double[] wy;
  public final double[] bu;
  public final double[] bv;
  public final double[] bw;

  /** Share of the velocity difference to each wall face along it that gradients see. */
  private final double[] seen;

  /** Pairs of a cell and a neighbour, and the share of their difference that gradients see. */
  private int[] partCell = {};

  private int[] partEntry = {};
  private double[] partSeen = {};

  /** Velocities at boundary faces as gradients see them. */
  private final double[] su;

  private final double[] sv;
  private final double[] sw;
  private final FaceGeometry geometry;
  private final Boundary boundary;
  private final boolean spanwise;
  private final Gradient gradient;

  public VelocityGradients(FaceGeometry geometry, Boundary boundary, boolean spanwise) {
    this.geometry = geometry;
    this.boundary = boundary;
    this.spanwise = spanwise;
    Mesh mesh = geometry.mesh;
    ux = new double[mesh.cells];
    uy = new double[mesh.cells];
    vx = new double[mesh.cells];
    vy = new double[mesh.cells];
    wx = new double[mesh.cells];
    wy = new double[mesh.cells];
    bu = new double[mesh.boundaryFaces];
    bv = new double[mesh.boundaryFaces];
    bw = new double[mesh.boundaryFaces];
    seen = new double[mesh.boundaryFaces];
    java.util.Arrays.fill(seen, 1);
    su = new double[mesh.boundaryFaces];
    sv = new double[mesh.boundaryFaces];
    sw = new double[mesh.boundaryFaces];
    boolean[] known = new boolean[mesh.boundaryFaces];
    for (int b = 0; b < known.length; b++) {
      byte kind = boundary.kind[b];
      known[b] = kind == Boundary.WALL || kind == Boundary.VELOCITY || kind == Boundary.SLIP;
    }
    gradient = new Gradient(geometry, known);
  }

  /** Recomputes boundary values and gradients of the state's velocity. */
  public void update(FlowState s) {
    boundaryValues(s);
    seenValues(s);
    gradient.of(s.u, su, ux, uy);
    gradient.of(s.v, sv, vx, vy);
    if (spanwise) {
      gradient.of(s.w, sw, wx, wy);
    }
    for (int i = 0; i < partCell.length; i++) {
      int r = partCell[i];
      int e = partEntry[i];
      int k = geometry.pattern.column[e];
      double x = (partSeen[i] - 1) * gradient.entryX(e);
      double y = (partSeen[i] - 1) * gradient.entryY(e);
      ux[r] += x * (s.u[k] - s.u[r]);
      uy[r] += y * (s.u[k] - s.u[r]);
      vx[r] += x * (s.v[k] - s.v[r]);
      vy[r] += y * (s.v[k] - s.v[r]);
      wx[r] += x * (s.w[k] - s.w[r]);
      wy[r] += y * (s.w[k] - s.w[r]);
    }
  }

  /**
   * Lets gradients see less than the no-slip value at a wall from now on, as much as gives the
   * slope of a turbulent profile at the cell's centroid. Least squares weigh the wall in with the
   * inverse cube of its distance, so that a cell in a logarithmic layer would take on the slope of
   * a laminar one; beside slanted walls that slope enters convection and cross-diffusion.
   *
   * @param b wall face
   * @param share of the velocity difference along the wall, 0 to 1
   */
  public void seeWall(int b, double share) {
    seen[b] = share;
  }

  /**
   * Lets gradients in some cells see less than the difference to a neighbour from now on.
   *
   * @param cells the cells
   * @param entries of the pattern, each a neighbour of its cell
   * @param shares of the difference, 0 to 1; read at each update
   */
  public void seeNeighbours(int[] cells, int[] entries, double[] shares) {
    partCell = cells;
    partEntry = entries;
    partSeen = shares;
  }

  private void seenValues(FlowState s) {
    System.arraycopy(bu, 0, su, 0, bu.length);
    System.arraycopy(bv, 0, sv, 0, bv.length);
    System.arraycopy(bw, 0, sw, 0, bw.length);
    for (int b = 0; b < seen.length; b++) {
      if (seen[b] != 1) {
        int c = geometry.mesh.bCell[b];
        double nx = geometry.bux[b];
        double ny = geometry.buy[b];
        double unseen = (1 - seen[b]) * ((s.v[c] - bv[b]) * nx - (s.u[c] - bu[b]) * ny);
        su[b] -= unseen * ny;
        sv[b] += unseen * nx;
        sw[b] += (1 - seen[b]) * (s.w[c] - bw[b]);
      }
    }
  }

  private void boundaryValues(FlowState s) {
    Mesh mesh = geometry.mesh;
    double[] nx = geometry.bux;
    double[] ny = geometry.buy;
    double[] area = geometry.bArea;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      switch (boundary.kind[b]) {
        case Boundary.WALL -> {
          bu[b] = boundary.u[b];
          bv[b] = boundary.v[b];
          bw[b] = boundary.w[b];
        }
        case Boundary.VELOCITY -> {
          bu[b] = boundary.u[b] + boundary.uPerFlow[b] * s.inletFlow;
          bv[b] = boundary.v[b];
          bw[b] = boundary.w[b];
        }
        case Boundary.SLIP -> {
          double normal = s.u[c] * nx[b] + s.v[c] * ny[b];
          bu[b] = s.u[c] - normal * nx[b];
          bv[b] = s.v[c] - normal * ny[b];
          bw[b] = s.w[c];
        }
        case Boundary.OPEN -> {
          double out = s.boundaryFlux[b];
          // fluid enters along the normal
          bu[b] = out < 0 ? out / area[b] * nx[b] : s.u[c];
          bv[b] = out < 0 ? out / area[b] * ny[b] : s.v[c];
          bw[b] = out < 0 ? boundary.w[b] : s.w[c];
        }
        default -> {
          bu[b] = s.u[c];
          bv[b] = s.v[c];
          bw[b] = s.w[c];
        }
      }
    }
  }
}
