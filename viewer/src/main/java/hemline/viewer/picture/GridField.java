package hemline.viewer.picture;

import hemline.solver.flow.FlowField;
import hemline.solver.grid.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What a section picture needs of a flow: pressure and streamfunction on nodes of tensor grids.
 *
 * <p>Pressure nodes are the centres of grid rectangles and the domain's edges; inside solids they
 * carry values continued from the fluid, so that colours run smoothly up to a wall drawn on top.
 *
 * @param px pressure nodes along x, m
 * @param py pressure nodes along y, m
 * @param pressure at node {@code j * px.length + i}, Pa
 * @param wet true where a pressure node lies in fluid
 * @param sx streamfunction nodes along x, m
 * @param sy streamfunction nodes along y, m
 * @param streamfunction at node {@code j * sx.length + i}, m²/s
 */
public record GridField(
    double[] px,
    double[] py,
    double[] pressure,
    boolean[] wet,
    double[] sx,
    double[] sy,
    double[] streamfunction) {

  public static GridField of(FlowField field) {
    return of(field, field.p());
  }

  /**
   * The same with another quantity of the cells in the place of pressure.
   *
   * @param values by cell. Not modified.
   */
  public static GridField of(FlowField field, double[] values) {
    Mesh mesh = field.mesh();
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    double[] px = withEnds(mesh.lines.x());
    double[] py = withEnds(mesh.lines.y());
    double[] pressure = new double[px.length * py.length];
    boolean[] wet = new boolean[pressure.length];
    for (int j = 0; j < py.length; j++) {
      for (int i = 0; i < px.length; i++) {
        int column = Math.max(0, Math.min(nx - 1, i - 1));
        int row = Math.max(0, Math.min(ny - 1, j - 1));
        int cell = mesh.cellAt[row * nx + column];
        if (cell >= 0) {
          wet[j * px.length + i] = true;
          pressure[j * px.length + i] = values[cell];
        }
      }
    }
    continueIntoSolids(pressure, wet, px.length);
    return new GridField(
        px, py, pressure, wet, mesh.lines.x(), mesh.lines.y(), field.streamfunction());
  }

  /** The part of the field on and around a window, so that nothing far away is traced. */
  public GridField around(SectionWindow window) {
    int[] pi = span(px, window.left(), window.right());
    int[] pj = span(py, window.bottom(), window.top());
    int[] si = span(sx, window.left(), window.right());
    int[] sj = span(sy, window.bottom(), window.top());
    boolean[] wetPart = new boolean[(pi[1] - pi[0]) * (pj[1] - pj[0])];
    for (int j = pj[0], to = 0; j < pj[1]; j++) {
      for (int i = pi[0]; i < pi[1]; i++) {
        wetPart[to++] = wet[j * px.length + i];
      }
    }
    return new GridField(
        Arrays.copyOfRange(px, pi[0], pi[1]),
        Arrays.copyOfRange(py, pj[0], pj[1]),
        part(pressure, px.length, pi, pj),
        wetPart,
        Arrays.copyOfRange(sx, si[0], si[1]),
        Arrays.copyOfRange(sy, sj[0], sj[1]),
        part(streamfunction, sx.length, si, sj));
  }

  /**
   * Lowest and highest pressure of the fluid.
   *
   * @param share of the wet area to leave out at each end; 0 for none
   */
  public double[] pressureRange(double share) {
    List<double[]> nodes = new ArrayList<>();
    double total = 0;
    for (int k = 0; k < pressure.length; k++) {
      if (wet[k]) {
        double area = reach(px, k % px.length) * reach(py, k / px.length);
        nodes.add(new double[] {pressure[k], area});
        total += area;
      }
    }
    nodes.sort(Comparator.comparingDouble(node -> node[0]));
    double[] range = {0, 0};
    double gone = 0;
    boolean begun = false;
    for (double[] node : nodes) {
      gone += node[1];
      if (!begun && gone >= share * total) {
        range[0] = node[0];
        begun = true;
      }
      if (gone - node[1] <= (1 - share) * total) {
        range[1] = node[0];
      }
    }
    return range;
  }

  /** Width of the stretch that belongs to a node. */
  private static double reach(double[] nodes, int k) {
    return 0.5 * (nodes[Math.min(k + 1, nodes.length - 1)] - nodes[Math.max(k - 1, 0)]);
  }

  /**
   * Streamfunction of a wall that covers a stretch of x from a height upwards: the value at its
   * node nearest to that height.
   */
  public double streamfunctionIn(double left, double right, double height) {
    int j = nearest(sy, height);
    if (sy[j] < height && j + 1 < sy.length) {
      j++;
    }
    return streamfunction[j * sx.length + nearest(sx, 0.5 * (left + right))];
  }

  private static int nearest(double[] nodes, double to) {
    int best = 0;
    for (int k = 1; k < nodes.length; k++) {
      if (Math.abs(nodes[k] - to) < Math.abs(nodes[best] - to)) {
        best = k;
      }
    }
    return best;
  }

  private static double[] withEnds(double[] lines) {
    int n = lines.length - 1;
    double[] nodes = new double[n + 2];
    nodes[0] = lines[0];
    for (int i = 0; i < n; i++) {
      nodes[i + 1] = 0.5 * (lines[i] + lines[i + 1]);
    }
    nodes[n + 1] = lines[n];
    return nodes;
  }

  /** Layer by layer, a dry node takes the mean of its known neighbours. */
  private static void continueIntoSolids(double[] values, boolean[] wet, int width) {
    boolean[] known = wet.clone();
    int height = values.length / width;
    boolean grew = true;
    while (grew) {
      grew = false;
      boolean[] before = known.clone();
      for (int j = 0; j < height; j++) {
        for (int i = 0; i < width; i++) {
          int k = j * width + i;
          if (before[k]) {
            continue;
          }
          double sum = 0;
          int count = 0;
          for (int side = 0; side < 4; side++) {
            int ni = i + (side == 0 ? -1 : side == 1 ? 1 : 0);
            int nj = j + (side == 2 ? -1 : side == 3 ? 1 : 0);
            if (ni >= 0 && ni < width && nj >= 0 && nj < height && before[nj * width + ni]) {
              sum += values[nj * width + ni];
              count++;
            }
          }
          if (count > 0) {
            values[k] = sum / count;
            known[k] = true;
            grew = true;
          }
        }
      }
    }
  }

  /** Index range, end excluded, of the nodes inside a stretch and one beyond each end. */
  private static int[] span(double[] nodes, double low, double high) {
    int from = 0;
    while (from + 2 < nodes.length && nodes[from + 1] <= low) {
      from++;
    }
    int to = nodes.length;
    while (to - from > 2 && nodes[to - 2] >= high) {
      to--;
    }
    return new int[] {from, to};
  }

  private static double[] part(double[] values, int width, int[] i, int[] j) {
    double[] out = new double[(i[1] - i[0]) * (j[1] - j[0])];
    for (int row = j[0]; row < j[1]; row++) {
      System.arraycopy(values, row * width + i[0], out, (row - j[0]) * (i[1] - i[0]), i[1] - i[0]);
    }
    return out;
  }
}
