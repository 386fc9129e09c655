package hemline.solver.linear;

/**
 * Cholesky factorisation A = L Lᵀ of a symmetric positive band matrix, and solutions with it.
 *
 * <p>Rows are stored one after the other, {@code band + 1} numbers each, the diagonal last. Source:
 * Golub and Van Loan, Matrix Computations, algorithm 4.3.5 (from memory).
 */
final class BandCholesky {
  private final int size;
  private final int band;
  private final int width;
  private final double[] a;

  /**
   * Makes room for a matrix.
   *
   * @param size number of rows
   * @param band most columns between an entry and the diagonal
   */
  BandCholesky(int size, int band) {
    this.size = size;
    this.band = band;
    width = band + 1;
    a = new double[size * width];
  }

  /** Sets all entries to zero. */
  void clear() {
    java.util.Arrays.fill(a, 0);
  }

  /** Adds to the entry of a row and a column not right of the diagonal, within the band. */
  void add(int row, int column, double value) {
    a[row * width + band - (row - column)] += value;
  }

  /**
   * Replaces the matrix by its factor.
   *
   * @return false when the matrix is not positive definite; numbers that are none go through
   */
  boolean factorise() {
    for (int i = 0; i < size; i++) {
      int rowI = i * width + band - i;
      for (int j = Math.max(0, i - band); j <= i; j++) {
        int rowJ = j * width + band - j;
        double sum = a[rowI + j];
        for (int k = Math.max(0, i - band); k < j; k++) {
          sum -= a[rowI + k] * a[rowJ + k];
        }
        if (j < i) {
          a[rowI + j] = sum * a[rowJ + j];
        } else if (sum <= 0) {
          return false;
        } else {
          // the inverse of the diagonal is what solutions need
          a[rowI + i] = 1 / Math.sqrt(sum);
        }
      }
    }
    return true;
  }

  /**
   * Solves with the factor.
   *
   * @param x right-hand side, becomes the answer
   */
  void solve(double[] x) {
    for (int i = 0; i < size; i++) {
      int row = i * width + band - i;
      double sum = x[i];
      for (int k = Math.max(0, i - band); k < i; k++) {
        sum -= a[row + k] * x[k];
      }
      x[i] = sum * a[row + i];
    }
    for (int i = size - 1; i >= 0; i--) {
      int row = i * width + band - i;
      x[i] *= a[row + i];
      for (int k = Math.max(0, i - band); k < i; k++) {
        x[k] -= a[row + k] * x[i];
      }
    }
  }
}
