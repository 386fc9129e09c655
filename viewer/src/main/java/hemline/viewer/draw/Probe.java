package hemline.viewer.draw;

import hemline.solver.flow.FlowField;
import hemline.solver.grid.Mesh;
import hemline.viewer.model.Shown;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Values of a flow at a point.
 *
 * @param u velocity along the leak, m/s
 * @param v velocity upwards, m/s
 * @param w velocity along the seal, m/s
 * @param pressure over ambient, Pa
 * @param below part of the leak that flows below the point
 */
public record Probe(double u, double v, double w, double pressure, double below) {

  /**
   * Values in the cell at a point; null in a solid or outside.
   *
   * @param x in the flow's frame, m
   * @param y above the ground, m
   * @param through streamfunction of the lip, m²/s
   */
  public static @Nullable Probe at(Shown shown, double through, double x, double y) {
    FlowField field = shown.field();
    Mesh mesh = field.mesh();
    int i = index(mesh.lines.x(), x);
    int j = index(mesh.lines.y(), y);
    if (i < 0 || j < 0) {
      return null;
    }
    int nx = mesh.lines.nx();
    int cell = mesh.cellAt[j * nx + i];
    if (cell < 0) {
      return null;
    }
    double[] gx = mesh.lines.x();
    double[] gy = mesh.lines.y();
    double a = (x - gx[i]) / (gx[i + 1] - gx[i]);
    double b = (y - gy[j]) / (gy[j + 1] - gy[j]);
    double[] psi = field.streamfunction();
    int k = j * (nx + 1) + i;
    double here =
        (1 - a) * (1 - b) * psi[k]
            + a * (1 - b) * psi[k + 1]
            + (1 - a) * b * psi[k + nx + 1]
            + a * b * psi[k + nx + 2];
    return new Probe(
        field.u()[cell],
        field.v()[cell],
        field.w()[cell],
        field.p()[cell],
        through == 0 ? 0 : here / through);
  }

  public double speed() {
    return Math.sqrt(u * u + v * v + w * w);
  }

  private static int index(double[] lines, double at) {
    int k = Arrays.binarySearch(lines, at);
    int i = k >= 0 ? k : -k - 2;
    return i < 0 || i > lines.length - 2 ? -1 : i;
  }
}
