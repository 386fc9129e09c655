package hemline.solver.turbulence;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;

/**
 * Friction at walls from the wall law, face by face.
 *
 * <p>At slanted walls it also tells the velocity gradients what the law's profile looks like:
 * beyond the sublayer its slope in a cell is far below the velocity over the distance, and in the
 * next cell below the mean slope between the two ({@link LayerSlopes}).
 */
final class WallStress {
  /** Least speed in a cell, over the linear share of that at the place read. */
  private static final double CONCAVE = 0.5;

  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final Boundary boundary;
  private final double nu;
  private final boolean spanwise;
  private final VelocityLaw law;

  private final LayerSlopes slopes;

  /** Where the law is read. */
  final SlantedWalls slanted;

  /** y⁺ of the place read for each boundary face; 0 where there is no wall. */
  final double[] yPlus;

  /**
   * Prepares the law at all walls.
   *
   * @param viscosity kinematic, m²/s
   * @param spanwise true when the third velocity component counts
   * @param law of the closure's own layer
   */
  WallStress(
      FaceGeometry geometry,
      Boundary boundary,
      double viscosity,
      boolean spanwise,
      VelocityLaw law) {
    this.law = law;
    this.geometry = geometry;
    mesh = geometry.mesh;
    this.boundary = boundary;
    nu = viscosity;
    this.spanwise = spanwise;
    slanted = new SlantedWalls(geometry, boundary);
    slopes = new LayerSlopes(geometry, slanted, law);
    yPlus = new double[mesh.boundaryFaces];
  }

  boolean isWall(int b) {
    return boundary.kind[b] == Boundary.WALL;
  }

  /** Friction velocity at a wall face, m/s. */
  double frictionVelocity(int b) {
    return yPlus[b] * nu / slanted.distance[b];
  }

  /**
   * Updates y⁺, the effective viscosity at walls and what gradients see of the law's profile.
   *
   * @param s flow; not modified
   * @param g its boundary velocities and gradients; the shares at slanted walls are changed
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
      double here = Math.sqrt(along * along + dw * dw);
      double d = geometry.bDistance[b];
      if (slanted.isMoved(b)) {
        double there = there(s, g, b);
        double reynolds = there * slanted.distance[b] / nu;
        yPlus[b] = law.distance(reynolds, yPlus[b]);
        double friction = frictionVelocity(b);
        // profiles are concave: much less than the linear share of the speed further out is a
        // passing state
        double least = CONCAVE * there * d / slanted.distance[b];
        wallViscosity[b] = reynolds > 0 ? friction * friction * d / Math.max(here, least) : nu;
      } else {
        double reynolds = here * d / nu;
        double y = law.distance(reynolds, yPlus[b]);
        yPlus[b] = y;
        wallViscosity[b] = reynolds > 0 ? nu * y * y / reynolds : nu;
      }
      if (slanted.isSlanted(b)) {
        double friction = frictionVelocity(b);
        double slope = friction * friction / nu * law.slope(yPlus[b]);
        g.seeWall(b, here > 0 ? Math.min(1, slope * d / here) : 1);
      }
    }
    slopes.update(yPlus, g);
  }

  /** Speed along the wall at the place read. */
  private double there(FlowState s, VelocityGradients g, int b) {
    int k = slanted.cell[b];
    double nx = geometry.bux[b];
    double ny = geometry.buy[b];
    double x = mesh.bx[b] - slanted.distance[b] * nx - mesh.cx[k];
    double y = mesh.by[b] - slanted.distance[b] * ny - mesh.cy[k];
    double u = s.u[k] + g.ux[k] * x + g.uy[k] * y - g.bu[b];
    double v = s.v[k] + g.vx[k] * x + g.vy[k] * y - g.bv[b];
    double w = spanwise ? s.w[k] + g.wx[k] * x + g.wy[k] * y - g.bw[b] : 0;
    double far = v * nx - u * ny;
    return Math.sqrt(far * far + w * w);
  }
}
