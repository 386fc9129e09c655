package hemline.solver.grid;

/** Open connections between parts of fluid in neighbouring rectangles, row by row. */
final class PartLinks {
  final IntList low = new IntList();
  final IntList high = new IntList();
  final IntList gridFace = new IntList();

  /** 1 for a connection across a vertical grid line, else 0. */
  final IntList vertical = new IntList();

  final DoubleList length = new DoubleList();

  /** Middle of the connection along its grid line. */
  final DoubleList middle = new DoubleList();

  /** Nodes at the ends; -1 where a whole grid edge is open. */
  final IntList fromNode = new IntList();

  final IntList toNode = new IntList();

  private final CutNetwork network;
  private final CellParts parts;

  PartLinks(
      CutNetwork network, GridEdges across, GridEdges up, CellParts parts, Runnable checkpoint) {
    this.network = network;
    this.parts = parts;
    int nx = network.lines.nx();
    int ny = network.lines.ny();
    double[] x = network.lines.x();
    double[] y = network.lines.y();
    for (int j = 0; j < ny; j++) {
      checkpoint.run();
      for (int i = 0; i < nx; i++) {
        int rect = j * nx + i;
        if (i + 1 < nx) {
          add(across, j * (nx + 1) + i + 1, rect, rect + 1, y[j], y[j + 1]);
        }
        if (j + 1 < ny) {
          add(up, rect + nx, rect, rect + nx, x[i], x[i + 1]);
        }
      }
    }
  }

  int size() {
    return low.size();
  }

  private void add(GridEdges edges, int edge, int lowRect, int highRect, double a, double b) {
    if (edges.state[edge] == GridEdges.CLOSED) {
      return;
    }
    int isVertical = edges.vertical ? 1 : 0;
    if (edges.state[edge] == GridEdges.OPEN) {
      link(parts.start[lowRect], parts.start[highRect], edge, isVertical, a, b, -1, -1);
      return;
    }
    int last = -1;
    for (int r = edges.firstRun(edge); r < edges.endRun(edge); r++) {
      if (edges.runLowOpen.get(r) == 0 || edges.runHighOpen.get(r) == 0) {
        last = -1;
        continue;
      }
      int p = partOf(edges.runLowPiece.get(r), lowRect);
      int q = partOf(edges.runHighPiece.get(r), highRect);
      DoubleList along = edges.vertical ? network.nodeY : network.nodeX;
      double from = along.get(edges.runFrom.get(r));
      double to = along.get(edges.runTo.get(r));
      if (p < 0 || q < 0) {
        close(p, q, edges.vertical, edges.runFrom.get(r), edges.runTo.get(r));
        last = -1;
      } else if (last >= 0 && low.get(last) == p && high.get(last) == q) {
        double start = middle.get(last) - 0.5 * length.get(last);
        length.set(last, to - start);
        middle.set(last, 0.5 * (start + to));
        toNode.set(last, edges.runTo.get(r));
      } else {
        last = size();
        link(p, q, edge, isVertical, from, to, edges.runFrom.get(r), edges.runTo.get(r));
      }
    }
  }

  private int partOf(int piece, int rect) {
    return piece != GridEdges.NONE ? piece : parts.whole[rect] ? parts.start[rect] : -1;
  }

  private void link(
      int p, int q, int edge, int isVertical, double a, double b, int fromNodeId, int toNodeId) {
    low.add(p);
    high.add(q);
    gridFace.add(edge);
    vertical.add(isVertical);
    length.add(b - a);
    middle.add(0.5 * (a + b));
    fromNode.add(fromNodeId);
    toNode.add(toNodeId);
  }

  /** Puts a wall of the solid nearby between two parts, or on the one that is there. */
  void close(int p, int q, boolean isVertical, int a, int b) {
    int patch = network.solidNear(a, b);
    double dx = network.nodeX.get(b) - network.nodeX.get(a);
    double dy = network.nodeY.get(b) - network.nodeY.get(a);
    double x = network.nodeX.get(a) + 0.5 * dx;
    double y = network.nodeY.get(a) + 0.5 * dy;
    double nx = isVertical ? dy : 0;
    double ny = isVertical ? 0 : dx;
    if (p >= 0) {
      parts.addSurface(p, patch, nx, ny, x, y, -1);
    }
    if (q >= 0) {
      parts.addSurface(q, patch, -nx, -ny, x, y, -1);
    }
  }
}
