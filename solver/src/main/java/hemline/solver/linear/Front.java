package hemline.solver.linear;

import java.util.Arrays;

/** Dense part of the elimination: own unknowns first, then the border. */
final class Front {
  /** Pivots taken out of a row at a time. */
  static final int GROUP = 4;

  final int[] ownUnknowns;
  final int[] borderUnknowns;
  final Front[] children;
  final int block;

  /** Rows owned and rows of the border. */
  final int own;

  final int rest;

  /** Upper rows: own × own with the unit lower factor below the diagonal, and own × rest. */
  final double[][] upper;

  final double[][] right;

  /** Lower factor of the border rows, rest × own. */
  final double[][] lower;

  /** What is left for the parent, rest × rest; dropped once the parent has taken it. */
  double[][] remainder = new double[0][];

  /** One over each pivot. */
  final double[] inverse;

  /** Values of own unknowns and border while solving. */
  final double[] gathered;

  Front(int[] own, int[] border, Front[] children, int block) {
    ownUnknowns = own;
    borderUnknowns = border;
    this.children = children;
    this.block = block;
    this.own = own.length * block;
    rest = border.length * block;
    upper = new double[this.own][this.own];
    right = new double[this.own][rest];
    lower = new double[rest][this.own];
    inverse = new double[this.own];
    gathered = new double[this.own + rest];
  }

  boolean factor(
      SparsePattern pattern,
      double[] diagonal,
      double[] entry,
      int[] position,
      Runnable checkpoint) {
    checkpoint.run();
    for (int i = 0; i < own; i++) {
      Arrays.fill(upper[i], 0);
      Arrays.fill(right[i], 0);
    }
    for (double[] row : lower) {
      Arrays.fill(row, 0);
    }
    remainder = new double[rest][rest];
    for (int i = 0; i < ownUnknowns.length; i++) {
      position[ownUnknowns[i]] = i * block;
    }
    for (int i = 0; i < borderUnknowns.length; i++) {
      position[borderUnknowns[i]] = own + i * block;
    }
    assemble(pattern, diagonal, entry, position);
    for (Front child : children) {
      extendAdd(child, position);
    }
    for (int i : ownUnknowns) {
      position[i] = -1;
    }
    for (int i : borderUnknowns) {
      position[i] = -1;
    }
    return eliminate(checkpoint);
  }

  private void assemble(SparsePattern pattern, double[] diagonal, double[] entry, int[] position) {
    int area = block * block;
    for (int unknown : ownUnknowns) {
      int row = position[unknown];
      add(row, row, diagonal, unknown * area);
      for (int e = pattern.rowStart[unknown]; e < pattern.rowStart[unknown + 1]; e++) {
        int other = pattern.column[e];
        int column = position[other];
        if (column >= 0) {
          add(row, column, entry, e * area);
          if (column >= own) {
            // the mirrored entry lies in the other unknown's row
            for (int k = pattern.rowStart[other]; k < pattern.rowStart[other + 1]; k++) {
              if (pattern.column[k] == unknown) {
                add(column, row, entry, k * area);
              }
            }
          }
        }
      }
    }
  }

  private void add(int row, int column, double[] from, int at) {
    for (int a = 0; a < block; a++) {
      for (int b = 0; b < block; b++) {
        add(row + a, column + b, from[at + a * block + b]);
      }
    }
  }

  private void add(int row, int column, double value) {
    if (row < own) {
      if (column < own) {
        upper[row][column] += value;
      } else {
        right[row][column - own] += value;
      }
    } else if (column < own) {
      lower[row - own][column] += value;
    } else {
      remainder[row - own][column - own] += value;
    }
  }

  private void extendAdd(Front child, int[] position) {
    int n = child.rest;
    int[] place = new int[n];
    for (int i = 0; i < n; i++) {
      place[i] = position[child.borderUnknowns[i / block]] + i % block;
    }
    // borders are in order of elimination: what this front owns comes first
    int split = 0;
    while (split < n && place[split] < own) {
      split++;
    }
    for (int i = 0; i < n; i++) {
      int row = place[i];
      double[] source = child.remainder[i];
      double[] near = row < own ? upper[row] : lower[row - own];
      double[] far = row < own ? right[row] : remainder[row - own];
      for (int j = 0; j < split; j++) {
        near[place[j]] += source[j];
      }
      for (int j = split; j < n; j++) {
        far[place[j] - own] += source[j];
      }
    }
    child.remainder = new double[0][];
  }

