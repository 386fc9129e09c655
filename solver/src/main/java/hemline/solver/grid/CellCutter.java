package hemline.solver.grid;

import java.util.Arrays;

/**
 * Cuts grid rectangles into parts of fluid.
 *
 * <p>In a cut rectangle the pieces of the fluid boundary and the open runs of its four sides, all
 * directed with the fluid on their left, close to loops: counter-clockwise ones are parts,
 * clockwise ones islands in a part.
 */
final class CellCutter {
  private final CutNetwork network;
  private final GridEdges vertical;
  private final GridEdges horizontal;
  private final CellParts parts;
  private final SurfaceJoin surfaces;
  private final int nx;

  private final int[] firstInside;
  private final int[] nextInside;

  // ---- directed edges of the rectangle at hand
  private final IntList from = new IntList();
  private final IntList to = new IntList();
  private final IntList patch = new IntList();
  private final IntList gridFace = new IntList();
  private final IntList run = new IntList();

  /** Side of the rectangle of an edge that is a run: 0 bottom, 1 right, 2 top, 3 left. */
  private final IntList side = new IntList();

  private final IntList loop = new IntList();
  private int[] firstOut = new int[0];
  private int[] nextOut = new int[0];

  private CellCutter(CutNetwork network, GridEdges vertical, GridEdges horizontal) {
    this.network = network;
    this.vertical = vertical;
    this.horizontal = horizontal;
    nx = network.lines.nx();
    int rectangles = nx * network.lines.ny();
    parts = new CellParts(rectangles);
    surfaces = new SurfaceJoin(network, parts);
    firstInside = new int[rectangles];
    Arrays.fill(firstInside, -1);
    nextInside = new int[network.pieces];
    for (int e = network.pieces - 1; e >= 0; e--) {
      if (network.column[e] >= 0 && network.row[e] >= 0) {
        int rect = network.row[e] * nx + network.column[e];
        nextInside[e] = firstInside[rect];
        firstInside[rect] = e;
      }
    }
  }

  static CellParts cut(
      CutNetwork network, GridEdges vertical, GridEdges horizontal, Runnable checkpoint) {
    CellCutter cutter = new CellCutter(network, vertical, horizontal);
    for (int j = 0; j < network.lines.ny(); j++) {
      checkpoint.run();
      for (int i = 0; i < cutter.nx; i++) {
        int rect = j * cutter.nx + i;
        cutter.parts.start[rect] = cutter.parts.area.size();
        cutter.rectangle(i, j);
      }
    }
    cutter.parts.start[cutter.nx * network.lines.ny()] = cutter.parts.area.size();
    return cutter.parts;
  }

  private void rectangle(int i, int j) {
    int rect = j * nx + i;
    int bottom = rect;
    int top = rect + nx;
    int left = j * (nx + 1) + i;
    int right = left + 1;
    byte first = vertical.state[left];
    boolean uniform =
        firstInside[rect] < 0
            && first != GridEdges.RUNS
            && vertical.state[right] == first
            && horizontal.state[bottom] == first
            && horizontal.state[top] == first;
    if (uniform) {
      if (first == GridEdges.OPEN) {
        double[] x = network.lines.x();
        double[] y = network.lines.y();
        parts.whole[rect] = true;
        parts.addPart(
            rect,
            (x[i + 1] - x[i]) * (y[j + 1] - y[j]),
            0.5 * (x[i] + x[i + 1]),
            0.5 * (y[j] + y[j + 1]));
      }
      return;
    }
    from.clear();
    to.clear();
    patch.clear();
    gridFace.clear();
    run.clear();
    side.clear();
    addSide(horizontal, bottom, 0);
    addSide(vertical, right, 1);
    addSide(horizontal, top, 2);
    addSide(vertical, left, 3);
    for (int e = firstInside[rect]; e >= 0; e = nextInside[e]) {
      addEdge(network.from[e], network.to[e], network.patch[e], -1, -1, -1);
    }
    if (from.size() > 0) {
      trace(rect, i, j);
    }
  }

