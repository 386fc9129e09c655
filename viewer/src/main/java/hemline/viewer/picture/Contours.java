package hemline.viewer.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Contour lines of values on the nodes of a tensor grid by marching squares, linear along grid
 * edges; a saddle is decided by the mean of its four nodes.
 */
public final class Contours {

  /**
   * One contour line; higher values lie on its left.
   *
   * @param x points, metres
   * @param y points, metres
   * @param closed true when the last point joins the first
   */
  public record Line(double[] x, double[] y, boolean closed) {}

  private final double[] x;
  private final double[] y;
  private final double[] values;
  private final int nx;
  private final int ny;

  /**
   * Takes nodes at x[i], y[j] with the value at index {@code j * x.length + i}. Not modified.
   *
   * @param x coordinates, not decreasing
   * @param y coordinates, not decreasing
   */
  public Contours(double[] x, double[] y, double[] values) {
    if (values.length != x.length * y.length) {
      throw new IllegalArgumentException(
          values.length + " values for " + x.length + " by " + y.length + " nodes");
    }
    this.x = x;
    this.y = y;
    this.values = values;
    this.nx = x.length;
    this.ny = y.length;
  }

  /** Lines along which the value is the level, open ones first, then closed ones. */
  public List<Line> lines(double level) {
    // edges: 0 … ny*(nx-1)-1 run along x, the rest along y
    int alongX = ny * (nx - 1);
    int edges = alongX + (ny - 1) * nx;
    int[] next = new int[edges];
    boolean[] entered = new boolean[edges];
    Arrays.fill(next, -1);
    for (int j = 0; j + 1 < ny; j++) {
      for (int i = 0; i + 1 < nx; i++) {
        march(i, j, level, alongX, next, entered);
      }
    }
    List<Line> lines = new ArrayList<>();
    for (int e = 0; e < edges; e++) {
      if (next[e] >= 0 && !entered[e]) {
        lines.add(follow(e, level, alongX, next, false));
      }
    }
    for (int e = 0; e < edges; e++) {
      if (next[e] >= 0) {
        lines.add(follow(e, level, alongX, next, true));
      }
    }
    return lines;
  }

  /** Closed outlines of the region where the value is at least the level, clipped to the grid. */
  public List<Line> region(double level) {
    double[] px = new double[nx + 2];
    double[] py = new double[ny + 2];
    double[] pv = new double[px.length * py.length];
    for (int i = 0; i < px.length; i++) {
      px[i] = x[Math.max(0, Math.min(nx - 1, i - 1))];
    }
    for (int j = 0; j < py.length; j++) {
      py[j] = y[Math.max(0, Math.min(ny - 1, j - 1))];
    }
    for (int j = 0; j < py.length; j++) {
      for (int i = 0; i < px.length; i++) {
        boolean inside = i > 0 && i <= nx && j > 0 && j <= ny;
        pv[j * px.length + i] = inside ? values[(j - 1) * nx + i - 1] : -Double.MAX_VALUE / 4;
      }
    }
    return new Contours(px, py, pv).lines(level);
  }

  private void march(int i, int j, double level, int alongX, int[] next, boolean[] entered) {
    double a = values[j * nx + i];
    double b = values[j * nx + i + 1];
    double c = values[(j + 1) * nx + i + 1];
    double d = values[(j + 1) * nx + i];
    int code =
        (a >= level ? 1 : 0) | (b >= level ? 2 : 0) | (c >= level ? 4 : 0) | (d >= level ? 8 : 0);
    int bottom = j * (nx - 1) + i;
    int top = (j + 1) * (nx - 1) + i;
    int left = alongX + j * nx + i;
    int right = left + 1;
    boolean joined = 0.25 * (a + b + c + d) >= level;
    switch (code) {
      case 1 -> link(bottom, left, next, entered);
      case 2 -> link(right, bottom, next, entered);
      case 3 -> link(right, left, next, entered);
      case 4 -> link(top, right, next, entered);
      case 5 -> {
        link(joined ? bottom : top, right, next, entered);
        link(joined ? top : bottom, left, next, entered);
      }
      case 6 -> link(top, bottom, next, entered);
      case 7 -> link(top, left, next, entered);
      case 8 -> link(left, top, next, entered);
      case 9 -> link(bottom, top, next, entered);
      case 10 -> {
        link(joined ? left : right, bottom, next, entered);
        link(joined ? right : left, top, next, entered);
      }
      case 11 -> link(right, top, next, entered);
      case 12 -> link(left, right, next, entered);
      case 13 -> link(bottom, right, next, entered);
      case 14 -> link(left, bottom, next, entered);
      default -> {}
    }
  }

  private static void link(int from, int to, int[] next, boolean[] entered) {
    next[from] = to;
    entered[to] = true;
  }

  private Line follow(int start, double level, int alongX, int[] next, boolean closed) {
    List<Integer> chain = new ArrayList<>();
    int e = start;
    do {
      chain.add(e);
      int after = next[e];
      next[e] = -1;
      e = after;
    } while (e >= 0 && e != start);
    double[] lx = new double[chain.size()];
    double[] ly = new double[chain.size()];
    for (int k = 0; k < lx.length; k++) {
      int edge = chain.get(k);
      boolean flat = edge < alongX;
      int i = flat ? edge % (nx - 1) : (edge - alongX) % nx;
      int j = flat ? edge / (nx - 1) : (edge - alongX) / nx;
      double from = values[j * nx + i];
      double to = flat ? values[j * nx + i + 1] : values[(j + 1) * nx + i];
      double t = (level - from) / (to - from);
      lx[k] = flat ? x[i] + t * (x[i + 1] - x[i]) : x[i];
      ly[k] = flat ? y[j] : y[j] + t * (y[j + 1] - y[j]);
    }
    return new Line(lx, ly, closed);
  }
}
