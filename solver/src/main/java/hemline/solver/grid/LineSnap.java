package hemline.solver.grid;

/** Finds lines in one direction of a grid and snaps coordinates that all but lie on one. */
final class LineSnap {
  private final double[] line;
  private final double tolerance;

  LineSnap(double[] line, double tolerance) {
    this.line = line;
    this.tolerance = tolerance;
  }

  /** The coordinate of the line within tolerance, or the coordinate itself. */
  double snap(double c) {
    int k = nearest(c);
    return Math.abs(line[k] - c) <= tolerance ? line[k] : c;
  }

  /** Index of the line at exactly this coordinate, or -1. */
  int indexOf(double c) {
    int k = nearest(c);
    return line[k] == c ? k : -1;
  }

  /** Index k of the interval from line k to line k + 1 that holds the coordinate. */
  int interval(double c) {
    return Math.max(0, Math.min(line.length - 2, firstAbove(c) - 1));
  }

  /** Index of the first line strictly above the coordinate; the number of lines if none. */
  int firstAbove(double c) {
    int lo = 0;
    int hi = line.length;
    while (lo < hi) {
      int mid = (lo + hi) >>> 1;
      if (line[mid] > c) {
        hi = mid;
      } else {
        lo = mid + 1;
      }
    }
    return lo;
  }

  private int nearest(double c) {
    int above = firstAbove(c);
    if (above == 0) {
      return 0;
    }
    if (above == line.length) {
      return line.length - 1;
    }
    return c - line[above - 1] <= line[above] - c ? above - 1 : above;
  }
}
