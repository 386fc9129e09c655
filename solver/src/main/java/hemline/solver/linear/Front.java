package hemline.solver.linear;

import java.util.Arrays;

/**
 * Dense part of a multifrontal elimination: own unknowns first, then the border.
 *
 * <p>It is eliminated by rows in room that all fronts share; the factors are kept by columns, so
 * that solving adds whole columns to the right-hand side.
 */
final class Front {
  /** Pivots taken out of a row, and columns added to a right-hand side, at a time. */
  private static final int GROUP = 4;

  private final int[] unknowns;
  private final int ownUnknowns;
  private final Front[] children;
  private final int block;

  /** Rows owned, and rows with those of the border. */
  private final int own;

  private final int size;

  /** Column k of the unit lower factor below the diagonal, for k up to {@link #own}. */
  private final float[][] lower;

  /** Column k of the upper factor above the diagonal, of own rows; all columns. */
  private final float[][] upper;

  /** One over each pivot. */
  private final float[] inverse;

  /** What is left for the parent; dropped once the parent has taken it. */
  private float[][] remainder = new float[0][];

  /**
   * Reserves the factors.
   *
   * @param own unknowns eliminated here
   * @param border later unknowns that they touch, in order of elimination
   */
  Front(int[] own, int[] border, Front[] children, int block) {
    unknowns = Arrays.copyOf(own, own.length + border.length);
    System.arraycopy(border, 0, unknowns, own.length, border.length);
    ownUnknowns = own.length;
    this.children = children;
    this.block = block;
    this.own = own.length * block;
    size = unknowns.length * block;
    lower = new float[this.own][];
    for (int k = 0; k < this.own; k++) {
      lower[k] = new float[size - k - 1];
    }
    upper = new float[size][];
    for (int k = 0; k < size; k++) {
      upper[k] = new float[Math.min(k, this.own)];
    }
    inverse = new float[this.own];
  }

  /** Rows of the front, own and border. */
  int size() {
    return size;
  }

  /** Number of values in the factors. */
  long factorSize() {
    return (long) own * (2L * size - own);
  }

  /**
   * Assembles and eliminates.
   *
   * @param m room for at least {@link #size} rows and columns
   * @param position room by unknown, all -1; left so
   * @return false when a pivot vanished or is not finite
   */
  boolean factor(
      SparsePattern pattern,
      double[] diagonal,
      double[] entry,
      float[][] m,
      int[] position,
      Runnable checkpoint) {
    checkpoint.run();
    for (int i = 0; i < size; i++) {
      Arrays.fill(m[i], 0, size, 0);
    }
    for (int i = 0; i < unknowns.length; i++) {
      position[unknowns[i]] = i * block;
    }
    assemble(pattern, diagonal, entry, m, position);
    for (Front child : children) {
      extendAdd(child, m, position);
    }
    for (int i : unknowns) {
      position[i] = -1;
    }
    if (!eliminate(m, checkpoint)) {
      return false;
    }
    keep(m);
    return true;
  }

  private void assemble(
      SparsePattern pattern, double[] diagonal, double[] entry, float[][] m, int[] position) {
    int area = block * block;
    for (int i = 0; i < ownUnknowns; i++) {
      int unknown = unknowns[i];
      int row = i * block;
      add(m, row, row, diagonal, unknown * area);
      for (int e = pattern.rowStart[unknown]; e < pattern.rowStart[unknown + 1]; e++) {
        int other = pattern.column[e];
        int column = position[other];
        if (column >= 0) {
          add(m, row, column, entry, e * area);
          if (column >= own) {
            // the mirrored entry lies in the other unknown's row
            for (int k = pattern.rowStart[other]; k < pattern.rowStart[other + 1]; k++) {
              if (pattern.column[k] == unknown) {
                add(m, column, row, entry, k * area);
              }
            }
          }
        }
      }
    }
  }

  private void add(float[][] m, int row, int column, double[] from, int at) {
    for (int a = 0; a < block; a++) {
      float[] target = m[row + a];
      for (int b = 0; b < block; b++) {
        target[column + b] += (float) from[at + a * block + b];
      }
    }
  }

