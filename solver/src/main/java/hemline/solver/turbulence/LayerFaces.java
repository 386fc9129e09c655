package hemline.solver.turbulence;

import hemline.solver.grid.Mesh;
import hemline.solver.scheme.FaceGeometry;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Viscosity between wall cells and their neighbours for the one-equation closure.
 *
 * <p>There the eddy viscosity grows with the fourth power of the wall distance and then with the
 * first, so that the mean of two cells drags the outer one too much: friction was up to 25 % high
 * with the first cell in the buffer layer. Under a shear stress that both cells share the velocity
 * between them changes by τ ∫ dn / (ν + ν_t). With ν̃ linear between the cells, as it is in that
 * layer, the viscosity that gives this change is the harmonic mean over ν̃.
 */
final class LayerFaces {
  /** Places and weights of Gauss and Legendre's rule of five points on 0 to 1. */
  private static final double[] PLACE = {
    0.04691007703066802, 0.23076534494715845, 0.5, 0.7692346550528415, 0.953089922969332
  };

  private static final double[] WEIGHT = {
    0.11846344252809454,
    0.23931433524968324,
    0.28444444444444444,
    0.23931433524968324,
    0.11846344252809454
  };

  private final FaceGeometry geometry;
  private final double nu;
  private final DoubleUnaryOperator eddyViscosity;
  private final int[] faces;

  /**
   * Finds the faces.
   *
   * @param walls which boundary faces are walls
   * @param viscosity kinematic, m²/s
   * @param eddyViscosity of a working variable, both in m²/s
   */
  LayerFaces(
      FaceGeometry geometry, boolean[] walls, double viscosity, DoubleUnaryOperator eddyViscosity) {
    this.geometry = geometry;
    nu = viscosity;
    this.eddyViscosity = eddyViscosity;
    Mesh mesh = geometry.mesh;
    boolean[] beside = new boolean[mesh.cells];
    for (int b = 0; b < walls.length; b++) {
      beside[mesh.bCell[b]] |= walls[b];
    }
    faces =
        IntStream.range(0, mesh.faces)
            .filter(f -> beside[mesh.owner[f]] || beside[mesh.neighbour[f]])
            .toArray();
  }

  /**
   * Share of the mean viscosity of two cells that acts between them.
   *
   * @param nuTilde working variable in cells, m²/s; not modified
   * @param ratio answer, by face; others than those beside wall cells stay as they are
   */
  void update(double[] nuTilde, double[] ratio) {
    for (int f : faces) {
      double a = nuTilde[geometry.mesh.owner[f]];
      double b = nuTilde[geometry.mesh.neighbour[f]];
      double wo = geometry.ownerWeight[f];
      double mean =
          nu + wo * eddyViscosity.applyAsDouble(a) + (1 - wo) * eddyViscosity.applyAsDouble(b);
      double fluidity = 0;
      for (int k = 0; k < PLACE.length; k++) {
        double between = a + PLACE[k] * (b - a);
        fluidity += WEIGHT[k] / (nu + eddyViscosity.applyAsDouble(between));
      }
      ratio[f] = 1 / (fluidity * mean);
    }
  }
}
