package hemline.solver.scheme;

import hemline.solver.grid.Mesh;

/**
 * Least-squares gradient of cell values over face neighbours and known boundary values.
 *
 * <p>g minimises Σ w (g·r - Δφ)² with w = |r|⁻³, which is exact for linear fields everywhere and
 * for quadratic ones along the lines of a stretched tensor grid. Where the neighbours leave a
 * direction open, the gradient there is zero.
 */
public final class Gradient {
  /**
   * Share of the trace that is added to the diagonal of M, so that an open direction has slope 0.
   */
  private static final double REGULARISATION = 1e-10;

  private final FaceGeometry geometry;
  private final double[] entryX;
  private final double[] entryY;
  private final double[] boundaryX;
  private final double[] boundaryY;

  /**
   * Precomputes the weights.
   *
   * @param geometry of the mesh
   * @param known boundary faces whose value takes part; not modified
   */
  public Gradient(FaceGeometry geometry, boolean[] known) {
    this(geometry, known, new boolean[geometry.mesh.cells]);
  }

  /**
   * Precomputes the weights.
   *
   * @param geometry of the mesh
   * @param known boundary faces whose value takes part; not modified
   * @param even cells at whose other boundary faces the derivative along the normal is taken as
   *     zero; not modified
   */
  public Gradient(FaceGeometry geometry, boolean[] known, boolean[] even) {
    this.geometry = geometry;
    Mesh mesh = geometry.mesh;
    int n = mesh.cells;
    double[] xx = new double[n];
    double[] xy = new double[n];
    double[] yy = new double[n];
    int entries = geometry.pattern.column.length;
    entryX = new double[entries];
    entryY = new double[entries];
    boundaryX = new double[mesh.boundaryFaces];
    boundaryY = new double[mesh.boundaryFaces];
    // M = Σ w r rᵀ, right-hand side Σ w r Δφ
    for (int r = 0; r < n; r++) {
      for (int e = geometry.pattern.rowStart[r]; e < geometry.pattern.rowStart[r + 1]; e++) {
        int k = geometry.pattern.column[e];
        double x = mesh.cx[k] - mesh.cx[r];
        double y = mesh.cy[k] - mesh.cy[r];
        double w = weight(x, y);
        xx[r] += w * x * x;
        xy[r] += w * x * y;
        yy[r] += w * y * y;
        entryX[e] = w * x;
        entryY[e] = w * y;
      }
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int r = mesh.bCell[b];
      double x = mesh.bx[b] - mesh.cx[r];
      double y = mesh.by[b] - mesh.cy[r];
      double w = weight(x, y);
      if (!known[b] && even[r]) {
        // the condition ∂φ/∂n = 0 as a neighbour at distance d = r · n: w (d n · g)² in the sum
        double nx = geometry.bux[b];
        double ny = geometry.buy[b];
        double d = x * nx + y * ny;
        xx[r] += w * d * d * nx * nx;
        xy[r] += w * d * d * nx * ny;
        yy[r] += w * d * d * ny * ny;
      }
      if (known[b]) {
        xx[r] += w * x * x;
        xy[r] += w * x * y;
        yy[r] += w * y * y;
        boundaryX[b] = w * x;
        boundaryY[b] = w * y;
      }
    }
    invert(xx, xy, yy, known);
  }

