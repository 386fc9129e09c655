package hemline.solver.linear;

import java.util.Arrays;

/**
 * Direct solver for sparse systems of small dense blocks: multifrontal LU without pivoting, ordered
 * by nested dissection.
 *
 * <p>Made for coupled flow systems, whose leading blocks stay regular. For n unknowns on a plane
 * grid the factors take O(n log n) room and O(n^1.5) work. Source: Duff and Reid 1983, ACM Trans.
 * Math. Softw. 9, 302–325.
 */
public final class BlockLu {
  private final int block;
  private final SparsePattern pattern;
  private final Front[] fronts;
  private final double[] work;
  private final Runnable checkpoint;

  /**
   * Orders the unknowns and reserves the factors.
   *
   * @param pattern links between unknowns
   * @param x rank of each unknown along one axis; not modified
   * @param y along the other; not modified
   * @param block values per unknown
   */
  public BlockLu(SparsePattern pattern, double[] x, double[] y, int block) {
    this(pattern, x, y, block, () -> {});
  }

  /**
   * Orders the unknowns and reserves the factors of a solver that can be stopped.
   *
   * @param pattern links between unknowns
   * @param x rank of each unknown along one axis; not modified
   * @param y along the other; not modified
   * @param block values per unknown
   * @param checkpoint run again and again, here and later; what it throws ends the work, and the
   *     factors are of no use then
   */
  public BlockLu(SparsePattern pattern, double[] x, double[] y, int block, Runnable checkpoint) {
    this.checkpoint = checkpoint;
    this.block = block;
    this.pattern = pattern;
    work = new double[pattern.size * block];
    DissectionTree tree = new DissectionTree(pattern, x, y, checkpoint);
    fronts = new Front[tree.order.size()];
    java.util.Map<DissectionTree.Node, Front> made = new java.util.IdentityHashMap<>();
    int[] position = new int[pattern.size];
    for (int k = 0; k < fronts.length; k++) {
      checkpoint.run();
      DissectionTree.Node node = tree.order.get(k);
      // borders in order of elimination, so that parents find them sorted
      Integer[] border = Arrays.stream(node.border).boxed().toArray(Integer[]::new);
      Arrays.sort(border, java.util.Comparator.comparingInt(i -> tree.place[i]));
      for (int i = 0; i < border.length; i++) {
        node.border[i] = border[i];
      }
      Front[] children = new Front[node.children.length];
      for (int c = 0; c < children.length; c++) {
        children[c] = java.util.Objects.requireNonNull(made.get(node.children[c]));
      }
      fronts[k] = new Front(node.own, node.border, children, block, position);
      made.put(node, fronts[k]);
    }
  }

  /** Number of values in the factors. */
  public long factorSize() {
    long total = 0;
    for (Front f : fronts) {
      total += (long) f.own * (f.own + 2L * f.rest);
    }
    return total;
  }

