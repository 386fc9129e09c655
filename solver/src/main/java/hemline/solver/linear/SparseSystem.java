package hemline.solver.linear;

import java.util.Arrays;

/**
 * Coefficients of a transport equation: {@code diagonal[r] x[r] = Σ neighbour[e] x[column[e]] +
 * b[r]}.
 *
 * <p>The arrays are filled by the discretisation and reused from iteration to iteration. Rows of
 * four neighbours, which are nearly all, are written out; their terms are added in such an order
 * that the unknown swept just before comes last, because a sweep waits for nothing else. Each
 * direction has its own loop: one row method that takes the order as arguments gives the same bits
 * in twice the time.
 */
public final class SparseSystem {
  public final SparsePattern pattern;
  public final double[] diagonal;

  /** Coefficients of the neighbours, by entry of the pattern; not negative for bounded schemes. */
  public final double[] neighbour;

  private final double[] inverse;

  public SparseSystem(SparsePattern pattern) {
    this.pattern = pattern;
    diagonal = new double[pattern.size];
    inverse = new double[pattern.size];
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
    invert();
    for (int s = 0; s < sweeps; s++) {
      if ((s & 1) == 0) {
        forward(b, x);
      } else {
        backward(b, x);
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
    invert();
    for (int s = 0; s < sweeps; s++) {
      if ((s & 1) == 0) {
        forward(b, x, c, y);
      } else {
        backward(b, x, c, y);
      }
    }
  }

  private void invert() {
    for (int r = 0; r < inverse.length; r++) {
      inverse[r] = 1 / diagonal[r];
    }
  }

  private void forward(double[] b, double[] x) {
    int[] start = pattern.rowStart;
    int[] column = pattern.column;
    double[] a = neighbour;
    for (int r = 0; r < inverse.length; r++) {
      int e = start[r];
      double sum = b[r];
      if (start[r + 1] - e == 4) {
        sum += a[e] * x[column[e]] + (a[e + 2] * x[column[e + 2]] + a[e + 3] * x[column[e + 3]]);
        sum += a[e + 1] * x[column[e + 1]];
      } else {
        sum += others(x, r);
      }
      x[r] = sum * inverse[r];
    }
  }

  private void backward(double[] b, double[] x) {
    int[] start = pattern.rowStart;
    int[] column = pattern.column;
    double[] a = neighbour;
    for (int r = inverse.length - 1; r >= 0; r--) {
      int e = start[r];
      double sum = b[r];
      if (start[r + 1] - e == 4) {
        sum += a[e + 3] * x[column[e + 3]] + (a[e] * x[column[e]] + a[e + 1] * x[column[e + 1]]);
        sum += a[e + 2] * x[column[e + 2]];
      } else {
        sum += others(x, r);
      }
      x[r] = sum * inverse[r];
    }
  }

  private void forward(double[] b, double[] x, double[] c, double[] y) {
    int[] start = pattern.rowStart;
    int[] column = pattern.column;
    double[] a = neighbour;
    for (int r = 0; r < inverse.length; r++) {
      int e = start[r];
      double sum = b[r];
      double other = c[r];
      if (start[r + 1] - e == 4) {
        double a0 = a[e];
        double a1 = a[e + 1];
        double a2 = a[e + 2];
        double a3 = a[e + 3];
        int j0 = column[e];
        int j1 = column[e + 1];
        int j2 = column[e + 2];
        int j3 = column[e + 3];
        sum += a0 * x[j0] + (a2 * x[j2] + a3 * x[j3]);
        other += a0 * y[j0] + (a2 * y[j2] + a3 * y[j3]);
        sum += a1 * x[j1];
        other += a1 * y[j1];
      } else {
        sum += others(x, r);
        other += others(y, r);
      }
      x[r] = sum * inverse[r];
      y[r] = other * inverse[r];
    }
  }

  private void backward(double[] b, double[] x, double[] c, double[] y) {
    int[] start = pattern.rowStart;
    int[] column = pattern.column;
    double[] a = neighbour;
    for (int r = inverse.length - 1; r >= 0; r--) {
      int e = start[r];
      double sum = b[r];
      double other = c[r];
      if (start[r + 1] - e == 4) {
        double a0 = a[e];
        double a1 = a[e + 1];
        double a2 = a[e + 2];
        double a3 = a[e + 3];
        int j0 = column[e];
        int j1 = column[e + 1];
        int j2 = column[e + 2];
        int j3 = column[e + 3];
        sum += a3 * x[j3] + (a0 * x[j0] + a1 * x[j1]);
        other += a3 * y[j3] + (a0 * y[j0] + a1 * y[j1]);
        sum += a2 * x[j2];
        other += a2 * y[j2];
      } else {
        sum += others(x, r);
        other += others(y, r);
      }
      x[r] = sum * inverse[r];
      y[r] = other * inverse[r];
    }
  }

  /** Σ a_nb x_nb of any row. */
  private double others(double[] x, int r) {
    double sum = 0;
    for (int e = pattern.rowStart[r]; e < pattern.rowStart[r + 1]; e++) {
      sum += neighbour[e] * x[pattern.column[e]];
    }
    return sum;
  }

  private double residual(double[] b, double[] x, int r) {
    int e = pattern.rowStart[r];
    double sum = b[r] - diagonal[r] * x[r];
    if (pattern.rowStart[r + 1] - e != 4) {
      return sum + others(x, r);
    }
    int[] column = pattern.column;
    double[] a = neighbour;
    return sum
        + (a[e] * x[column[e]] + a[e + 1] * x[column[e + 1]])
        + (a[e + 2] * x[column[e + 2]] + a[e + 3] * x[column[e + 3]]);
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
      if (counted[r]) {
        total += Math.abs(residual(b, x, r));
      }
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
      out[r] = residual(b, x, r);
    }
  }
}