  /** g = M⁻¹ Σ w r Δφ: entries become M⁻¹ w r, M its inverse. */
  private void invert(double[] xx, double[] xy, double[] yy, boolean[] known) {
    for (int r = 0; r < xx.length; r++) {
      double extra = REGULARISATION * (xx[r] + yy[r]);
      xx[r] += extra;
      yy[r] += extra;
      double det = xx[r] * yy[r] - xy[r] * xy[r];
      double ixx = yy[r] / det;
      double ixy = -xy[r] / det;
      double iyy = xx[r] / det;
      if (!(det > 0) || !Double.isFinite(ixx + ixy + iyy)) {
        ixx = 0;
        ixy = 0;
        iyy = 0;
      }
      for (int e = geometry.pattern.rowStart[r]; e < geometry.pattern.rowStart[r + 1]; e++) {
        double x = entryX[e];
        double y = entryY[e];
        entryX[e] = ixx * x + ixy * y;
        entryY[e] = ixy * x + iyy * y;
      }
      xx[r] = ixx;
      xy[r] = ixy;
      yy[r] = iyy;
    }
    for (int b = 0; b < known.length; b++) {
      if (known[b]) {
        int r = geometry.mesh.bCell[b];
        double x = boundaryX[b];
        double y = boundaryY[b];
        boundaryX[b] = xx[r] * x + xy[r] * y;
        boundaryY[b] = xy[r] * x + yy[r] * y;
      }
    }
  }

  /** Derivative of the gradient along x with respect to a neighbour's value, by entry. */
  public double entryX(int e) {
    return entryX[e];
  }

  /** Derivative of the gradient along y with respect to a neighbour's value, by entry. */
  public double entryY(int e) {
    return entryY[e];
  }

  /** w = |r|⁻³. */
  private static double weight(double x, double y) {
    double d2 = x * x + y * y;
    return 1 / (d2 * Math.sqrt(d2));
  }

  /**
   * Computes gradients of one field.
   *
   * @param value in cells; not modified
   * @param boundaryValue on boundary faces, used where known; not modified
   * @param gx answer along x
   * @param gy answer along y
   */
  public void of(double[] value, double[] boundaryValue, double[] gx, double[] gy) {
    for (int r = 0; r < gx.length; r++) {
      row(r, value, gx, gy);
    }
    addBoundary(value, boundaryValue, gx, gy);
  }

  /**
   * Computes gradients of one field in some cells; the answer elsewhere means nothing.
   *
   * @param cells all cells with boundary faces, and others; not modified
   * @param value in cells; not modified
   * @param boundaryValue on boundary faces, used where known; not modified
   * @param gx answer along x
   * @param gy answer along y
   */
  public void of(int[] cells, double[] value, double[] boundaryValue, double[] gx, double[] gy) {
    for (int r : cells) {
      row(r, value, gx, gy);
    }
    addBoundary(value, boundaryValue, gx, gy);
  }

  /** g = Σ entry · (φ_k - φ_r); four neighbours, as in most cells, are summed without a loop. */
  private void row(int r, double[] value, double[] gx, double[] gy) {
    int[] column = geometry.pattern.column;
    double centre = value[r];
    double x = 0;
    double y = 0;
    int e = geometry.pattern.rowStart[r];
    int end = geometry.pattern.rowStart[r + 1];
    if (end - e == 4) {
      double d0 = value[column[e]] - centre;
      double d1 = value[column[e + 1]] - centre;
      double d2 = value[column[e + 2]] - centre;
      double d3 = value[column[e + 3]] - centre;
      x = entryX[e] * d0 + entryX[e + 1] * d1 + (entryX[e + 2] * d2 + entryX[e + 3] * d3);
      y = entryY[e] * d0 + entryY[e + 1] * d1 + (entryY[e + 2] * d2 + entryY[e + 3] * d3);
    } else {
      for (; e < end; e++) {
        double d = value[column[e]] - centre;
        x += entryX[e] * d;
        y += entryY[e] * d;
      }
    }
    gx[r] = x;
    gy[r] = y;
  }

  /** g += entry · (φ_b - φ_r) where the boundary value is known. */
  private void addBoundary(double[] value, double[] boundaryValue, double[] gx, double[] gy) {
    int[] cell = geometry.mesh.bCell;
    for (int b = 0; b < cell.length; b++) {
      double x = boundaryX[b];
      double y = boundaryY[b];
      if (x != 0 || y != 0) {
        double d = boundaryValue[b] - value[cell[b]];
        gx[cell[b]] += x * d;
        gy[cell[b]] += y * d;
      }
    }
  }
}