  private void addEdge(int a, int b, int patchNumber, int face, int runNumber, int sideNumber) {
    from.add(a);
    to.add(b);
    patch.add(patchNumber);
    gridFace.add(face);
    run.add(runNumber);
    side.add(sideNumber);
  }

  /** Adds the runs of a side that are open towards the rectangle. */
  private void addSide(GridEdges edges, int edge, int sideNumber) {
    if (edges.state[edge] == GridEdges.CLOSED) {
      return;
    }
    edges.splitOpen(edge);
    boolean rectangleIsLow = sideNumber == 1 || sideNumber == 2;
    boolean backward = sideNumber >= 2;
    for (int r = edges.firstRun(edge); r < edges.endRun(edge); r++) {
      boolean lowOpen = edges.runLowOpen.get(r) != 0;
      boolean highOpen = edges.runHighOpen.get(r) != 0;
      if (!(rectangleIsLow ? lowOpen : highOpen)) {
        continue;
      }
      int a = backward ? edges.runTo.get(r) : edges.runFrom.get(r);
      int b = backward ? edges.runFrom.get(r) : edges.runTo.get(r);
      if (lowOpen && highOpen) {
        addEdge(a, b, -1, -1, r, sideNumber);
      } else {
        int wall = edges.patchOn(r);
        if (wall < 0) {
          wall = network.solidNear(a, b);
        }
        addEdge(a, b, wall, wall < Patch.FIRST_SOLID ? edge : -1, -1, -1);
      }
    }
  }

  private void trace(int rect, int i, int j) {
    int n = from.size();
    int[] next = successors(n);
    boolean[] seen = new boolean[n];
    int[] loopOf = new int[n];
    double x0 = network.lines.x()[i];
    double y0 = network.lines.y()[j];
    IntList loopStart = new IntList();
    DoubleList moments = new DoubleList();
    for (int e = 0; e < n; e++) {
      if (seen[e]) {
        continue;
      }
      double a = 0;
      double mx = 0;
      double my = 0;
      int k = e;
      do {
        seen[k] = true;
        loopOf[k] = loopStart.size();
        double px = network.nodeX.get(from.get(k)) - x0;
        double py = network.nodeY.get(from.get(k)) - y0;
        double qx = network.nodeX.get(to.get(k)) - x0;
        double qy = network.nodeY.get(to.get(k)) - y0;
        double cross = 0.5 * (px * qy - qx * py);
        a += cross;
        mx += cross * (px + qx) / 3;
        my += cross * (py + qy) / 3;
        k = next[k];
      } while (k != e);
      loopStart.add(e);
      moments.add(a);
      moments.add(mx);
      moments.add(my);
    }
    int[] partOf = partsOfLoops(rect, next, loopStart, moments, x0, y0);
    for (int l = 0; l < loopStart.size(); l++) {
      if (partOf[l] >= 0) {
        claim(partOf[l], loopStart.get(l), next);
      }
    }
  }

  /** The edge that follows each edge: the first one clockwise from where it came. */
  private int[] successors(int n) {
    if (firstOut.length < network.nodeX.size()) {
      firstOut = new int[2 * network.nodeX.size()];
      Arrays.fill(firstOut, -1);
    }
    if (nextOut.length < n) {
      nextOut = new int[2 * n];
    }
    for (int e = n - 1; e >= 0; e--) {
      nextOut[e] = firstOut[from.get(e)];
      firstOut[from.get(e)] = e;
    }
    int[] next = new int[n];
    boolean[] taken = new boolean[n];
    for (int e = 0; e < n; e++) {
      int best = -1;
      double bestTurn = Double.POSITIVE_INFINITY;
      for (int o = firstOut[to.get(e)]; o >= 0; o = nextOut[o]) {
        double turn =
            taken[o] ? Double.MAX_VALUE : nextOut[o] < 0 && best < 0 ? 0 : clockwise(e, o);
        if (turn < bestTurn) {
          best = o;
          bestTurn = turn;
        }
      }
      if (best < 0 || taken[best]) {
        throw new IllegalStateException(
            "the fluid boundary does not close at x = "
                + network.nodeX.get(to.get(e))
                + " m, y = "
                + network.nodeY.get(to.get(e))
                + " m");
      }
      taken[best] = true;
      next[e] = best;
    }
    for (int e = 0; e < n; e++) {
      firstOut[from.get(e)] = -1;
    }
    return next;
  }

