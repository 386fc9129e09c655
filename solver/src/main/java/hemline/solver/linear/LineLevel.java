package hemline.solver.linear;

import java.util.Arrays;

/**
 * A conductance network on a rectangle of places, and sweeps that solve whole lines of it.
 *
 * <p>Place (i, j) has index {@code (j + 1) * width + i + 1} in all arrays: a rim of empty places
 * surrounds the rectangle. Empty places have no links and keep the value zero.
 */
final class LineLevel {
  /** Rows solved side by side. */
  private static final int TOGETHER = 4;

  final int nx;
  final int ny;
  final int width;

  /** Rows with empty ones added. */
  private final int padded;

  final int places;

  /** Conductance to the next place of the row. */
  final double[] east;

  /** Conductance to the place in the next row. */
  final double[] north;

  /** Conductance to ground. */
  final double[] grounding;

  final double[] diagonal;

  /** Right-hand side and answer of this level within a cycle. */
  final double[] b;

  final double[] x;

  /** Inverse pivots of the lines along x, then along y. */
  private final double[] pivotX;

  private final double[] pivotY;

  LineLevel(int nx, int ny) {
    this.nx = nx;
    this.ny = ny;
    width = nx + 2;
    padded = (ny + 2 * TOGETHER - 1) / (2 * TOGETHER) * 2 * TOGETHER;
    places = width * (padded + 2);
    east = new double[places];
    north = new double[places];
    grounding = new double[places];
    diagonal = new double[places];
    b = new double[places];
    x = new double[places];
    pivotX = new double[places];
    pivotY = new double[places];
    Arrays.fill(diagonal, 1);
  }

  int at(int i, int j) {
    return (j + 1) * width + i + 1;
  }

  /** Sets all conductances to zero. */
  void clear() {
    Arrays.fill(east, 0);
    Arrays.fill(north, 0);
    Arrays.fill(grounding, 0);
  }

  /** Diagonal from the conductances. */
  void sum() {
    for (int j = 0; j < ny; j++) {
      int row = at(0, j);
      for (int p = row; p < row + nx; p++) {
        double d = (east[p] + east[p - 1]) + (north[p] + north[p - width]) + grounding[p];
        diagonal[p] = d == 0 ? 1 : d;
      }
    }
  }

  /** Factorises all lines of both directions; call after {@link #sum}. */
  void factorise() {
    // pivot = d - c² / previous pivot
    for (int j = 0; j < ny; j++) {
      int row = at(0, j);
      for (int p = row; p < row + nx; p++) {
        double c = north[p - width];
        pivotY[p] = 1 / (diagonal[p] - c * c * pivotY[p - width]);
      }
    }
    for (int j = 0; j < padded; j += TOGETHER) {
      factoriseRows(at(0, j), width);
    }
  }

  /** Four neighbouring rows at once: one alone would wait for its divisions. */
  private void factoriseRows(int from, int w) {
    double[] d = diagonal;
    double[] inverse = pivotX;
    double[] c = east;
    for (int p = from; p < from + nx; p++) {
      inverse[p] = 1 / (d[p] - c[p - 1] * c[p - 1] * inverse[p - 1]);
      int q = p + w;
      inverse[q] = 1 / (d[q] - c[q - 1] * c[q - 1] * inverse[q - 1]);
      q += w;
      inverse[q] = 1 / (d[q] - c[q - 1] * c[q - 1] * inverse[q - 1]);
      q += w;
      inverse[q] = 1 / (d[q] - c[q - 1] * c[q - 1] * inverse[q - 1]);
    }
  }

  /**
   * Solves every second row, the others held. Four are solved side by side: what one waits for
   * leaves time for the others.
   *
   * @param first 0 for the rows 0, 2, 4, …, else 1
   */
  void solveRows(int first) {
    int w = width;
    for (int j = first; j < padded; j += 2 * TOGETHER) {
      int r0 = at(0, j);
      forward(r0, r0 + 2 * w, r0 + 4 * w, r0 + 6 * w);
      backward(r0, r0 + 2 * w, r0 + 4 * w, r0 + 6 * w);
    }
  }

  private void forward(int r0, int r1, int r2, int r3) {
    double x0 = 0;
    double x1 = 0;
    double x2 = 0;
    double x3 = 0;
    for (int i = 0; i < nx; i++) {
      x0 = eliminated(r0 + i, x0);
      x1 = eliminated(r1 + i, x1);
      x2 = eliminated(r2 + i, x2);
      x3 = eliminated(r3 + i, x3);
      x[r0 + i] = x0;
      x[r1 + i] = x1;
      x[r2 + i] = x2;
      x[r3 + i] = x3;
    }
  }

  /** Value after elimination along x, from that of the place before. */
  private double eliminated(int p, double before) {
    double sum = b[p] + (north[p] * x[p + width] + north[p - width] * x[p - width]);
    return sum * pivotX[p] + east[p - 1] * pivotX[p] * before;
  }

  private void backward(int r0, int r1, int r2, int r3) {
    double x0 = 0;
    double x1 = 0;
    double x2 = 0;
    double x3 = 0;
    for (int i = nx - 1; i >= 0; i--) {
      x0 = x[r0 + i] + east[r0 + i] * pivotX[r0 + i] * x0;
      x1 = x[r1 + i] + east[r1 + i] * pivotX[r1 + i] * x1;
      x2 = x[r2 + i] + east[r2 + i] * pivotX[r2 + i] * x2;
      x3 = x[r3 + i] + east[r3 + i] * pivotX[r3 + i] * x3;
      x[r0 + i] = x0;
      x[r1 + i] = x1;
      x[r2 + i] = x2;
      x[r3 + i] = x3;
    }
  }

  /**
   * Solves every second column, the others held.
   *
   * @param first 0 for the columns 0, 2, 4, …, else 1
   */
  void solveColumns(int first) {
    int w = width;
    for (int j = 0; j < ny; j++) {
      int row = at(0, j);
      for (int p = row + first; p < row + nx; p += 2) {
        double sum = b[p] + (east[p] * x[p + 1] + east[p - 1] * x[p - 1]);
        x[p] = (sum + north[p - w] * x[p - w]) * pivotY[p];
      }
    }
    for (int j = ny - 2; j >= 0; j--) {
      int row = at(0, j);
      for (int p = row + first; p < row + nx; p += 2) {
        x[p] += north[p] * pivotY[p] * x[p + w];
      }
    }
  }

  /** What is left of the right-hand side at a place. */
  double residual(int p) {
    return b[p]
        - diagonal[p] * x[p]
        + (east[p] * x[p + 1] + east[p - 1] * x[p - 1])
        + (north[p] * x[p + width] + north[p - width] * x[p - width]);
  }
}
