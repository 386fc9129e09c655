package hemline.solver.grid;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * The boundary of the fluid cut at every grid line: nodes, and pieces that each lie within one grid
 * rectangle or along one grid edge.
 *
 * <p>Nodes on the same grid line closer than the tolerance are one node, so that both rectangles
 * beside a grid edge see the same crossings.
 */
final class CutNetwork {
  final GridLines lines;
  final LineSnap snapX;
  final LineSnap snapY;

  // ---- nodes: position and the index of the grid lines they lie on, or -1
  final DoubleList nodeX = new DoubleList();
  final DoubleList nodeY = new DoubleList();
  final IntList nodeColumnLine = new IntList();
  final IntList nodeRowLine = new IntList();

  // ---- pieces, the fluid on their left
  int pieces;
  int[] from = new int[0];
  int[] to = new int[0];
  int[] patch = new int[0];

  /** Grid column of a piece, or -1 when it lies on a vertical grid line. */
  int[] column = new int[0];

  /** Grid row of a piece, or -1 when it lies on a horizontal grid line. */
  int[] row = new int[0];

  private record Place(double x, double y) {}

  private final Map<Place, Integer> nodeAt = new HashMap<>();
  private final IntList rawFrom = new IntList();
  private final IntList rawTo = new IntList();
  private final IntList rawPatch = new IntList();

  CutNetwork(
      GridLines lines, FluidOutline outline, LineSnap snapX, LineSnap snapY, double tolerance) {
    this.lines = lines;
    this.snapX = snapX;
    this.snapY = snapY;
    for (int e = 0; e < outline.size(); e++) {
      cut(
          outline.x0.get(e),
          outline.y0.get(e),
          outline.x1.get(e),
          outline.y1.get(e),
          outline.patch.get(e));
    }
    int[] same = mergeNodes(tolerance);
    collect(same);
  }

  /** The node at a place, made when there is none. */
  int node(double x, double y) {
    // adding zero turns -0.0 into 0.0
    return nodeAt.computeIfAbsent(
        new Place(x + 0.0, y + 0.0),
        p -> {
          nodeX.add(p.x);
          nodeY.add(p.y);
          nodeColumnLine.add(snapX.indexOf(p.x));
          return nodeRowLine.add(snapY.indexOf(p.y));
        });
  }

  /** Splits a segment at all grid lines it crosses. */
  private void cut(double ax, double ay, double bx, double by, int patchNumber) {
    // crossings are computed from the lower end, whichever way the segment runs
    boolean swap = ax > bx || (ax == bx && ay > by);
    double px = swap ? bx : ax;
    double py = swap ? by : ay;
    double qx = swap ? ax : bx;
    double qy = swap ? ay : by;
    int nv = 0;
    int firstV = snapX.firstAbove(px);
    while (firstV + nv < lines.x().length && lines.x()[firstV + nv] < qx) {
      nv++;
    }
    double yLow = Math.min(py, qy);
    double yHigh = Math.max(py, qy);
    int nh = 0;
    int firstH = snapY.firstAbove(yLow);
    while (firstH + nh < lines.y().length && lines.y()[firstH + nh] < yHigh) {
      nh++;
    }
    int[] chain = new int[nv + nh + 2];
    int size = 0;
    chain[size++] = node(px, py);
    int v = 0;
    int h = 0;
    boolean rising = qy >= py;
    while (v < nv || h < nh) {
      double xl = v < nv ? lines.x()[firstV + v] : 0;
      double yl = h < nh ? lines.y()[rising ? firstH + h : firstH + nh - 1 - h] : 0;
      double tv = v < nv ? (xl - px) / (qx - px) : Double.POSITIVE_INFINITY;
      double th = h < nh ? (yl - py) / (qy - py) : Double.POSITIVE_INFINITY;
      int next;
      if (tv <= th) {
        next = node(xl, snapY.snap(py + tv * (qy - py)));
        v++;
      } else {
        next = node(snapX.snap(px + th * (qx - px)), yl);
        h++;
      }
      if (next != chain[size - 1]) {
        chain[size++] = next;
      }
    }
    int last = node(qx, qy);
    if (last != chain[size - 1]) {
      chain[size++] = last;
    }
    for (int k = 0; k + 1 < size; k++) {
      rawFrom.add(swap ? chain[k + 1] : chain[k]);
      rawTo.add(swap ? chain[k] : chain[k + 1]);
      rawPatch.add(patchNumber);
    }
  }