  /** Clockwise angle from the way back along an edge to the way out along another. */
  private double clockwise(int in, int out) {
    double bx = network.nodeX.get(from.get(in)) - network.nodeX.get(to.get(in));
    double by = network.nodeY.get(from.get(in)) - network.nodeY.get(to.get(in));
    double ox = network.nodeX.get(to.get(out)) - network.nodeX.get(from.get(out));
    double oy = network.nodeY.get(to.get(out)) - network.nodeY.get(from.get(out));
    double angle = Math.atan2(by * ox - bx * oy, bx * ox + by * oy);
    return angle > 0 ? angle : angle + 2 * Math.PI;
  }

  /** Makes a part of every counter-clockwise loop and finds the part around every other one. */
  private int[] partsOfLoops(
      int rect, int[] next, IntList loopStart, DoubleList moments, double x0, double y0) {
    int loops = loopStart.size();
    int[] partOf = new int[loops];
    int[] container = new int[loops];
    int shells = 0;
    int shell = -1;
    for (int l = 0; l < loops; l++) {
      if (moments.get(3 * l) > 0) {
        shells++;
        shell = l;
      }
    }
    for (int l = 0; l < loops; l++) {
      container[l] = l;
      if (!(moments.get(3 * l) > 0)) {
        container[l] =
            shells == 1 ? shell : shells == 0 ? -1 : shellAround(l, next, loopStart, moments);
        if (container[l] >= 0) {
          for (int m = 0; m < 3; m++) {
            moments.plus(3 * container[l] + m, moments.get(3 * l + m));
          }
        }
      }
    }
    for (int l = 0; l < loops; l++) {
      partOf[l] = -1;
      if (container[l] == l) {
        double a = moments.get(3 * l);
        if (a > 0) {
          partOf[l] =
              parts.addPart(
                  rect, a, x0 + moments.get(3 * l + 1) / a, y0 + moments.get(3 * l + 2) / a);
        }
      }
    }
    for (int l = 0; l < loops; l++) {
      if (container[l] >= 0 && container[l] != l) {
        partOf[l] = partOf[container[l]];
      }
    }
    return partOf;
  }

  private int shellAround(int inner, int[] next, IntList loopStart, DoubleList moments) {
    int e = loopStart.get(inner);
    double x = 0.5 * (network.nodeX.get(from.get(e)) + network.nodeX.get(to.get(e)));
    double y = 0.5 * (network.nodeY.get(from.get(e)) + network.nodeY.get(to.get(e)));
    for (int l = 0; l < loopStart.size(); l++) {
      if (l == inner || !(moments.get(3 * l) > 0)) {
        continue;
      }
      boolean inside = false;
      int k = loopStart.get(l);
      do {
        double px = network.nodeX.get(from.get(k));
        double py = network.nodeY.get(from.get(k));
        double qx = network.nodeX.get(to.get(k));
        double qy = network.nodeY.get(to.get(k));
        if (py > y != qy > y && x < px + (y - py) / (qy - py) * (qx - px)) {
          inside = !inside;
        }
        k = next[k];
      } while (k != loopStart.get(l));
      if (inside) {
        return l;
      }
    }
    return -1;
  }

  /** Gives the open runs of a loop to a part and adds its surfaces. */
  private void claim(int part, int first, int[] next) {
    loop.clear();
    int k = first;
    do {
      loop.add(k);
      int s = side.get(k);
      if (s >= 0) {
        GridEdges edges = s == 1 || s == 3 ? vertical : horizontal;
        IntList pieces = s == 1 || s == 2 ? edges.runLowPiece : edges.runHighPiece;
        pieces.set(run.get(k), part);
      }
      k = next[k];
    } while (k != first);
    surfaces.addLoop(part, loop, from, to, patch, gridFace);
  }
}