  /**
   * Factorises a matrix.
   *
   * @param diagonal blocks on the diagonal, row-major, unknown by unknown; not modified
   * @param entry blocks off it, by entry of the pattern; not modified
   * @return false when a pivot vanished or is not finite: the factors are of no use then
   */
  public boolean factor(double[] diagonal, double[] entry) {
    int[] position = new int[pattern.size];
    Arrays.fill(position, -1);
    for (Front f : fronts) {
      if (!f.factor(pattern, diagonal, entry, position, checkpoint)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Solves with the last factors.
   *
   * @param x right-hand side, block by block; becomes the answer
   */
  public void solve(double[] x) {
    System.arraycopy(x, 0, work, 0, x.length);
    for (Front f : fronts) {
      checkpoint.run();
      f.forward(work);
    }
    for (int k = fronts.length - 1; k >= 0; k--) {
      checkpoint.run();
      fronts[k].backward(work);
    }
    System.arraycopy(work, 0, x, 0, x.length);
  }

  /** Dense part of the elimination: own unknowns first, then the border. */
  private static final class Front {
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

    Front(int[] own, int[] border, Front[] children, int block, int[] position) {
      ownUnknowns = own;
      borderUnknowns = border;
      this.children = children;
      this.block = block;
      this.own = own.length * block;
      rest = border.length * block;
      upper = new double[this.own][this.own];
      right = new double[this.own][rest];
      lower = new double[rest][this.own];
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

    private void assemble(
        SparsePattern pattern, double[] diagonal, double[] entry, int[] position) {
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
      int n = child.borderUnknowns.length;
      for (int i = 0; i < n; i++) {
        int row = position[child.borderUnknowns[i]];
        for (int a = 0; a < block; a++) {
          double[] source = child.remainder[i * block + a];
          for (int j = 0; j < n; j++) {
            int column = position[child.borderUnknowns[j]];
            for (int b = 0; b < block; b++) {
              add(row + a, column + b, source[j * block + b]);
            }
          }
        }
      }
      child.remainder = new double[0][];
    }

    private boolean eliminate(Runnable checkpoint) {
      // upper = L U in place
      for (int i = 0; i < own; i++) {
        checkpoint.run();
        double[] row = upper[i];
        for (int k = 0; k < i; k++) {
          double l = row[k] / upper[k][k];
          row[k] = l;
          subtract(row, upper[k], l, k + 1, own);
        }
        if (row[i] == 0 || !Double.isFinite(row[i])) {
          return false;
        }
        reduce(right[i], row, right, i, rest);
      }
      // lower = lower U⁻¹, remainder -= lower right
      for (int i = 0; i < rest; i++) {
        checkpoint.run();
        double[] row = lower[i];
        for (int k = 0; k < own; k++) {
          double l = row[k] / upper[k][k];
          row[k] = l;
          subtract(row, upper[k], l, k + 1, own);
        }
        reduce(remainder[i], row, right, own, rest);
      }
      return true;
    }

    private static void subtract(double[] row, double[] pivot, double l, int from, int to) {
      if (l != 0) {
        for (int j = from; j < to; j++) {
          row[j] -= l * pivot[j];
        }
      }
    }

    /** target -= Σ_{k < count} factor[k] rows[k], four rows at a time. */
    private static void reduce(
        double[] target, double[] factor, double[][] rows, int count, int length) {
      int k = 0;
      for (; k + 3 < count; k += 4) {
        double a = factor[k];
        double b = factor[k + 1];
        double c = factor[k + 2];
        double d = factor[k + 3];
        double[] ra = rows[k];
        double[] rb = rows[k + 1];
        double[] rc = rows[k + 2];
        double[] rd = rows[k + 3];
        for (int j = 0; j < length; j++) {
          target[j] -= a * ra[j] + b * rb[j] + c * rc[j] + d * rd[j];
        }
      }
      for (; k < count; k++) {
        subtract(target, rows[k], factor[k], 0, length);
      }
    }

    void forward(double[] x) {
      for (int i = 0; i < own; i++) {
        double sum = x[index(i)];
        double[] row = upper[i];
        for (int k = 0; k < i; k++) {
          sum -= row[k] * x[index(k)];
        }
        x[index(i)] = sum;
      }
      for (int i = 0; i < rest; i++) {
        double sum = 0;
        double[] row = lower[i];
        for (int k = 0; k < own; k++) {
          sum += row[k] * x[index(k)];
        }
        x[borderUnknowns[i / block] * block + i % block] -= sum;
      }
    }

    void backward(double[] x) {
      for (int i = own - 1; i >= 0; i--) {
        double sum = x[index(i)];
        double[] row = upper[i];
        for (int k = i + 1; k < own; k++) {
          sum -= row[k] * x[index(k)];
        }
        double[] across = right[i];
        for (int k = 0; k < rest; k++) {
          sum -= across[k] * x[borderUnknowns[k / block] * block + k % block];
        }
        x[index(i)] = sum / row[i];
      }
    }

    private int index(int row) {
      return ownUnknowns[row / block] * block + row % block;
    }
  }
}
