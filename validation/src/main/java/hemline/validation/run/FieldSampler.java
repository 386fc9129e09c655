package hemline.validation.run;

import hemline.solver.flow.FlowField;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import java.util.Arrays;

/**
 * Reads cell values of a flow between cell centres, by polynomials through up to four cells each
 * way; only whole cells take part, so that beside solids fewer cells are used.
 */
final class FieldSampler {
  private static final int MOST = 4;
  private static final double WHOLE = 1 - 1e-9;

  private final Mesh mesh;
  private final double[] x;
  private final double[] y;

  FieldSampler(FlowField field) {
    mesh = field.mesh();
    GridLines lines = mesh.lines;
    x = lines.x();
    y = lines.y();
  }

  /** Centres of the rows of cells, m. */
  double[] rows() {
    return centres(y);
  }

  /** Centres of the columns of cells, m. */
  double[] columns() {
    return centres(x);
  }

  private static double[] centres(double[] lines) {
    double[] c = new double[lines.length - 1];
    for (int i = 0; i < c.length; i++) {
      c[i] = 0.5 * (lines[i] + lines[i + 1]);
    }
    return c;
  }

  /** The value at a point; not a number outside the fluid. */
  double at(double[] value, double px, double py) {
    int i = interval(x, px);
    int j = interval(y, py);
    if (i < 0 || j < 0 || mesh.cellAt[j * (x.length - 1) + i] < 0) {
      return Double.NaN;
    }
    for (int n = MOST; n > 1; n--) {
      int i0 = window(x, px, i, n);
      int j0 = window(y, py, j, n);
      if (whole(i0, j0, n)) {
        return polynomial(value, px, py, i0, j0, n);
      }
    }
    return value[mesh.cellAt[j * (x.length - 1) + i]];
  }

  /** Index of the interval that holds a value, -1 outside. */
  static int interval(double[] lines, double value) {
    int last = lines.length - 1;
    double slack = 1e-9 * (lines[last] - lines[0]);
    if (value < lines[0] - slack || value > lines[last] + slack) {
      return -1;
    }
    int k = Arrays.binarySearch(lines, value);
    int at = k >= 0 ? k : -k - 2;
    return Math.max(0, Math.min(last - 1, at));
  }

  /** First of n neighbouring intervals whose centres lie around a value. */
  private static int window(double[] lines, double value, int i, int n) {
    double centre = 0.5 * (lines[i] + lines[i + 1]);
    int first = n % 2 == 1 ? i - n / 2 : value < centre ? i - n / 2 : i - n / 2 + 1;
    return Math.max(0, Math.min(lines.length - 1 - n, first));
  }

  private boolean whole(int i0, int j0, int n) {
    if (i0 + n > x.length - 1 || j0 + n > y.length - 1) {
      return false;
    }
    for (int j = j0; j < j0 + n; j++) {
      for (int i = i0; i < i0 + n; i++) {
        int c = mesh.cellAt[j * (x.length - 1) + i];
        double area = (x[i + 1] - x[i]) * (y[j + 1] - y[j]);
        if (c < 0 || mesh.volume[c] < WHOLE * area || mesh.volume[c] > area / WHOLE) {
          return false;
        }
      }
    }
    return true;
  }

  private double polynomial(double[] value, double px, double py, int i0, int j0, int n) {
    double[] wx = weights(x, px, i0, n);
    double[] wy = weights(y, py, j0, n);
    double sum = 0;
    for (int j = 0; j < n; j++) {
      for (int i = 0; i < n; i++) {
        sum += wx[i] * wy[j] * value[mesh.cellAt[(j0 + j) * (x.length - 1) + i0 + i]];
      }
    }
    return sum;
  }

  /** Lagrange's weights of the centres of n intervals. */
  private static double[] weights(double[] lines, double at, int first, int n) {
    double[] w = new double[n];
    for (int a = 0; a < n; a++) {
      double ca = 0.5 * (lines[first + a] + lines[first + a + 1]);
      w[a] = 1;
      for (int b = 0; b < n; b++) {
        if (b != a) {
          double cb = 0.5 * (lines[first + b] + lines[first + b + 1]);
          w[a] *= (at - cb) / (ca - cb);
        }
      }
    }
    return w;
  }
}
