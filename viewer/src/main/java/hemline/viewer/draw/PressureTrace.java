package hemline.viewer.draw;

import hemline.solver.grid.Mesh;
import hemline.viewer.model.Shown;
import java.util.ArrayList;
import java.util.List;

/**
 * Pressure along the ground and under the lip, column by column.
 *
 * @param ground points {x, p} along the ground, x in the flow's frame, m and Pa
 * @param lip points {x, p} in the cells right under the lip
 */
public record PressureTrace(List<double[]> ground, List<double[]> lip) {
  public PressureTrace {
    ground = List.copyOf(ground);
    lip = List.copyOf(lip);
  }

  /** Traces of a flow. */
  public static PressureTrace of(Shown shown) {
    Mesh mesh = shown.field().mesh();
    double width = shown.placement().right() - shown.placement().left();
    int nx = mesh.lines.nx();
    List<double[]> ground = new ArrayList<>();
    List<double[]> lip = new ArrayList<>();
    for (int i = 0; i < nx; i++) {
      double x = 0.5 * (mesh.lines.x()[i] + mesh.lines.x()[i + 1]);
      int first = -1;
      int last = -1;
      for (int j = 0; j < mesh.lines.ny(); j++) {
        int cell = mesh.cellAt[j * nx + i];
        if (cell < 0) {
          if (first >= 0) {
            break;
          }
        } else {
          first = first < 0 ? cell : first;
          last = cell;
        }
      }
      if (first >= 0) {
        ground.add(new double[] {x, shown.field().p()[first]});
        if (x > 0 && x < width) {
          lip.add(new double[] {x, shown.field().p()[last]});
        }
      }
    }
    return new PressureTrace(ground, lip);
  }

  /** Lowest and highest pressure of both. */
  public double[] range() {
    double low = 0;
    double high = 0;
    for (List<double[]> line : List.of(ground, lip)) {
      for (double[] p : line) {
        low = Math.min(low, p[1]);
        high = Math.max(high, p[1]);
      }
    }
    return new double[] {low, high};
  }
}
