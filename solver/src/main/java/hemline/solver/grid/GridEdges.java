package hemline.solver.grid;

import java.util.Arrays;

/**
 * Where the grid edges of one direction are open to the fluid.
 *
 * <p>Walking along a grid line, the state just beside it changes only at nodes from which pieces of
 * the fluid boundary leave to that side. An edge without change is open or closed as a whole;
 * others are split into runs, each with a state on either side. The low side is left of a vertical
 * edge and below a horizontal one. Edges are numbered as {@link Mesh#gridFace}.
 */
final class GridEdges {
  static final byte CLOSED = 0;
  static final byte OPEN = 1;
  static final byte RUNS = 2;

  /** Piece number of a run side that no cell has claimed. */
  static final int NONE = -1;

  final boolean vertical;
  final byte[] state;

  // ---- runs in the order of the walk
  final IntList runEdge = new IntList();
  final IntList runFrom = new IntList();
  final IntList runTo = new IntList();
  final IntList runLowOpen = new IntList();
  final IntList runHighOpen = new IntList();

  /** Piece of a cell on the low side of a run, or {@link #NONE}. */
  final IntList runLowPiece = new IntList();

  final IntList runHighPiece = new IntList();

  private final CutNetwork network;
  private final int[] firstRun;
  private final int[] runCount;
  private final int[] firstOnEdge;
  private final int[] nextOnEdge;

  GridEdges(CutNetwork network, boolean vertical, Runnable checkpoint) {
    this.network = network;
    this.vertical = vertical;
    int nx = network.lines.nx();
    int ny = network.lines.ny();
    int edges = vertical ? (nx + 1) * ny : nx * (ny + 1);
    state = new byte[edges];
    firstRun = new int[edges];
    runCount = new int[edges];
    firstOnEdge = new int[edges];
    Arrays.fill(firstOnEdge, -1);
    nextOnEdge = new int[network.pieces];
    listPiecesOnEdges();
    scan(checkpoint);
  }

  /** Number of the edge at a step of the walk along a line. */
  private int edge(int line, int step) {
    return vertical ? step * (network.lines.nx() + 1) + line : line * network.lines.nx() + step;
  }

  private void listPiecesOnEdges() {
    int[] cross = vertical ? network.column : network.row;
    int[] along = vertical ? network.row : network.column;
    IntList lineOf = vertical ? network.nodeColumnLine : network.nodeRowLine;
    for (int e = 0; e < network.pieces; e++) {
      if (cross[e] < 0) {
        int edge = edge(lineOf.get(network.from[e]), along[e]);
        nextOnEdge[e] = firstOnEdge[edge];
        firstOnEdge[edge] = e;
      }
    }
  }

  private void scan(Runnable checkpoint) {
    int n = network.nodeX.size();
    int[] low = new int[n];
    int[] high = new int[n];
    countChanges(low, high);
    IntList lineOf = vertical ? network.nodeColumnLine : network.nodeRowLine;
    IntList crossOf = vertical ? network.nodeRowLine : network.nodeColumnLine;
    double[] stepLine = vertical ? network.lines.y() : network.lines.x();
    DoubleList along = vertical ? network.nodeY : network.nodeX;
    int[] nodes = network.usedNodesByLine(vertical);
    int lineCount = vertical ? network.lines.nx() + 1 : network.lines.ny() + 1;
    int k = 0;
    for (int line = 0; line < lineCount; line++) {
      checkpoint.run();
      int wLow = 0;
      int wHigh = 0;
      for (int step = 0; step + 1 < stepLine.length; step++) {
        if (k < nodes.length && lineOf.get(nodes[k]) == line && crossOf.get(nodes[k]) == step) {
          wLow += low[nodes[k]];
          wHigh += high[nodes[k]];
          k++;
        }
        int edge = edge(line, step);
        boolean inner =
            k < nodes.length
                && lineOf.get(nodes[k]) == line
                && along.get(nodes[k]) < stepLine[step + 1];
        if (!inner && (wLow > 0) == (wHigh > 0)) {
          state[edge] = wLow > 0 ? OPEN : CLOSED;
          continue;
        }
        int start = corner(line, step);
        beginRuns(edge);
        while (k < nodes.length
            && lineOf.get(nodes[k]) == line
            && along.get(nodes[k]) < stepLine[step + 1]) {
          addRun(edge, start, nodes[k], wLow > 0, wHigh > 0);
          start = nodes[k];
          wLow += low[start];
          wHigh += high[start];
          k++;
        }
        addRun(edge, start, corner(line, step + 1), wLow > 0, wHigh > 0);
      }
      while (k < nodes.length && lineOf.get(nodes[k]) == line) {
        k++;
      }
    }
  }

  /** Change of the winding number on either side of a line when passing each node. */
  private void countChanges(int[] low, int[] high) {
    int sign = vertical ? 1 : -1;
    int[] cross = vertical ? network.column : network.row;
    IntList lineOf = vertical ? network.nodeColumnLine : network.nodeRowLine;
    for (int e = 0; e < network.pieces; e++) {
      if (cross[e] < 0) {
        continue;
      }
      int a = network.from[e];
      int b = network.to[e];
      if (lineOf.get(a) == cross[e]) {
        high[a] += sign;
      } else if (lineOf.get(a) >= 0) {
        low[a] -= sign;
      }
      if (lineOf.get(b) == cross[e]) {
        high[b] -= sign;
      } else if (lineOf.get(b) >= 0) {
        low[b] += sign;
      }
    }
  }

  private int corner(int line, int step) {
    return vertical
        ? network.node(network.lines.x()[line], network.lines.y()[step])
        : network.node(network.lines.x()[step], network.lines.y()[line]);
  }

  private void beginRuns(int edge) {
    state[edge] = RUNS;
    firstRun[edge] = runEdge.size();
    runCount[edge] = 0;
  }

  private void addRun(int edge, int from, int to, boolean lowOpen, boolean highOpen) {
    runEdge.add(edge);
    runFrom.add(from);
    runTo.add(to);
    runLowOpen.add(lowOpen ? 1 : 0);
    runHighOpen.add(highOpen ? 1 : 0);
    runLowPiece.add(NONE);
    runHighPiece.add(NONE);
    runCount[edge]++;
  }

  /** Turns an edge that is open as a whole into one with a single run. */
  void splitOpen(int edge) {
    if (state[edge] == OPEN) {
      int perStep = vertical ? network.lines.nx() + 1 : network.lines.nx();
      int line = vertical ? edge % perStep : edge / perStep;
      int step = vertical ? edge / perStep : edge % perStep;
      beginRuns(edge);
      addRun(edge, corner(line, step), corner(line, step + 1), true, true);
    }
  }

  int firstRun(int edge) {
    return firstRun[edge];
  }

  /** Index after the last run of an edge. */
  int endRun(int edge) {
    return firstRun[edge] + runCount[edge];
  }

  /** Patch of the boundary that lies on a run with fluid on one side only; -1 if there is none. */
  int patchOn(int run) {
    DoubleList along = vertical ? network.nodeY : network.nodeX;
    double mid = 0.5 * (along.get(runFrom.get(run)) + along.get(runTo.get(run)));
    for (int e = firstOnEdge[runEdge.get(run)]; e >= 0; e = nextOnEdge[e]) {
      double a = along.get(network.from[e]);
      double b = along.get(network.to[e]);
      if (Math.min(a, b) <= mid && mid <= Math.max(a, b)) {
        return network.patch[e];
      }
    }
    return -1;
  }
}