  private boolean eliminate(Runnable checkpoint) {
    // upper = L U in place, right = L⁻¹ right
    for (int i = 0; i < own; i++) {
      checkpoint.run();
      double[] row = upper[i];
      divide(row, i);
      if (row[i] == 0 || !Double.isFinite(row[i])) {
        return false;
      }
      inverse[i] = 1 / row[i];
      reduce(right[i], row, right, 0, i, 0, rest);
    }
    // lower = lower U⁻¹, remainder -= lower right
    for (int i = 0; i < rest; i++) {
      checkpoint.run();
      divide(lower[i], own);
      reduce(remainder[i], lower[i], right, 0, own, 0, rest);
    }
    return true;
  }

  /** Takes the first pivots out of a row: factors in their place, the rest reduced. */
  private void divide(double[] row, int pivots) {
    for (int from = 0; from < pivots; from += GROUP) {
      int to = Math.min(from + GROUP, pivots);
      for (int k = from; k < to; k++) {
        double l = row[k] * inverse[k];
        row[k] = l;
        for (int j = k + 1; j < to; j++) {
          row[j] -= l * upper[k][j];
        }
      }
      reduce(row, row, upper, from, to, to, own);
    }
  }

  /** target -= Σ factor[k] rows[k] for k of a range, in a range of columns, four rows at a time. */
  private static void reduce(
      double[] target, double[] factor, double[][] rows, int first, int last, int from, int to) {
    int k = first;
    for (; k + 3 < last; k += 4) {
      double a = factor[k];
      double b = factor[k + 1];
      double c = factor[k + 2];
      double d = factor[k + 3];
      double[] ra = rows[k];
      double[] rb = rows[k + 1];
      double[] rc = rows[k + 2];
      double[] rd = rows[k + 3];
      for (int j = from; j < to; j++) {
        target[j] -= a * ra[j] + b * rb[j] + c * rc[j] + d * rd[j];
      }
    }
    for (; k < last; k++) {
      double a = factor[k];
      double[] ra = rows[k];
      for (int j = from; j < to; j++) {
        target[j] -= a * ra[j];
      }
    }
  }

  /** Solves with the unit lower factor: the border's values lose what the front's own take. */
  void forward(double[] x) {
    double[] y = gathered;
    gather(x, ownUnknowns, y, 0);
    for (int i = 0; i < own; i++) {
      y[i] -= dot(upper[i], y, 0, 0, i);
    }
    scatter(y, 0, ownUnknowns, x);
    gather(x, borderUnknowns, y, own);
    for (int i = 0; i < rest; i++) {
      y[own + i] -= dot(lower[i], y, 0, 0, own);
    }
    scatter(y, own, borderUnknowns, x);
  }

  /** Solves with the upper factor, once the border's values are known. */
  void backward(double[] x) {
    double[] y = gathered;
    gather(x, ownUnknowns, y, 0);
    gather(x, borderUnknowns, y, own);
    for (int i = own - 1; i >= 0; i--) {
      double sum = y[i] - dot(upper[i], y, i + 1, 0, own) - dot(right[i], y, 0, own, rest);
      y[i] = sum * inverse[i];
    }
    scatter(y, 0, ownUnknowns, x);
  }

  /** Σ row[k] y[offset + k] for k of a range, in four sums. */
  private static double dot(double[] row, double[] y, int from, int offset, int to) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int k = from;
    for (; k + 3 < to; k += 4) {
      a += row[k] * y[offset + k];
      b += row[k + 1] * y[offset + k + 1];
      c += row[k + 2] * y[offset + k + 2];
      d += row[k + 3] * y[offset + k + 3];
    }
    for (; k < to; k++) {
      a += row[k] * y[offset + k];
    }
    return a + b + (c + d);
  }

  private void gather(double[] x, int[] unknowns, double[] y, int offset) {
    for (int i = 0; i < unknowns.length; i++) {
      for (int a = 0; a < block; a++) {
        y[offset + i * block + a] = x[unknowns[i] * block + a];
      }
    }
  }

  private void scatter(double[] y, int offset, int[] unknowns, double[] x) {
    for (int i = 0; i < unknowns.length; i++) {
      for (int a = 0; a < block; a++) {
        x[unknowns[i] * block + a] = y[offset + i * block + a];
      }
    }
  }
}
