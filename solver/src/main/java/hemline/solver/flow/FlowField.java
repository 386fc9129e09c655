package hemline.solver.flow;

import hemline.solver.grid.Mesh;

/**
 * A flow on a mesh: cell values, face fluxes and streamfunction. Read-only by agreement: the arrays
 * are shared, not copied.
 *
 * @param mesh the mesh
 * @param u velocity along x in cells, m/s
 * @param v velocity along y in cells, m/s
 * @param w spanwise velocity in cells, m/s
 * @param p static pressure in cells over ambient total pressure (lip) or the downstream station
 *     (duct), Pa
 * @param eddyViscosity kinematic, in cells, m²/s; zero when laminar
 * @param flux volume flux through faces
 * @param streamfunction on grid corners, index {@code j * (nx + 1) + i}, m²/s: 0 on the ground, the
 *     leak flow on the lip; corners inside solids carry the solid's value
 */
public record FlowField(
    Mesh mesh,
    double[] u,
    double[] v,
    double[] w,
    double[] p,
    double[] eddyViscosity,
    Flux flux,
    double[] streamfunction) {

  /**
   * Volume flux through faces, m²/s.
   *
   * @param interior through interior faces from owner to neighbour
   * @param boundary out of boundary faces
   */
  public record Flux(double[] interior, double[] boundary) {}
}
