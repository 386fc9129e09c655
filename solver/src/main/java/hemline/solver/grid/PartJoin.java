package hemline.solver.grid;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Joins parts with little fluid to their neighbours.
 *
 * <p>A part below {@link #SMALL} of its rectangle is joined across its longest open connection,
 * smallest share first, until the joined cell holds a part that is not small or enough fluid in
 * all. Ties go to the neighbour with more fluid.
 */
final class PartJoin {
  /** A part with less fluid than this share of its rectangle does not stand alone. */
  static final double SMALL = 0.2;

  private static final double TIE = 1e-9;

  private final CellParts parts;
  private final PartLinks links;
  private final double[] rectangleArea;
  private final int[] parent;
  private final double[] volume;

  // ---- connections of small parts, as lists
  private final int[] first;
  private final int[] next;

  // ---- members of a joined cell, as rings
  private final int[] sibling;

  private PartJoin(GridLines lines, CellParts parts, PartLinks links) {
    this.parts = parts;
    this.links = links;
    int n = parts.area.size();
    parent = new int[n];
    sibling = new int[n];
    volume = parts.area.toArray();
    rectangleArea = new double[n];
    first = new int[n];
    Arrays.fill(first, -1);
    int nx = lines.nx();
    for (int p = 0; p < n; p++) {
      parent[p] = p;
      sibling[p] = p;
      int i = parts.rectangle.get(p) % nx;
      int j = parts.rectangle.get(p) / nx;
      rectangleArea[p] = (lines.x()[i + 1] - lines.x()[i]) * (lines.y()[j + 1] - lines.y()[j]);
    }
    next = new int[2 * links.size()];
    for (int l = links.size() - 1; l >= 0; l--) {
      list(links.low.get(l), 2 * l);
      list(links.high.get(l), 2 * l + 1);
    }
  }

  private void list(int part, int entry) {
    if (small(part)) {
      next[entry] = first[part];
      first[part] = entry;
    }
  }

  private boolean small(int part) {
    return parts.area.get(part) < SMALL * rectangleArea[part];
  }

  /** For every part the part that names its cell. */
  static int[] join(GridLines lines, CellParts parts, PartLinks links) {
    PartJoin join = new PartJoin(lines, parts, links);
    int n = parts.area.size();
    int[] order =
        IntStream.range(0, n)
            .filter(join::small)
            .boxed()
            .sorted(
                Comparator.comparingDouble((Integer p) -> parts.area.get(p) / join.rectangleArea[p])
                    .thenComparing(p -> p))
            .mapToInt(Integer::intValue)
            .toArray();
    for (int p : order) {
      while (join.tooLittle(p)) {
        int to = join.bestNeighbour(p);
        if (to < 0) {
          break;
        }
        join.union(p, to);
      }
    }
    int[] cell = new int[n];
    for (int p = 0; p < n; p++) {
      cell[p] = join.root(p);
    }
    return cell;
  }

  private boolean tooLittle(int part) {
    double largest = 0;
    int m = part;
    do {
      if (!small(m)) {
        return false;
      }
      largest = Math.max(largest, rectangleArea[m]);
      m = sibling[m];
    } while (m != part);
    return volume[root(part)] < SMALL * largest;
  }

  /** The part beyond the longest connection out of the joined cell, or -1. */
  private int bestNeighbour(int part) {
    int own = root(part);
    int best = -1;
    double bestLength = 0;
    int m = part;
    do {
      for (int e = first[m]; e >= 0; e = next[e]) {
        int l = e >> 1;
        int other = (e & 1) == 0 ? links.high.get(l) : links.low.get(l);
        if (root(other) == own) {
          continue;
        }
        double length = links.length.get(l);
        boolean longer = length > bestLength * (1 + TIE);
        boolean tie = !longer && best >= 0 && length >= bestLength * (1 - TIE);
        if (longer || (tie && volume[root(other)] > volume[root(best)] * (1 + TIE))) {
          best = other;
          bestLength = length;
        }
      }
      m = sibling[m];
    } while (m != part);
    return best;
  }

  private void union(int a, int b) {
    int ra = root(a);
    int rb = root(b);
    int to = Math.min(ra, rb);
    int gone = Math.max(ra, rb);
    parent[gone] = to;
    volume[to] += volume[gone];
    int s = sibling[a];
    sibling[a] = sibling[b];
    sibling[b] = s;
  }

  private int root(int part) {
    int r = part;
    while (parent[r] != r) {
      r = parent[r];
    }
    int p = part;
    while (parent[p] != r) {
      int up = parent[p];
      parent[p] = r;
      p = up;
    }
    return r;
  }
}
