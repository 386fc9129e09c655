package hemline.validation.run;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** Widths of shear layers that spread along x, from columns of cells in a box. */
final class Widths {
  private Widths() {}

  /**
   * Speeds along x over the height at one place.
   *
   * @param y middles of the cells
   * @param u speeds there
   */
  record Column(double[] y, double[] u) {}

  /** Slope of a width over x, by least squares over the columns of a stretch. */
  static double growth(FlowSolution flow, double from, double to, ToDoubleFunction<Column> width) {
    double[] x = flow.problem().geometry().mesh.lines.x();
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i + 1 < x.length; i++) {
      double middle = 0.5 * (x[i] + x[i + 1]);
      if (middle > from && middle < to) {
        line.addData(middle, width.applyAsDouble(column(flow, i)));
      }
    }
    return line.getSlope();
  }

  private static Column column(FlowSolution flow, int i) {
    Mesh mesh = flow.problem().geometry().mesh;
    double[] lines = mesh.lines.y();
    double[] y = new double[lines.length - 1];
    double[] u = new double[y.length];
    for (int j = 0; j < y.length; j++) {
      y[j] = 0.5 * (lines[j] + lines[j + 1]);
      u[j] = flow.state().u[mesh.cellAt[j * mesh.lines.nx() + i]];
    }
    return new Column(y, u);
  }

  /** Difference of the streams over the steepest gradient. */
  static double vorticity(Column c, double difference) {
    double most = 0;
    for (int j = 1; j < c.y.length; j++) {
      most = Math.max(most, Math.abs(c.u[j] - c.u[j - 1]) / (c.y[j] - c.y[j - 1]));
    }
    return difference / most;
  }

  /** Distance between the heights where the squared speed is these shares of the stream's, 1. */
  static double between(Column c, double low, double high) {
    return last(c, Math.sqrt(high)) - last(c, Math.sqrt(low));
  }

  /** Height above which the speed no more falls below a value. */
  private static double last(Column c, double speed) {
    for (int j = c.y.length - 1; j > 0; j--) {
      if (c.u[j - 1] < speed && c.u[j] >= speed) {
        return cross(c, j, speed);
      }
    }
    return Double.NaN;
  }

  private static double cross(Column c, int j, double speed) {
    double share = (speed - c.u[j - 1]) / (c.u[j] - c.u[j - 1]);
    return c.y[j - 1] + share * (c.y[j] - c.y[j - 1]);
  }

  private static int fastest(Column c) {
    int most = 0;
    for (int j = 1; j < c.y.length; j++) {
      if (c.u[j] > c.u[most]) {
        most = j;
      }
    }
    return most;
  }

  /** Height above the largest speed where half of it is left. */
  static double half(Column c) {
    int most = fastest(c);
    double speed = 0.5 * top(c, most)[1];
    for (int j = most + 1; j < c.y.length; j++) {
      if (c.u[j] < speed) {
        return cross(c, j, speed);
      }
    }
    return Double.NaN;
  }

  /** Height of the largest speed. */
  static double peak(Column c) {
    return top(c, fastest(c))[0];
  }

  /** Place and value at the top of the parabola through the fastest cell and its neighbours. */
  private static double[] top(Column c, int j) {
    if (j == 0 || j + 1 == c.y.length) {
      return new double[] {c.y[j], c.u[j]};
    }
    double below = (c.u[j] - c.u[j - 1]) / (c.y[j] - c.y[j - 1]);
    double above = (c.u[j + 1] - c.u[j]) / (c.y[j + 1] - c.y[j]);
    double curve = (above - below) / (c.y[j + 1] - c.y[j - 1]);
    if (curve >= 0) {
      return new double[] {c.y[j], c.u[j]};
    }
    double slope = below + curve * (c.y[j] - c.y[j - 1]);
    double away = -0.5 * slope / curve;
    return new double[] {c.y[j] + away, c.u[j] + 0.5 * slope * away};
  }

  /**
   * Friction coefficient on the lower wall, on the largest speed, over that measured at the same
   * Reynolds number: C_f = 0.0315 (U_m y_m / ν)^-0.182 (Bradshaw and Gee 1960).
   */
  static double friction(FlowSolution flow, double at) {
    Mesh mesh = flow.problem().geometry().mesh;
    double[] x = mesh.lines.x();
    int i = 0;
    while (x[i + 1] < at) {
      i++;
    }
    Column c = column(flow, i);
    double[] top = top(c, fastest(c));
    double shear = Double.NaN;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.BOTTOM && mesh.bx[b] > x[i] && mesh.bx[b] < x[i + 1]) {
        shear = flow.shearX()[b] / Math.abs(mesh.bny[b]);
      }
    }
    double law = 0.0315 * Math.pow(top[1] * top[0] / flow.problem().momentum().viscosity(), -0.182);
    return 2 * Math.abs(shear) / (top[1] * top[1]) / law;
  }
}
