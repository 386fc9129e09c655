package hemline.solver.linear;

import java.util.Arrays;

/**
 * Direct solver for sparse systems of small dense blocks: multifrontal LU without pivoting, ordered
 * by nested dissection, in single precision.
 *
 * <p>Its answer is good to about six digits, so it serves iterations that look at the full residual
 * again, at half the memory to go through. Made for coupled flow systems, whose leading blocks stay
 * regular. For n unknowns on a plane grid the factors take O(n log n) room and O(n^1.5) work.
 * Source: Duff and Reid 1983, ACM Trans. Math. Softw. 9, 302–325.
 */
public final class BlockLu {
  private final SparsePattern pattern;
  private final Front[] fronts;

  /** Room for the largest front, and for its part of a right-hand side. */
  private final float[][] room;

  private final float[] gathered;

  /** Row of each unknown in the front that is assembled; -1 between fronts. */
  private final int[] position;

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
    this.pattern = pattern;
    DissectionTree tree = new DissectionTree(pattern, x, y, checkpoint);
    fronts = new Front[tree.order.size()];
    java.util.Map<DissectionTree.Node, Front> made = new java.util.IdentityHashMap<>();
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
      fronts[k] = new Front(node.own, node.border, children, block);
      made.put(node, fronts[k]);
    }
    int most = Arrays.stream(fronts).mapToInt(Front::size).max().orElse(0);
    room = new float[most][most];
    gathered = new float[most];
    position = new int[pattern.size];
    Arrays.fill(position, -1);
  }

  /** Number of values in the factors. */
  public long factorSize() {
    long total = 0;
    for (Front f : fronts) {
      total += f.factorSize();
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
    for (Front f : fronts) {
      if (!f.factor(pattern, diagonal, entry, room, position, checkpoint)) {
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
    for (Front f : fronts) {
      checkpoint.run();
      f.forward(x, gathered);
    }
    for (int k = fronts.length - 1; k >= 0; k--) {
      checkpoint.run();
      fronts[k].backward(x, gathered);
    }
  }
}