  private void extendAdd(Front child, float[][] m, int[] position) {
    int n = child.size - child.own;
    int[] place = new int[n];
    for (int i = 0; i < n; i++) {
      place[i] = position[child.unknowns[child.ownUnknowns + i / block]] + i % block;
    }
    for (int i = 0; i < n; i++) {
      float[] source = child.remainder[i];
      float[] target = m[place[i]];
      for (int j = 0; j < n; j++) {
        target[place[j]] += source[j];
      }
    }
    child.remainder = new float[0][];
  }

  /** Own rows become L U in place, rows of the border lower U⁻¹ and what is left. */
  private boolean eliminate(float[][] m, Runnable checkpoint) {
    for (int i = 0; i < size; i++) {
      checkpoint.run();
      float[] row = m[i];
      int pivots = Math.min(i, own);
      for (int from = 0; from < pivots; from += GROUP) {
        int to = Math.min(from + GROUP, pivots);
        for (int k = from; k < to; k++) {
          row[k] *= inverse[k];
          for (int j = k + 1; j < to; j++) {
            row[j] -= row[k] * m[k][j];
          }
        }
        subtract(row, row, m, from, to, to, size);
      }
      if (i < own) {
        if (row[i] == 0 || !Float.isFinite(row[i])) {
          return false;
        }
        inverse[i] = 1 / row[i];
      }
    }
    return true;
  }

  private void keep(float[][] m) {
    for (int i = 0; i < size; i++) {
      float[] row = m[i];
      for (int k = 0; k < Math.min(i, own); k++) {
        lower[k][i - k - 1] = row[k];
      }
      if (i < own) {
        for (int k = i + 1; k < size; k++) {
          upper[k][i] = row[k];
        }
      }
    }
    remainder = new float[size - own][];
    for (int i = own; i < size; i++) {
      remainder[i - own] = Arrays.copyOfRange(m[i], own, size);
    }
  }

  /**
   * target -= Σ factor[k] rows[k] for the k of a group, in a range of columns.
   *
   * @param first of the group, {@code last} behind it
   */
  private static void subtract(
      float[] target, float[] factor, float[][] rows, int first, int last, int from, int to) {
    if (last - first == GROUP) {
      float a = factor[first];
      float b = factor[first + 1];
      float c = factor[first + 2];
      float d = factor[first + 3];
      float[] ra = rows[first];
      float[] rb = rows[first + 1];
      float[] rc = rows[first + 2];
      float[] rd = rows[first + 3];
      for (int j = from; j < to; j++) {
        target[j] -= a * ra[j] + b * rb[j] + c * rc[j] + d * rd[j];
      }
    } else {
      for (int k = first; k < last; k++) {
        float a = factor[k];
        float[] ra = rows[k];
        for (int j = from; j < to; j++) {
          target[j] -= a * ra[j];
        }
      }
    }
  }

  /**
   * Solves with the unit lower factor: y_i -= L_ik y_k, borders included.
   *
   * @param x right-hand side, changed
   * @param y room for {@link #size} values
   */
  void forward(double[] x, float[] y) {
    gather(x, y);
    for (int k = 0; k < own; k++) {
      float[] column = lower[k];
      float a = y[k];
      for (int j = 0; j < column.length; j++) {
        y[k + 1 + j] -= a * column[j];
      }
    }
    scatter(y, size, x);
  }

  /**
   * Solves with the upper factor, once the border's values are known: y_i -= U_ik y_k.
   *
   * @param x changed where this front owns it
   * @param y room for {@link #size} values
   */
  void backward(double[] x, float[] y) {
    gather(x, y);
    int k = size;
    for (; k - GROUP >= own; k -= GROUP) {
      subtract(y, y, upper, k - GROUP, k, 0, own);
    }
    subtract(y, y, upper, own, k, 0, own);
    for (k = own - 1; k >= 0; k--) {
      y[k] *= inverse[k];
      float[] column = upper[k];
      float a = y[k];
      for (int j = 0; j < k; j++) {
        y[j] -= a * column[j];
      }
    }
    scatter(y, own, x);
  }

  private void gather(double[] x, float[] y) {
    for (int i = 0; i < unknowns.length; i++) {
      for (int a = 0; a < block; a++) {
        y[i * block + a] = (float) x[unknowns[i] * block + a];
      }
    }
  }

  private void scatter(float[] y, int count, double[] x) {
    for (int i = 0; i < count / block; i++) {
      for (int a = 0; a < block; a++) {
        x[unknowns[i] * block + a] = y[i * block + a];
      }
    }
  }
}
