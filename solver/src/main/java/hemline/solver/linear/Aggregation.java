package hemline.solver.linear;

import java.util.Arrays;

/**
 * Unknowns joined into aggregates, and the links left between them.
 *
 * <p>Package-private building block of {@link AggregationMultigrid}.
 */
final class Aggregation {
  final int size;

  /** Aggregate of each unknown. */
  final int[] coarseOf;

  /** Link between aggregates that a link falls into, or -1 inside one. */
  final int[] coarseLink;

  final int[] first;
  final int[] second;
  final double[] strength;

  private Aggregation(
      int size, int[] coarseOf, int[] coarseLink, int[] first, int[] second, double[] strength) {
    this.size = size;
    this.coarseOf = coarseOf;
    this.coarseLink = coarseLink;
    this.first = first;
    this.second = second;
    this.strength = strength;
  }

  /**
   * Joins each unknown, in order, with its free neighbour of strongest link; unknowns without a
   * free neighbour of at least a quarter of their strongest link stay alone.
   */
  static Aggregation pairwise(int n, int[] first, int[] second, double[] strength) {
    SparsePattern pattern = new SparsePattern(n, first, second);
    double[] entry = new double[pattern.column.length];
    for (int l = 0; l < first.length; l++) {
      entry[pattern.firstEntry[l]] += strength[l];
      entry[pattern.secondEntry[l]] += strength[l];
    }
    int[] coarseOf = new int[n];
    Arrays.fill(coarseOf, -1);
    int size = 0;
    for (int i = 0; i < n; i++) {
      if (coarseOf[i] >= 0) {
        continue;
      }
      int partner = -1;
      double best = 0;
      double strongest = 0;
      for (int e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
        strongest = Math.max(strongest, entry[e]);
        if (coarseOf[pattern.column[e]] < 0 && entry[e] > best) {
          best = entry[e];
          partner = pattern.column[e];
        }
      }
      coarseOf[i] = size;
      if (partner >= 0 && best >= 0.25 * strongest) {
        coarseOf[partner] = size;
      }
      size++;
    }
    return collect(size, coarseOf, first, second, strength);
  }

  private static Aggregation collect(
      int size, int[] coarseOf, int[] first, int[] second, double[] strength) {
    int links = first.length;
    int[] a = new int[links];
    int[] b = new int[links];
    double[] s = new double[links];
    int[] coarseLink = new int[links];
    // links of one aggregate are found through a list per aggregate
    int[] head = new int[size];
    Arrays.fill(head, -1);
    int[] next = new int[links];
    int count = 0;
    for (int l = 0; l < links; l++) {
      int p = Math.min(coarseOf[first[l]], coarseOf[second[l]]);
      int q = Math.max(coarseOf[first[l]], coarseOf[second[l]]);
      if (p == q) {
        coarseLink[l] = -1;
        continue;
      }
      int found = head[p];
      while (found >= 0 && b[found] != q) {
        found = next[found];
      }
      if (found < 0) {
        found = count++;
        a[found] = p;
        b[found] = q;
        next[found] = head[p];
        head[p] = found;
      }
      s[found] += strength[l];
      coarseLink[l] = found;
    }
    return new Aggregation(
        size,
        coarseOf,
        coarseLink,
        Arrays.copyOf(a, count),
        Arrays.copyOf(b, count),
        Arrays.copyOf(s, count));
  }

  /** This aggregation followed by another of its aggregates. */
  Aggregation then(Aggregation outer) {
    int[] composed = new int[coarseOf.length];
    for (int i = 0; i < composed.length; i++) {
      composed[i] = outer.coarseOf[coarseOf[i]];
    }
    int[] link = new int[coarseLink.length];
    for (int l = 0; l < link.length; l++) {
      link[l] = coarseLink[l] < 0 ? -1 : outer.coarseLink[coarseLink[l]];
    }
    return new Aggregation(outer.size, composed, link, outer.first, outer.second, outer.strength);
  }
}
