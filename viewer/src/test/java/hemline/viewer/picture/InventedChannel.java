package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import hemline.solver.flow.FlowField;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import java.util.List;

/** A flow on a real mesh that is written down, not solved. */
public final class InventedChannel {
  private InventedChannel() {}

  /** A channel 8 by 4 with a block from x 3 to 5 hanging down to y 1. */
  public static FlowField field() {
    double[] x = new double[33];
    double[] y = new double[17];
    for (int k = 0; k < x.length; k++) {
      x[k] = 0.25 * k;
    }
    for (int k = 0; k < y.length; k++) {
      y[k] = 0.25 * k;
    }
    Ring block = new Ring(new double[] {3, 5, 5, 3}, new double[] {1, 1, 4, 4});
    Mesh mesh = MeshBuilder.build(new GridLines(x, y), List.of(block));
    double[] u = new double[mesh.cells];
    double[] p = new double[mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      u[c] = mesh.cy[c];
      p[c] = -10 * mesh.cx[c];
    }
    double[] psi = new double[x.length * y.length];
    for (int j = 0; j < y.length; j++) {
      for (int i = 0; i < x.length; i++) {
        boolean solid = x[i] >= 3 && x[i] <= 5 && y[j] >= 1;
        psi[j * x.length + i] = solid ? 2 : 0.5 * y[j];
      }
    }
    return new FlowField(
        mesh,
        u,
        new double[mesh.cells],
        new double[mesh.cells],
        p,
        new double[mesh.cells],
        new FlowField.Flux(new double[mesh.faces], new double[mesh.boundaryFaces]),
        psi);
  }
}
