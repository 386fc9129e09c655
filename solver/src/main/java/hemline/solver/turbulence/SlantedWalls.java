package hemline.solver.turbulence;

import hemline.solver.grid.Mesh;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Where the wall law is read beside walls that cut the grid's rectangles at a slant.
 *
 * <p>Cut cells have their centroids at any distance from the wall, and neighbours at very different
 * ones. Read there, friction, ω and the source of k alternate from face to face, and slivers, whose
 * ω is huge, drain k around them. Beside slanted walls all of them are therefore read at {@link
 * #READ} of the rectangle's extent at least, the friction with the velocity found at that place
 * (compare the probed point of Capizzano 2011, AIAA J. 49, 2367).
 */
final class SlantedWalls {
  /**
   * Least distance of the place read, over the rectangle's extent. At an upright wall the cell's
   * centroid lies at 0.5. From 0.85 to 1.05 friction in slanted channels is within 5 % of Dean's;
   * the further out, the later coarse grids let the flow leave a round nose.
   */
  private static final double READ = 0.95;

  /** Sine below which a wall counts as parallel to grid lines. */
  private static final double UPRIGHT = 1e-6;

  /** Relative difference below which two distances are one. */
  private static final double TIE = 1e-9;

  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final Boundary boundary;

  /** Largest width and height of the rectangles of each cell, m. */
  private final double[][] size;

  /** Distance from each boundary face at which the wall law is read, m. */
  final double[] distance;

  /** Cell in which the place read lies; the face's own cell where its centroid is read. */
  final int[] cell;

  SlantedWalls(FaceGeometry geometry, Boundary boundary) {
    this.geometry = geometry;
    this.boundary = boundary;
    mesh = geometry.mesh;
    distance = geometry.bDistance.clone();
    cell = mesh.bCell.clone();
    size = rectangles();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (isSlanted(b)) {
        int c = mesh.bCell[b];
        double nx = geometry.bux[b];
        double ny = geometry.buy[b];
        double d = READ * extent(b, c);
        int place = d > distance[b] ? cellAt(mesh.bx[b] - d * nx, mesh.by[b] - d * ny) : -1;
        if (place >= 0) {
          distance[b] = d;
          cell[b] = place;
        }
      }
    }
  }

  /** True for a wall face that is parallel to no grid line. */
  boolean isSlanted(int b) {
    return boundary.kind[b] == Boundary.WALL
        && Math.abs(geometry.bux[b]) > UPRIGHT
        && Math.abs(geometry.buy[b]) > UPRIGHT;
  }

  /**
   * Extent of a cell's rectangle along the normal of a boundary face, m: √((n_x width)² + (n_y
   * height)²), which in a square is the same in all directions.
   */
  double extent(int b, int c) {
    return Math.hypot(geometry.bux[b] * size[0][c], geometry.buy[b] * size[1][c]);
  }

  /** True where another place than the cell's centroid is read. */
  boolean isMoved(int b) {
    return distance[b] != geometry.bDistance[b];
  }

  /** Wall distances of cells, at least those at which the wall law is read. */
  double[] readDistances(double[] wallDistance) {
    double[] read = wallDistance.clone();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (isMoved(b)) {
        read[mesh.bCell[b]] = Math.max(read[mesh.bCell[b]], distance[b]);
      }
    }
    return read;
  }

  /** Interior faces beside a cell whose nearest wall is slanted. */
  int[] facesNear(double[] wallDistance) {
    boolean[] slanted = new boolean[mesh.boundaryFaces];
    boolean any = false;
    for (int b = 0; b < slanted.length; b++) {
      slanted[b] = isSlanted(b);
      any |= slanted[b];
    }
    if (!any) {
      return new int[0];
    }
    double[] toSlanted = WallDistance.of(mesh, slanted);
    boolean[] near = new boolean[mesh.cells];
    for (int c = 0; c < near.length; c++) {
      // a corner belongs to both of its walls
      near[c] = toSlanted[c] <= wallDistance[c] * (1 + TIE);
    }
    return IntStream.range(0, mesh.faces)
        .filter(f -> near[mesh.owner[f]] || near[mesh.neighbour[f]])
        .toArray();
  }

  private double[][] rectangles() {
    double[] x = mesh.lines.x();
    double[] y = mesh.lines.y();
    int nx = mesh.lines.nx();
    double[][] size = new double[2][mesh.cells];
    for (int r = 0; r < mesh.cellAt.length; r++) {
      int c = mesh.cellAt[r];
      if (c >= 0) {
        size[0][c] = Math.max(size[0][c], x[r % nx + 1] - x[r % nx]);
        size[1][c] = Math.max(size[1][c], y[r / nx + 1] - y[r / nx]);
      }
    }
    return size;
  }

  /** Cell at a place, -1 where there is no fluid. */
  private int cellAt(double x, double y) {
    int i = interval(mesh.lines.x(), x);
    int j = interval(mesh.lines.y(), y);
    return i < 0 || j < 0 ? -1 : mesh.cellAt[j * mesh.lines.nx() + i];
  }

  private static int interval(double[] lines, double at) {
    int k = Arrays.binarySearch(lines, at);
    int i = k >= 0 ? k : -k - 2;
    return i < lines.length - 1 ? i : -1;
  }
}
