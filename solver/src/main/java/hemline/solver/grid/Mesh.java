package hemline.solver.grid;

/**
 * Fluid cells and faces of a tensor-product grid cut by solids, in flat arrays. Read-only by
 * agreement: the arrays are shared, not copied.
 *
 * <p>A cell is a grid rectangle minus the solids, or several of them joined where a cut left too
 * little. Interior faces lie on grid lines and separate two different cells; two cells may share
 * more than one face. Boundary faces are domain sides and solid surfaces. For every cell the
 * outward area vectors of all its faces sum to zero to round-off.
 */
public final class Mesh {
  /** The grid lines. */
  public final GridLines lines;

  /**
   * Cell of grid rectangle (i, j) at index {@code j * nx + i}, or -1 where there is no fluid.
   * Joined rectangles name the same cell.
   */
  public final int[] cellAt;

  // ---- cells
  public final int cells;

  /** Fluid area of a cell, m². */
  public final double[] volume;

  /** Centroid of the fluid area, m. */
  public final double[] cx;

  public final double[] cy;

  // ---- interior faces; the normal points from owner to neighbour, in positive x or y
  public final int faces;
  public final int[] owner;
  public final int[] neighbour;

  /** True for a face on a vertical grid line (normal along x). */
  public final boolean[] vertical;

  /** Open length, m, positive. */
  public final double[] area;

  /** Centroid of the open part, m. */
  public final double[] fx;

  public final double[] fy;

  /**
   * Grid position of the face: for a vertical face between rectangles (i-1, j) and (i, j) the value
   * {@code j * (nx + 1) + i}; for a horizontal one between (i, j-1) and (i, j) {@code j * nx + i}.
   */
  public final int[] gridFace;

  // ---- boundary faces
  public final int boundaryFaces;
  public final int[] bCell;

  /** Patch number, see {@link Patch}. */
  public final int[] bPatch;

  /** Outward area vector (out of the fluid), m. */
  public final double[] bnx;

  public final double[] bny;

  /** Centroid, m. */
  public final double[] bx;

  public final double[] by;

  /**
   * Grid position for faces on the domain sides, numbered as {@link #gridFace}; -1 on solids. Sides
   * LEFT and RIGHT are vertical faces, BOTTOM and TOP horizontal ones.
   */
  public final int[] bGridFace;

  Mesh(
      GridLines lines,
      int[] cellAt,
      double[] volume,
      double[] cx,
      double[] cy,
      int[] owner,
      int[] neighbour,
      boolean[] vertical,
      double[] area,
      double[] fx,
      double[] fy,
      int[] gridFace,
      int[] bCell,
      int[] bPatch,
      double[] bnx,
      double[] bny,
      double[] bx,
      double[] by,
      int[] bGridFace) {
    this.lines = lines;
    this.cellAt = cellAt;
    this.cells = volume.length;
    this.volume = volume;
    this.cx = cx;
    this.cy = cy;
    this.faces = owner.length;
    this.owner = owner;
    this.neighbour = neighbour;
    this.vertical = vertical;
    this.area = area;
    this.fx = fx;
    this.fy = fy;
    this.gridFace = gridFace;
    this.boundaryFaces = bCell.length;
    this.bCell = bCell;
    this.bPatch = bPatch;
    this.bnx = bnx;
    this.bny = bny;
    this.bx = bx;
    this.by = by;
    this.bGridFace = bGridFace;
  }
}
