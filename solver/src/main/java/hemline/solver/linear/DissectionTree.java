package hemline.solver.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Order of elimination by nested dissection of points in the plane.
 *
 * <p>Each node owns the unknowns of its separator, eliminated after those of its children; {@code
 * border} lists the later unknowns that its front touches. Source: George 1973, SIAM J. Numer.
 * Anal. 10, 345–363.
 */
final class DissectionTree {
  private static final int LEAF = 12;

  /** One front. */
  static final class Node {
    final int[] own;
    final int[] border;
    final Node[] children;

    Node(int[] own, int[] border, Node[] children) {
      this.own = own;
      this.border = border;
      this.children = children;
    }
  }

  /** Fronts in order of elimination: children before parents. */
  final List<Node> order = new ArrayList<>();

  /** Place of each unknown in the order of elimination. */
  final int[] place;

  private final SparsePattern pattern;
  private final double[] x;
  private final double[] y;
  private final int[] side;
  private final int[] mark;
  private int stamp;
  private int placed;

  /**
   * Orders the unknowns.
   *
   * @param pattern links between unknowns
   * @param x rank of each unknown along one axis; not modified
   * @param y along the other; not modified
   * @param checkpoint run again and again; what it throws ends the work
   */
  DissectionTree(SparsePattern pattern, double[] x, double[] y, Runnable checkpoint) {
    this.pattern = pattern;
    this.x = x;
    this.y = y;
    int n = pattern.size;
    side = new int[n];
    mark = new int[n];
    place = new int[n];
    Arrays.fill(place, -1);
    int[] all = new int[n];
    for (int i = 0; i < n; i++) {
      all[i] = i;
    }
    build(all, checkpoint);
  }

  private Node build(int[] region, Runnable checkpoint) {
    checkpoint.run();
    Node[] children = new Node[0];
    int[] own = region;
    if (region.length > LEAF) {
      int[][] parts = split(region);
      if (parts[0].length > 0 && parts[1].length > 0) {
        children = new Node[] {build(parts[0], checkpoint), build(parts[1], checkpoint)};
        own = parts[2];
      }
    }
    for (int i : own) {
      place[i] = placed++;
    }
    Node node = new Node(own, border(own, children), children);
    order.add(node);
    return node;
  }

  /** Two halves and the separator between them, cut across the longer side. */
  private int[][] split(int[] region) {
    double[] xs = sorted(region, x);
    double[] ys = sorted(region, y);
    boolean alongX = xs[xs.length - 1] - xs[0] >= ys[ys.length - 1] - ys[0];
    double[] coordinate = alongX ? x : y;
    double[] s = alongX ? xs : ys;
    double cut = s[s.length / 2];
    stamp++;
    for (int i : region) {
      mark[i] = stamp;
      side[i] = coordinate[i] < cut ? 0 : 1;
    }
    int[] low = new int[region.length];
    int[] high = new int[region.length];
    int[] between = new int[region.length];
    int a = 0;
    int b = 0;
    int c = 0;
    for (int i : region) {
      if (side[i] == 1) {
        high[b++] = i;
        continue;
      }
      boolean touches = false;
      for (int e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
        int k = pattern.column[e];
        touches |= mark[k] == stamp && side[k] == 1;
      }
      if (touches) {
        between[c++] = i;
      } else {
        low[a++] = i;
      }
    }
    return new int[][] {Arrays.copyOf(low, a), Arrays.copyOf(high, b), Arrays.copyOf(between, c)};
  }

  private static double[] sorted(int[] region, double[] values) {
    double[] s = new double[region.length];
    for (int k = 0; k < s.length; k++) {
      s[k] = values[region[k]];
    }
    Arrays.sort(s);
    return s;
  }

  /** Unknowns not yet placed that the node's own or its children's borders touch. */
  private int[] border(int[] own, Node[] children) {
    stamp++;
    int[] found = new int[64];
    int n = 0;
    for (int i : own) {
      mark[i] = stamp;
    }
    for (Node child : children) {
      for (int k : child.border) {
        if (mark[k] != stamp) {
          mark[k] = stamp;
          found = n == found.length ? Arrays.copyOf(found, 2 * n) : found;
          found[n++] = k;
        }
      }
    }
    for (int i : own) {
      for (int e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
        int k = pattern.column[e];
        if (mark[k] != stamp && place[k] < 0) {
          mark[k] = stamp;
          found = n == found.length ? Arrays.copyOf(found, 2 * n) : found;
          found[n++] = k;
        }
      }
    }
    return Arrays.copyOf(found, n);
  }
}
