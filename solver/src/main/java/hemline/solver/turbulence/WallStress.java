package hemline.solver.turbulence;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;

/** Friction at walls from the wall law, face by face. */
final class WallStress {
  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final Boundary boundary;
  private final double nu;
  private final boolean spanwise;

  /** y⁺ of the cell behind each boundary face; 0 where there is no wall. */
  final double[] yPlus;

  WallStress(FaceGeometry geometry, Boundary boundary, double viscosity, boolean spanwise) {
    this.geometry = geometry;
    mesh = geometry.mesh;
    this.boundary = boundary;
    nu = viscosity;
    this.spanwise = spanwise;
    yPlus = new double[mesh.boundaryFaces];
  }

  boolean isWall(int b) {
    return boundary.kind[b] == Boundary.WALL;
  }

  /** Friction velocity at a wall face, m/s. */
  double frictionVelocity(int b) {
    return yPlus[b] * nu / geometry.bDistance[b];
  }

  /**
   * Updates y⁺ and the effective viscosity at walls.
   *
   * @param s flow; not modified
   * @param g its boundary velocities
   * @param wallViscosity answer, by boundary face
   */
  void update(FlowState s, VelocityGradients g, double[] wallViscosity) {
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (!isWall(b)) {
        continue;
      }
      int c = mesh.bCell[b];
      double du = s.u[c] - g.bu[b];
      double dv = s.v[c] - g.bv[b];
      double along = dv * geometry.bux[b] - du * geometry.buy[b];
      double dw = spanwise ? s.w[c] - g.bw[b] : 0;
      double reynolds = Math.sqrt(along * along + dw * dw) * geometry.bDistance[b] / nu;
      double y = WallLaw.distance(reynolds, yPlus[b]);
      yPlus[b] = y;
      wallViscosity[b] = reynolds > 0 ? nu * y * y / reynolds : nu;
    }
  }
}
