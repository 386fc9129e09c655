package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import java.util.ArrayDeque;

/**
 * Streamfunction on grid corners from face fluxes: exact to round-off because every cell conserves
 * mass.
 *
 * <p>ψ grows by the flux through each grid edge: ψ(i, j+1) - ψ(i, j) is the flux along x between
 * the two corners, ψ(i+1, j) - ψ(i, j) minus the flux along y. Edges inside joined cells are passed
 * by, edges inside solids carry nothing. ψ = 0 at the lower left corner.
 */
final class Streamfunction {
  private Streamfunction() {}

  static double[] of(Mesh mesh, FlowState s) {
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    double[] along = new double[(nx + 1) * ny];
    double[] up = new double[nx * (ny + 1)];
    for (int f = 0; f < mesh.faces; f++) {
      (mesh.vertical[f] ? along : up)[mesh.gridFace[f]] += s.flux[f];
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int edge = mesh.bGridFace[b];
      if (edge >= 0) {
        boolean vertical = mesh.bnx[b] != 0;
        double sign = mesh.bnx[b] + mesh.bny[b] > 0 ? 1 : -1;
        (vertical ? along : up)[edge] += sign * s.boundaryFlux[b];
      }
    }
    return integrate(mesh, along, up);
  }

  private static double[] integrate(Mesh mesh, double[] along, double[] up) {
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    int row = nx + 1;
    double[] psi = new double[row * (ny + 1)];
    boolean[] known = new boolean[psi.length];
    ArrayDeque<Integer> queue = new ArrayDeque<>();
    known[0] = true;
    queue.add(0);
    while (!queue.isEmpty()) {
      int corner = queue.remove();
      int i = corner % row;
      int j = corner / row;
      if (j < ny && !joined(mesh, i - 1, j, i, j)) {
        visit(corner + row, psi[corner] + along[j * row + i], psi, known, queue);
      }
      if (j > 0 && !joined(mesh, i - 1, j - 1, i, j - 1)) {
        visit(corner - row, psi[corner] - along[(j - 1) * row + i], psi, known, queue);
      }
      if (i < nx && !joined(mesh, i, j - 1, i, j)) {
        visit(corner + 1, psi[corner] - up[j * nx + i], psi, known, queue);
      }
      if (i > 0 && !joined(mesh, i - 1, j - 1, i - 1, j)) {
        visit(corner - 1, psi[corner] + up[j * nx + i - 1], psi, known, queue);
      }
    }
    for (int c = 0; c < psi.length; c++) {
      if (!known[c]) {
        psi[c] = c > 0 ? psi[c - 1] : 0;
      }
    }
    return psi;
  }

  /** True when both rectangles exist and belong to one cell, so that the edge between is open. */
  private static boolean joined(Mesh mesh, int i, int j, int k, int l) {
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    if (i < 0 || j < 0 || k >= nx || l >= ny) {
      return false;
    }
    int a = mesh.cellAt[j * nx + i];
    return a >= 0 && a == mesh.cellAt[l * nx + k];
  }

  private static void visit(
      int corner, double value, double[] psi, boolean[] known, ArrayDeque<Integer> queue) {
    if (!known[corner]) {
      known[corner] = true;
      psi[corner] = value;
      queue.add(corner);
    }
  }
}
