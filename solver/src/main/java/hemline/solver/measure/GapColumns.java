package hemline.solver.measure;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;

/**
 * The fluid between ground and lip, column by column of the grid.
 *
 * <p>A column holds the rectangles from the ground up to the first one without fluid.
 */
final class GapColumns {
  private final Mesh mesh;
  private final FlowSolution flow;

  /** Number of open rectangles of each column, counted from the ground. */
  private final int[] open;

  /** First and last column under the lip. */
  final int first;

  final int last;

  /**
   * Finds the columns.
   *
   * @param flow the solution
   * @param from left end of the lip, m
   * @param to right end, m
   */
  GapColumns(FlowSolution flow, double from, double to) {
    this.flow = flow;
    mesh = flow.problem().geometry().mesh;
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    open = new int[nx];
    int a = nx;
    int b = -1;
    for (int i = 0; i < nx; i++) {
      int base = 0;
      while (base < ny && mesh.cellAt[base * nx + i] < 0) {
        base++;
      }
      int j = base;
      while (j < ny && mesh.cellAt[j * nx + i] >= 0) {
        j++;
      }
      open[i] = j;
      double middle = 0.5 * (mesh.lines.x()[i] + mesh.lines.x()[i + 1]);
      if (middle > from && middle < to) {
        a = Math.min(a, i);
        b = Math.max(b, i);
      }
    }
    first = a;
    last = b;
  }

  /** Fluid area of the column over its width: mean clearance, m. */
  double clearance(int i) {
    double area = 0;
    int lastCell = -1;
    for (int j = 0; j < open[i]; j++) {
      int c = mesh.cellAt[j * mesh.lines.nx() + i];
      if (c >= 0 && c != lastCell) {
        area += mesh.volume[c];
        lastCell = c;
      }
    }
    return area / (mesh.lines.x()[i + 1] - mesh.lines.x()[i]);
  }

  /** Mean static pressure of the column over density. */
  double meanPressure(int i) {
    double sum = 0;
    double volume = 0;
    for (int j = 0; j < open[i]; j++) {
      int c = mesh.cellAt[j * mesh.lines.nx() + i];
      if (c >= 0) {
        sum += mesh.volume[c] * flow.state().p[c];
        volume += mesh.volume[c];
      }
    }
    return sum / volume;
  }

  /** The column that holds x, the first or last one where x lies outside. */
  int at(double x) {
    int i = 0;
    while (i < mesh.lines.nx() - 1 && mesh.lines.x()[i + 1] <= x) {
      i++;
    }
    return i;
  }

  /** Mean kinetic energy of what flows through the column, over density; 0 without a flow. */
  double kineticHead(int i) {
    double through = 0;
    double[] y = mesh.lines.y();
    for (int j = 0; j < open[i]; j++) {
      int c = mesh.cellAt[j * mesh.lines.nx() + i];
      if (c >= 0) {
        through += flow.state().u[c] * (y[j + 1] - y[j]);
      }
    }
    return through == 0 ? 0 : kineticFlux(i, y[open[i]]) / through;
  }

  /** Flux of total pressure through the column over its flow, over density. */
  double totalPressure(int i) {
    double energy = 0;
    double through = 0;
    double[] y = mesh.lines.y();
    for (int j = 0; j < open[i]; j++) {
      int c = mesh.cellAt[j * mesh.lines.nx() + i];
      if (c >= 0) {
        double u = flow.state().u[c];
        double v = flow.state().v[c];
        double q = u * (y[j + 1] - y[j]);
        energy += q * (flow.state().p[c] + 0.5 * (u * u + v * v));
        through += q;
      }
    }
    return energy / through;
  }

  /** Flux of kinetic energy through the lowest part of a column, over density. */
  double kineticFlux(int i, double upTo) {
    double energy = 0;
    double[] y = mesh.lines.y();
    for (int j = 0; j < open[i]; j++) {
      int c = mesh.cellAt[j * mesh.lines.nx() + i];
      double dy = Math.min(y[j + 1], upTo) - y[j];
      if (c >= 0 && dy > 0) {
        double u = flow.state().u[c];
        double v = flow.state().v[c];
        energy += u * dy * 0.5 * (u * u + v * v);
      }
    }
    return energy;
  }
}
