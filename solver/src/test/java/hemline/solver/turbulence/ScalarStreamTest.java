package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.scheme.Boundary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What second-order convection adds at one face, by hand. */
class ScalarStreamTest {
  /** Cells 1, 3 and 2 wide: faces at 1 and 4, centroids at 0.5, 2.5 and 5. */
  private final ClosureMeshes m =
      ClosureMeshes.of(new double[] {0, 1, 4, 6}, new double[] {0, 1}, Boundary.SLIP);

  private double[] added(double[] phi, double[] gx, double... flux) {
    return added(false, phi, gx, flux);
  }

  private double[] added(boolean central, double[] phi, double[] gx, double... flux) {
    double[] rhs = {10, 10, 10};
    new ScalarStream(m.geometry, new int[] {0, 1}, central).add(phi, gx, new double[3], flux, rhs);
    return rhs;
  }

  /** A linear field is carried at its value on the face: φ_f - φ_upwind = b (x_f - x_upwind). */
  @Test
  void linearFieldsAreExact() {
    double[] phi = {2 * 0.5, 2 * 2.5, 2 * 5};
    double[] gx = {2, 2, 2};
    // forwards: 0.5 and 1.5 from the upwind centroid to the face
    assertThat(added(phi, gx, 3, 4)).containsExactly(exactly(7, 10 + 3 - 4 * 2 * 1.5, 22));
    // backwards: 1.5 and 1
    assertThat(added(phi, gx, -3, -4))
        .containsExactly(exactly(10 - 3 * 2 * 1.5, 10 + 3 * 2 * 1.5 - 4 * 2 * 1, 10 + 4 * 2 * 1));
  }

  private static double[] exactly(double... value) {
    return value;
  }

  /**
   * Step a behind and b ahead give a b (a + b) / (a² + b²), the share of the way to the face of it;
   * nothing at an extreme's flat side. Upwind gradient g over 2: a = 2 · 2 g - b.
   */
  @ParameterizedTest
  @CsvSource({
    // b = 4, g = 2.5: a = 6, 6·4·10/52 · 0.25
    "1, 5, 2.5, 1.1538461538461537",
    // b = 4, g = 1: a = 0
    "1, 5, 1, 0",
    // b = 4, g = 0.5: a = -2, -2·4·2/20 · 0.25
    "1, 5, 0.5, -0.2",
    // uniform
    "3, 3, 0, 0",
  })
  void isBounded(double phi0, double phi1, double g, double perFlux) {
    double[] rhs = added(new double[] {phi0, phi1, 0}, new double[] {g, 0, 0}, 2, 0);
    assertThat(rhs[0]).isCloseTo(10 - 2 * perFlux, within(1e-12));
    assertThat(rhs[1]).isCloseTo(10 + 2 * perFlux, within(1e-12));
    assertThat(rhs[2]).isEqualTo(10);
  }

  /**
   * Linear near walls: the step b at the face whole, where the one before it, a = 4 g - b, is half
   * of it and more; of a / (b / 2) = s below one the share s² (3 - 2 s).
   */
  @ParameterizedTest
  @CsvSource({
    // b = 4, g = 1.5: a = 2
    "1, 5, 1.5, 1",
    "1, 5, 2.5, 1",
    // a = 1: half of the step
    "1, 5, 1.25, 0.5",
    // a = -1
    "1, 5, 0.75, 0",
    // uniform
    "3, 3, 0, 0",
  })
  void keepsTheMeanOfLinearLayers(double phi0, double phi1, double g, double perFlux) {
    double[] rhs = added(true, new double[] {phi0, phi1, 0}, new double[] {g, 0, 0}, 2, 0);
    assertThat(rhs[0]).isCloseTo(10 - 2 * perFlux, within(1e-12));
    assertThat(rhs[1]).isCloseTo(10 + 2 * perFlux, within(1e-12));
    assertThat(rhs[2]).isEqualTo(10);
  }

  /** Both ways the face carries the mean of the cells, though the steps beyond it differ. */
  @Test
  void layersAlongSlantedWallsAreNotDrained() {
    double[] phi = {1, 5, 7};
    double[] in = added(true, phi, new double[] {2.5, 1.5, 1}, 2, 0);
    double[] out = added(true, phi, new double[] {2.5, 1.5, 1}, -2, 0);
    assertThat(1 + (10 - in[0]) / 2).isCloseTo(2, within(1e-12));
    assertThat(5 + (out[0] - 10) / 2).isCloseTo(2, within(1e-12));
  }

  /** Between rows the derivative along y counts. */
  @Test
  void countsBothDirections() {
    ClosureMeshes column =
        ClosureMeshes.of(new double[] {0, 1}, new double[] {0, 2, 4}, Boundary.SLIP);
    double[] rhs = new double[2];
    new ScalarStream(column.geometry, new int[] {0}, false)
        .add(new double[] {1, 7}, new double[2], new double[] {3, 3}, new double[] {5}, rhs);
    assertThat(rhs).containsExactly(-15, 15);
  }

  @Test
  void leavesOtherFacesAlone() {
    double[] rhs = new double[3];
    new ScalarStream(m.geometry, new int[] {1}, false)
        .add(
            new double[] {1, 2, 3},
            new double[] {1, 1, 1},
            new double[3],
            new double[] {1, 0},
            rhs);
    assertThat(rhs).containsOnly(0);
  }
}
