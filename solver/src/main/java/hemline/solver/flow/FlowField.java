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
 * @param faceFlux volume flux through interior faces from owner to neighbour, m²/s
 * @param boundaryFlux volume flux out of boundary faces, m²/s
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
    double[] faceFlux,
    double[] boundaryFlux,
    double[] streamfunction) {}
