package hemline.solver.grid;

/**
 * Turns the closed loop around a part of fluid into surfaces.
 *
 * <p>Neighbouring pieces of one solid that follow a smooth curve (chords of an arc) become one
 * surface per {@link #SPAN} of turning: area vectors are summed, centroids weighted by length.
 */
final class SurfaceJoin {
  /** Largest turn between pieces of one curve, rad. */
  private static final double SMOOTH = Math.toRadians(8);

  /** Largest turn along one surface, rad. */
  private static final double SPAN = Math.toRadians(20);

  /** A piece shorter than this share of its loop joins its neighbour whatever the turn. */
  private static final double SPECK = 1e-7;

  private final CutNetwork network;
  private final CellParts parts;

  SurfaceJoin(CutNetwork network, CellParts parts) {
    this.network = network;
    this.parts = parts;
  }

  /**
   * Adds the surfaces of a loop.
   *
   * @param loop edges in order
   * @param patch patch of an edge, -1 where it is open to a neighbour
   * @param gridFace grid face of edges on domain sides
   */
  void addLoop(int part, IntList loop, IntList from, IntList to, IntList patch, IntList gridFace) {
    int n = loop.size();
    double[] dx = new double[n];
    double[] dy = new double[n];
    double perimeter = 0;
    for (int k = 0; k < n; k++) {
      int e = loop.get(k);
      dx[k] = network.nodeX.get(to.get(e)) - network.nodeX.get(from.get(e));
      dy[k] = network.nodeY.get(to.get(e)) - network.nodeY.get(from.get(e));
      perimeter += Math.hypot(dx[k], dy[k]);
    }
    double speck = SPECK * perimeter;
    // turn[k]: angle from the piece before; NaN where k starts a new curve
    double[] turn = new double[n];
    int first = -1;
    for (int k = 0; k < n; k++) {
      int before = (k + n - 1) % n;
      int p = patch.get(loop.get(k));
      boolean same = p >= Patch.FIRST_SOLID && p == patch.get(loop.get(before)) && n > 1;
      turn[k] = same ? turn(dx, dy, before, k, speck) : Double.NaN;
      if (Double.isNaN(turn[k]) && first < 0) {
        first = k;
      }
    }
    if (first < 0) {
      first = lowest(loop, from);
      turn[first] = Double.NaN;
    }
    int begin = 0;
    while (begin < n) {
      int end = begin + 1;
      double total = 0;
      while (end < n && !Double.isNaN(turn[(first + end) % n])) {
        total += Math.abs(turn[(first + end) % n]);
        end++;
      }
      addCurve(part, loop, from, patch, gridFace, dx, dy, turn, first, begin, end, total);
      begin = end;
    }
  }

  private static double turn(double[] dx, double[] dy, int a, int b, double speck) {
    if (Math.hypot(dx[a], dy[a]) < speck || Math.hypot(dx[b], dy[b]) < speck) {
      return 0;
    }
    double angle = Math.atan2(dx[a] * dy[b] - dy[a] * dx[b], dx[a] * dx[b] + dy[a] * dy[b]);
    return Math.abs(angle) <= SMOOTH ? angle : Double.NaN;
  }

  private int lowest(IntList loop, IntList from) {
    int best = 0;
    for (int k = 1; k < loop.size(); k++) {
      int a = from.get(loop.get(k));
      int b = from.get(loop.get(best));
      int byY = Double.compare(network.nodeY.get(a), network.nodeY.get(b));
      if (byY < 0 || (byY == 0 && network.nodeX.get(a) < network.nodeX.get(b))) {
        best = k;
      }
    }
    return best;
  }

  private void addCurve(
      int part,
      IntList loop,
      IntList from,
      IntList patch,
      IntList gridFace,
      double[] dx,
      double[] dy,
      double[] turn,
      int first,
      int begin,
      int end,
      double total) {
    int n = loop.size();
    int p = patch.get(loop.get((first + begin) % n));
    if (p < 0) {
      return;
    }
    int groups = Math.max(1, (int) Math.ceil(total / SPAN - 1e-9));
    double turned = 0;
    int group = 0;
    double sumDx = 0;
    double sumDy = 0;
    double length = 0;
    double mx = 0;
    double my = 0;
    for (int m = begin; m < end; m++) {
      int k = (first + m) % n;
      turned += m == begin ? 0 : Math.abs(turn[k]);
      int own = groups == 1 ? 0 : Math.min(groups - 1, (int) (groups * turned / total));
      if (own != group) {
        flush(part, p, sumDx, sumDy, length, mx, my, -1);
        sumDx = 0;
        sumDy = 0;
        length = 0;
        mx = 0;
        my = 0;
        group = own;
      }
      double l = Math.hypot(dx[k], dy[k]);
      int a = from.get(loop.get(k));
      sumDx += dx[k];
      sumDy += dy[k];
      length += l;
      mx += l * (network.nodeX.get(a) + 0.5 * dx[k]);
      my += l * (network.nodeY.get(a) + 0.5 * dy[k]);
    }
    flush(part, p, sumDx, sumDy, length, mx, my, gridFace.get(loop.get((first + begin) % n)));
  }

  private void flush(
      int part,
      int patch,
      double dx,
      double dy,
      double length,
      double mx,
      double my,
      int gridFace) {
    if (length > 0) {
      // the fluid lies left of the piece, so outward is to its right
      parts.addSurface(part, patch, dy, -dx, mx / length, my / length, gridFace);
    }
  }
}