  /** For each node the one that stands for it. */
  private int[] mergeNodes(double tolerance) {
    int n = nodeX.size();
    int[] same = new int[n];
    Arrays.setAll(same, k -> k);
    for (boolean vertical : new boolean[] {true, false}) {
      IntList lineOf = vertical ? nodeColumnLine : nodeRowLine;
      IntList crossOf = vertical ? nodeRowLine : nodeColumnLine;
      DoubleList along = vertical ? nodeY : nodeX;
      int[] sorted = nodesByLine(lineOf, along);
      for (int k = 1; k < sorted.length; k++) {
        int a = sorted[k - 1];
        int b = sorted[k];
        boolean close = lineOf.get(a) == lineOf.get(b) && along.get(b) - along.get(a) <= tolerance;
        // corners never move: they are more than the tolerance apart
        if (close && crossOf.get(b) < 0) {
          same[b] = same[a];
        } else if (close && crossOf.get(a) < 0) {
          int old = same[a];
          for (int m = k - 1; m >= 0 && same[sorted[m]] == old; m--) {
            same[sorted[m]] = b;
          }
        }
      }
    }
    return same;
  }

  /** Nodes that lie on grid lines of one direction, by line and then along it. */
  private static int[] nodesByLine(IntList lineOf, DoubleList along) {
    int n = lineOf.size();
    Integer[] onLine = new Integer[n];
    int count = 0;
    for (int k = 0; k < n; k++) {
      if (lineOf.get(k) >= 0) {
        onLine[count++] = k;
      }
    }
    Arrays.sort(
        onLine,
        0,
        count,
        (a, b) -> {
          int byLine = Integer.compare(lineOf.get(a), lineOf.get(b));
          return byLine != 0 ? byLine : Double.compare(along.get(a), along.get(b));
        });
    int[] sorted = new int[count];
    for (int k = 0; k < count; k++) {
      sorted[k] = onLine[k];
    }
    return sorted;
  }

  /** Keeps pieces that still have a length and do not run back over another one. */
  private void collect(int[] same) {
    int n = rawFrom.size();
    boolean[] dropped = new boolean[n];
    Map<Long, Integer> open = new HashMap<>();
    for (int e = 0; e < n; e++) {
      int a = same[rawFrom.get(e)];
      int b = same[rawTo.get(e)];
      if (a == b) {
        dropped[e] = true;
        continue;
      }
      Integer back = open.remove(((long) b << 32) | a);
      if (back != null) {
        dropped[e] = true;
        dropped[back] = true;
      } else {
        open.put(((long) a << 32) | b, e);
      }
    }
    from = new int[n];
    to = new int[n];
    patch = new int[n];
    column = new int[n];
    row = new int[n];
    for (int e = 0; e < n; e++) {
      if (dropped[e]) {
        continue;
      }
      int a = same[rawFrom.get(e)];
      int b = same[rawTo.get(e)];
      from[pieces] = a;
      to[pieces] = b;
      patch[pieces] = rawPatch.get(e);
      boolean onVertical =
          nodeColumnLine.get(a) >= 0 && nodeColumnLine.get(a) == nodeColumnLine.get(b);
      boolean onHorizontal = nodeRowLine.get(a) >= 0 && nodeRowLine.get(a) == nodeRowLine.get(b);
      column[pieces] = onVertical ? -1 : snapX.interval(0.5 * (nodeX.get(a) + nodeX.get(b)));
      row[pieces] = onHorizontal ? -1 : snapY.interval(0.5 * (nodeY.get(a) + nodeY.get(b)));
      pieces++;
    }
  }

  /** Patch of a solid that has one of the nodes on its surface; the first solid if none has. */
  int solidNear(int a, int b) {
    int found = Integer.MAX_VALUE;
    for (int e = 0; e < pieces; e++) {
      boolean touches = from[e] == a || to[e] == a || from[e] == b || to[e] == b;
      if (touches && patch[e] >= Patch.FIRST_SOLID) {
        found = Math.min(found, patch[e]);
      }
    }
    return found == Integer.MAX_VALUE ? Patch.FIRST_SOLID : found;
  }

  /** Nodes in use on the grid lines of one direction, by line and then along it. */
  int[] usedNodesByLine(boolean vertical) {
    boolean[] used = new boolean[nodeX.size()];
    for (int e = 0; e < pieces; e++) {
      used[from[e]] = true;
      used[to[e]] = true;
    }
    int[] all = nodesByLine(vertical ? nodeColumnLine : nodeRowLine, vertical ? nodeY : nodeX);
    return Arrays.stream(all).filter(k -> used[k]).toArray();
  }
}
