package hemline.solver.turbulence;

import hemline.solver.scheme.FaceGeometry;

/**
 * Second-order part of the convection of a closure's quantity at some faces.
 *
 * <p>First order smears a quantity across streamlines that cross the grid at an angle: along a wall
 * at 20° by five times its turbulent diffusion on 16 cells over a channel, which carries ω away
 * from the wall and starves k. Along grid lines nothing is smeared, so there first order stays.
 *
 * <p>Along a slanted wall the same profile crosses two faces of a cell inwards and two outwards;
 * what a limiter takes from the steps upwind does not cancel there and drains the layer. ν̃, which
 * is linear near walls, keeps the mean of both cells as long as the steps before and at the face
 * are alike. ω, which falls with the square of the distance, would not bear that.
 */
final class ScalarStream {
  /** Step before the face over that at the face from which on the mean of the cells is taken. */
  private static final double ALIKE = 0.5;

  private final FaceGeometry geometry;
  private final int[] faces;
  private final boolean central;

  /**
   * Prepares the correction.
   *
   * @param faces at which convection is of second order
   * @param central true for a quantity that is linear near walls
   */
  ScalarStream(FaceGeometry geometry, int[] faces, boolean central) {
    this.geometry = geometry;
    this.faces = faces;
    this.central = central;
  }

  /**
   * Adds what convection carries beyond the upwind value: -F (φ_f - φ_upwind) to the owner.
   *
   * @param phi quantity in cells; not modified
   * @param gx its gradient along x; not modified
   * @param gy along y
   * @param flux through faces, m²/s
   * @param rhs changed
   */
  void add(double[] phi, double[] gx, double[] gy, double[] flux, double[] rhs) {
    for (int f : faces) {
      int o = geometry.mesh.owner[f];
      int n = geometry.mesh.neighbour[f];
      boolean forward = flux[f] >= 0;
      int up = forward ? o : n;
      double wo = geometry.ownerWeight[f];
      double share = forward ? 1 - wo : wo;
      // steps from owner to neighbour whichever is upwind: the bounded step changes its sign with
      // them, as the flux does
      double step = phi[n] - phi[o];
      double along = gx[up] * geometry.dx[f] + gy[up] * geometry.dy[f];
      double before = 2 * along - step;
      double bounded = central ? mean(before, step) : smooth(before, step);
      double carried = Math.abs(flux[f]) * share * bounded;
      rhs[o] -= carried;
      rhs[n] += carried;
    }
  }

  /**
   * Twice the step from the upwind value to the face, bounded by a b (a + b) / (a² + b²). Source:
   * van Albada, van Leer and Roberts 1982, Astron. Astrophys. 108, 76–84; without kinks, on which
   * an accelerated iteration would never come to rest.
   */
  private static double smooth(double a, double b) {
    double squares = a * a + b * b;
    return squares > 0 ? a * b * (a + b) / squares : 0;
  }

  /**
   * The step b at the face, falling to nothing where that before it, a, is much less or opposed.
   */
  private static double mean(double a, double b) {
    double share = a * b / (ALIKE * b * b);
    return share >= 1 ? b : share > 0 ? b * share * share * (3 - 2 * share) : 0;
  }
}
