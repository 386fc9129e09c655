package hemline.solver.grid;

import java.util.Arrays;

/**
 * Distance from cells to the nearest wall.
 *
 * <p>Walls are the boundary faces of a mesh, each taken as the straight segment with its area
 * vector and centroid. The search descends a tree of bounding boxes over the segments and drops
 * boxes that are farther than the best so far.
 */
public final class WallDistance {
  private static final int LEAF = 4;

  /** Cells between two checkpoints. */
  private static final int STRETCH = 500;

  private final double[] ax;
  private final double[] ay;
  private final double[] bx;
  private final double[] by;

  /** Segments in the order of the tree: a node's segments are a range, its halves split it. */
  private final int[] order;

  private final double[] boxes;

  private WallDistance(Mesh mesh, boolean[] wall, Runnable checkpoint) {
    int[] walls = new int[mesh.boundaryFaces];
    int n = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (wall[b]) {
        walls[n++] = b;
      }
    }
    ax = new double[n];
    ay = new double[n];
    bx = new double[n];
    by = new double[n];
    order = new int[n];
    for (int k = 0; k < n; k++) {
      int b = walls[k];
      // the tangent is the area vector turned by a quarter
      ax[k] = mesh.bx[b] + 0.5 * mesh.bny[b];
      ay[k] = mesh.by[b] - 0.5 * mesh.bnx[b];
      bx[k] = mesh.bx[b] - 0.5 * mesh.bny[b];
      by[k] = mesh.by[b] + 0.5 * mesh.bnx[b];
      order[k] = k;
    }
    boxes = new double[4 * Math.max(1, nodes(n))];
    if (n > 0) {
      build(0, 0, n, checkpoint);
    }
  }

  /**
   * Distance from each cell's centroid to the nearest no-slip boundary face, m; infinite when there
   * is none.
   *
   * @param mesh the mesh
   * @param wall true for boundary faces without slip; not modified
   */
  public static double[] of(Mesh mesh, boolean[] wall) {
    return of(mesh, wall, () -> {});
  }

  /**
   * The same unless it is stopped.
   *
   * @param checkpoint run again and again; what it throws ends the work
   * @see #of(Mesh, boolean[])
   */
  public static double[] of(Mesh mesh, boolean[] wall, Runnable checkpoint) {
    WallDistance tree = new WallDistance(mesh, wall, checkpoint);
    double[] distance = new double[mesh.cells];
    Arrays.fill(distance, Double.POSITIVE_INFINITY);
    if (tree.order.length == 0) {
      return distance;
    }
    int near = 0;
    for (int c = 0; c < mesh.cells; c++) {
      if (c % STRETCH == 0) {
        checkpoint.run();
      }
      // the wall next to the cell before is a good first guess
      near = tree.nearest(mesh.cx[c], mesh.cy[c], near);
      distance[c] = Math.sqrt(tree.squaredDistance(near, mesh.cx[c], mesh.cy[c]));
    }
    return distance;
  }

  private static int nodes(int segments) {
    int nodes = 1;
    while (nodes * LEAF < 2 * segments) {
      nodes *= 2;
    }
    return 2 * nodes;
  }

  private void build(int node, int from, int to, Runnable checkpoint) {
    checkpoint.run();
    double xMin = Double.POSITIVE_INFINITY;
    double xMax = Double.NEGATIVE_INFINITY;
    double yMin = Double.POSITIVE_INFINITY;
    double yMax = Double.NEGATIVE_INFINITY;
    for (int s = from; s < to; s++) {
      int k = order[s];
      xMin = Math.min(xMin, Math.min(ax[k], bx[k]));
      xMax = Math.max(xMax, Math.max(ax[k], bx[k]));
      yMin = Math.min(yMin, Math.min(ay[k], by[k]));
      yMax = Math.max(yMax, Math.max(ay[k], by[k]));
    }
    boxes[4 * node] = xMin;
    boxes[4 * node + 1] = xMax;
    boxes[4 * node + 2] = yMin;
    boxes[4 * node + 3] = yMax;
    if (to - from <= LEAF) {
      return;
    }
    boolean byX = xMax - xMin > yMax - yMin;
    Integer[] part = new Integer[to - from];
    for (int s = from; s < to; s++) {
      part[s - from] = order[s];
    }
    Arrays.sort(
        part,
        (p, q) ->
            byX
                ? Double.compare(ax[p] + bx[p], ax[q] + bx[q])
                : Double.compare(ay[p] + by[p], ay[q] + by[q]));
    for (int s = from; s < to; s++) {
      order[s] = part[s - from];
    }
    int middle = (from + to) >>> 1;
    build(2 * node + 1, from, middle, checkpoint);
    build(2 * node + 2, middle, to, checkpoint);
  }

  private int nearest(double x, double y, int guess) {
    return search(0, 0, order.length, x, y, guess);
  }

  private int search(int node, int from, int to, double x, double y, int best) {
    if (squaredBoxDistance(node, x, y) >= squaredDistance(best, x, y)) {
      return best;
    }
    if (to - from <= LEAF) {
      int found = best;
      for (int s = from; s < to; s++) {
        if (squaredDistance(order[s], x, y) < squaredDistance(found, x, y)) {
          found = order[s];
        }
      }
      return found;
    }
    int middle = (from + to) >>> 1;
    int low = 2 * node + 1;
    int high = low + 1;
    if (squaredBoxDistance(low, x, y) <= squaredBoxDistance(high, x, y)) {
      int found = search(low, from, middle, x, y, best);
      return search(high, middle, to, x, y, found);
    }
    int found = search(high, middle, to, x, y, best);
    return search(low, from, middle, x, y, found);
  }

  private double squaredBoxDistance(int node, double x, double y) {
    double dx = Math.max(0, Math.max(boxes[4 * node] - x, x - boxes[4 * node + 1]));
    double dy = Math.max(0, Math.max(boxes[4 * node + 2] - y, y - boxes[4 * node + 3]));
    return dx * dx + dy * dy;
  }

  private double squaredDistance(int k, double x, double y) {
    double ex = bx[k] - ax[k];
    double ey = by[k] - ay[k];
    double t = ((x - ax[k]) * ex + (y - ay[k]) * ey) / (ex * ex + ey * ey);
    t = t > 0 ? Math.min(1, t) : 0;
    double dx = ax[k] + t * ex - x;
    double dy = ay[k] + t * ey - y;
    return dx * dx + dy * dy;
  }
}
