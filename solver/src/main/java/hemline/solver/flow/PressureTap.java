package hemline.solver.flow;

import hemline.solver.grid.Mesh;

/** Length-weighted mean of a cell field over a set of cells. */
public final class PressureTap {
  private final int[] cell;
  private final double[] weight;

  private PressureTap(int[] cell, double[] weight) {
    this.cell = cell;
    this.weight = weight;
  }

  /**
   * Tap on a vertical line: the mean over the cells just right of x between two heights.
   *
   * @param mesh the mesh
   * @param x position, m
   * @param from lower end, m
   * @param to upper end, m
   */
  static PressureTap rightOf(Mesh mesh, double x, double from, double to) {
    double[] lines = mesh.lines.x();
    int i = 0;
    // first column whose left line is at x or beyond
    while (i < mesh.lines.nx() - 1 && lines[i] < x - 1e-9 * (lines[lines.length - 1] - lines[0])) {
      i++;
    }
    return column(mesh, new int[] {i}, new double[] {1}, from, to);
  }

  /** Mean over the height of the fluid at station x, interpolated between columns. */
  static PressureTap station(Mesh mesh, double x) {
    double[] lines = mesh.lines.x();
    int nx = mesh.lines.nx();
    int i = 0;
    while (i < nx - 2 && 0.5 * (lines[i + 1] + lines[i + 2]) < x) {
      i++;
    }
    if (nx == 1) {
      return column(mesh, new int[] {0}, new double[] {1}, -1e300, 1e300);
    }
    double a = 0.5 * (lines[i] + lines[i + 1]);
    double b = 0.5 * (lines[i + 1] + lines[i + 2]);
    // at an end the line through the last two columns is carried on
    double t = (x - a) / (b - a);
    return column(mesh, new int[] {i, i + 1}, new double[] {1 - t, t}, -1e300, 1e300);
  }

  private static PressureTap column(
      Mesh mesh, int[] columns, double[] share, double from, double to) {
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    double[] y = mesh.lines.y();
    int[] cell = new int[columns.length * ny];
    double[] weight = new double[columns.length * ny];
    int count = 0;
    for (int k = 0; k < columns.length; k++) {
      double total = 0;
      int start = count;
      for (int j = 0; j < ny; j++) {
        int c = mesh.cellAt[j * nx + columns[k]];
        double overlap = Math.min(y[j + 1], to) - Math.max(y[j], from);
        if (c >= 0 && overlap > 0) {
          cell[count] = c;
          weight[count] = overlap;
          total += overlap;
          count++;
        }
      }
      for (int m = start; m < count; m++) {
        weight[m] *= share[k] / total;
      }
    }
    if (count == 0) {
      throw new IllegalArgumentException("a pressure tap found no fluid");
    }
    return new PressureTap(
        java.util.Arrays.copyOf(cell, count), java.util.Arrays.copyOf(weight, count));
  }

  /** Mean of the field, not modified. */
  public double read(double[] field) {
    double sum = 0;
    for (int i = 0; i < cell.length; i++) {
      sum += weight[i] * field[cell[i]];
    }
    return sum;
  }
}
