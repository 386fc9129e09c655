package hemline.solver.linear;

/**
 * Joins neighbouring rows and columns of a {@link LineLevel} two by two, and carries residuals and
 * corrections between both levels.
 *
 * <p>Columns are joined unless a wall runs between them: two places side by side, neither empty,
 * without a link. Corrections are interpolated linearly towards the next place of the coarse level
 * along x and along y, as far as the links at building time conduct; residuals are spread with the
 * same weights. A coarse link is the sum of the fine ones it stands for, weakened by the longer way
 * between the coarse places, again as at building time.
 */
final class LineCoarsening {
  final LineLevel fine;
  final LineLevel coarse;

  /** Coarse column of each column, coarse row of each row. */
  private final int[] columnOf;

  private final int[] rowOf;

  /** Where the neighbour for interpolation lies: -1, 0 or 1. */
  private final int[] columnSide;

  private final int[] rowSide;

  /** Weight of that neighbour, by fine place. */
  private final double[] weightX;

  private final double[] weightY;

  /** Coarse over fine conductance of the links that cross between coarse places. */
  private final double[] shareX;

  private final double[] shareY;

  /**
   * Builds the coarser level.
   *
   * @param fine conductances hold typical values
   */
  LineCoarsening(LineLevel fine) {
    this.fine = fine;
    int nx = fine.nx;
    int ny = fine.ny;
    boolean[] wallX = walls(nx, ny, 1, fine.width, fine.east);
    boolean[] wallY = walls(ny, nx, fine.width, 1, fine.north);
    columnOf = new int[nx];
    rowOf = new int[ny];
    columnSide = new int[nx];
    rowSide = new int[ny];
    int columns = pair(wallX, columnOf, columnSide);
    int rows = pair(wallY, rowOf, rowSide);
    coarse = new LineLevel(columns, rows);
    weightX = new double[fine.places];
    weightY = new double[fine.places];
    shareX = new double[fine.places];
    shareY = new double[fine.places];
    weigh(1, nx, fine.width, ny, columnOf, columnSide, fine.east, weightX, shareX);
    weigh(fine.width, ny, 1, nx, rowOf, rowSide, fine.north, weightY, shareY);
    setCoefficients();
  }

  private boolean empty(int p) {
    int w = fine.width;
    return fine.east[p] + fine.east[p - 1] + fine.north[p] + fine.north[p - w] + fine.grounding[p]
        == 0;
  }

  /** True for each line that a wall parts from the next one. */
  private boolean[] walls(int lines, int length, int across, int along, double[] link) {
    boolean[] wall = new boolean[lines];
    for (int k = 0; k + 1 < lines; k++) {
      for (int m = 0; m < length; m++) {
        int p = fine.at(0, 0) + k * across + m * along;
        wall[k] |= link[p] == 0 && !empty(p) && !empty(p + across);
      }
    }
    return wall;
  }

  private static int pair(boolean[] wall, int[] coarseOf, int[] side) {
    int count = 0;
    for (int k = 0; k < wall.length; k++) {
      coarseOf[k] = count;
      if (k + 1 < wall.length && !wall[k]) {
        side[k] = -1;
        coarseOf[++k] = count;
        side[k] = 1;
      }
      count++;
    }
    return count;
  }

  // resistance between coarse places: half of the link within each, and the link between
  private void weigh(
      int across,
      int lines,
      int along,
      int length,
      int[] coarseOf,
      int[] side,
      double[] link,
      double[] weight,
      double[] share) {
    for (int m = 0; m < length; m++) {
      for (int k = 0; k + 1 < lines; k++) {
        int p = fine.at(0, 0) + k * across + m * along;
        if (coarseOf[k] == coarseOf[k + 1] || link[p] == 0) {
          continue;
        }
        int q = p + across;
        double between = 1 / link[p];
        double here = side[k] > 0 && link[p - across] > 0 ? 0.5 / link[p - across] : 0;
        double there = side[k + 1] < 0 && link[q] > 0 ? 0.5 / link[q] : 0;
        double all = here + between + there;
        weight[p] = here / all;
        weight[q] = there / all;
        share[p] = between / all;
      }
    }
  }

  /** Conductances of the coarse level from those of the fine one. */
  void setCoefficients() {
    coarse.clear();
    for (int j = 0; j < fine.ny; j++) {
      int row = fine.at(0, j);
      int coarseRow = coarse.at(0, rowOf[j]);
      for (int i = 0; i < fine.nx; i++) {
        int p = row + i;
        int c = coarseRow + columnOf[i];
        coarse.east[c] += shareX[p] * fine.east[p];
        coarse.north[c] += shareY[p] * fine.north[p];
        coarse.grounding[c] += fine.grounding[p];
      }
    }
    coarse.sum();
  }

  /**
   * Residuals of the fine level become the right-hand side of the coarse one. The odd columns have
   * been solved last and have none.
   */
  void restrict() {
    double[] out = coarse.b;
    java.util.Arrays.fill(out, 0);
    for (int j = 0; j < fine.ny; j++) {
      int row = fine.at(0, j);
      int coarseRow = coarse.at(0, rowOf[j]);
      int up = rowSide[j] * coarse.width;
      for (int i = 0; i < fine.nx; i += 2) {
        int p = row + i;
        double r = fine.residual(p);
        double wx = weightX[p];
        double wy = weightY[p];
        int c = coarseRow + columnOf[i];
        out[c] += (1 - wx - wy) * r;
        out[c + columnSide[i]] += wx * r;
        out[c + up] += wy * r;
      }
    }
  }

  /**
   * Adds the correction of the coarse level to the fine one, but to the odd columns: they are
   * solved next and would forget it.
   */
  void correct() {
    double[] z = coarse.x;
    for (int j = 0; j < fine.ny; j++) {
      int row = fine.at(0, j);
      int coarseRow = coarse.at(0, rowOf[j]);
      int up = rowSide[j] * coarse.width;
      for (int i = 0; i < fine.nx; i += 2) {
        int p = row + i;
        double wx = weightX[p];
        double wy = weightY[p];
        int c = coarseRow + columnOf[i];
        fine.x[p] += (1 - wx - wy) * z[c] + wx * z[c + columnSide[i]] + wy * z[c + up];
      }
    }
  }
}
