package hemline.solver.linear;

import java.util.Arrays;

/**
 * Coefficients of a transport equation: {@code diagonal[r] x[r] = Σ neighbour[e] x[column[e]] +
 * b[r]}.
 *
 * <p>The arrays are filled by the discretisation and reused from iteration to iteration.
 */
public final class SparseSystem {
  public final SparsePattern pattern;
  public final double[] diagonal;

  /** Coefficients of the neighbours, by entry of the pattern; not negative for bounded schemes. */
  public final double[] neighbour;

  public SparseSystem(SparsePattern pattern) {
    this.pattern = pattern;
    diagonal = new double[pattern.size];
    neighbour = new double[pattern.column.length];
  }

  /** Sets all coefficients to zero. */
  public void clear() {
    Arrays.fill(diagonal, 0);
    Arrays.fill(neighbour, 0);
  }

  /**
   * Gauss–Seidel sweeps, forwards and backwards in turn.
   *
   * @param b right-hand side; not modified
   * @param x start and answer; modified
   * @param sweeps number of single sweeps
   */
  public void relax(double[] b, double[] x, int sweeps) {
    for (int s = 0; s < sweeps; s++) {
      if ((s & 1) == 0) {
        for (int r = 0; r < pattern.size; r++) {
          relaxRow(b, x, r);
        }
      } else {
        for (int r = pattern.size - 1; r >= 0; r--) {
          relaxRow(b, x, r);
        }
      }
    }
  }

  /**
   * The same sweeps for two unknowns with the same coefficients, side by side.
   *
   * @param b right-hand side of x; not modified
   * @param x start and answer; modified
   * @param c right-hand side of y; not modified
   * @param y start and answer; modified
   * @param sweeps number of single sweeps
   */
  public void relax(double[] b, double[] x, double[] c, double[] y, int sweeps) {
    for (int s = 0; s < sweeps; s++) {
      if ((s & 1) == 0) {
        for (int r = 0; r < pattern.size; r++) {
          relaxRow(b, x, c, y, r);
        }
      } else {
        for (int r = pattern.size - 1; r >= 0; r--) {
          relaxRow(b, x, c, y, r);
        }
      }
    }
  }

  private void relaxRow(double[] b, double[] x, double[] c, double[] y, int r) {
    double sum = b[r];
    double other = c[r];
    for (int e = pattern.rowStart[r]; e < pattern.rowStart[r + 1]; e++) {
      double a = neighbour[e];
      int j = pattern.column[e];
      sum += a * x[j];
      other += a * y[j];
    }
    x[r] = sum / diagonal[r];
    y[r] = other / diagonal[r];
  }

  private void relaxRow(double[] b, double[] x, int r) {
    double sum = b[r];
    for (int e = pattern.rowStart[r]; e < pattern.rowStart[r + 1]; e++) {
      sum += neighbour[e] * x[pattern.column[e]];
    }
    x[r] = sum / diagonal[r];
  }

  /**
   * Sum of absolute residuals {@code |b + Σ a_nb x_nb - a_P x_P|}.
   *
   * @param b right-hand side; not modified
   * @param x values; not modified
   * @param counted rows that count; not modified
   */
  public double residual(double[] b, double[] x, boolean[] counted) {
    double total = 0;
    for (int r = 0; r < pattern.size; r++) {
      if (!counted[r]) {
        continue;
      }
      double sum = b[r] - diagonal[r] * x[r];
      for (int e = pattern.rowStart[r]; e < pattern.rowStart[r + 1]; e++) {
        sum += neighbour[e] * x[pattern.column[e]];
      }
      total += Math.abs(sum);
    }
    return total;
  }

  /**
   * Residuals {@code b + Σ a_nb x_nb - a_P x_P} of all rows.
   *
   * @param b right-hand side; not modified
   * @param x values; not modified
   * @param out answer
   */
  public void residuals(double[] b, double[] x, double[] out) {
    for (int r = 0; r < pattern.size; r++) {
      double sum = b[r] - diagonal[r] * x[r];
      for (int e = pattern.rowStart[r]; e < pattern.rowStart[r + 1]; e++) {
        sum += neighbour[e] * x[pattern.column[e]];
      }
      out[r] = sum;
    }
  }
}
