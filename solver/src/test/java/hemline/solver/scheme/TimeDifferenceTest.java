package hemline.solver.scheme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimeDifferenceTest {
  private static final double STEP = 0.25;
  private final Mesh mesh = SchemeMeshes.plain();
  private final TimeDifference difference = new TimeDifference(mesh, STEP);

  private FlowState state(double u) {
    FlowState s = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    s.u[3] = u;
    return s;
  }

  private double of(double now, double last, double beforeLast) {
    return difference.now() * now - difference.past(last, beforeLast);
  }

  /** Order 1 at the first step: exact for linear; then order 2: exact for quadratic change. */
  @Test
  void ordersOneAndTwo() {
    difference.begin(state(1));
    assertThat(difference.steps()).isEqualTo(1);
    assertThat(of(1 + 3 * STEP, 1, 77)).isCloseTo(3, within(1e-12));
    difference.begin(state(2));
    assertThat(difference.steps()).isEqualTo(2);
    // φ = 4 t² − t at t = 2
    double t = 2;
    double[] phi = new double[3];
    for (int k = 0; k < 3; k++) {
      double at = t - k * STEP;
      phi[k] = 4 * at * at - at;
    }
    assertThat(of(phi[0], phi[1], phi[2])).isCloseTo(8 * t - 1, within(1e-12));
    assertThat(difference.beforeLast.u[3]).isEqualTo(1);
    assertThat(difference.last.u[3]).isEqualTo(2);
  }

  @Test
  void surplusMovesBackWithEachStep() {
    difference.begin(state(1));
    difference.lastSurplus[5] = 0.3;
    difference.lastBoundarySurplus[2] = 0.4;
    difference.begin(state(2));
    assertThat(difference.beforeLastSurplus[5]).isEqualTo(0.3);
    assertThat(difference.beforeLastBoundarySurplus[2]).isEqualTo(0.4);
  }

  /** V now φ = V past on both sides of the equation. */
  @Test
  void addsToAnEquation() {
    difference.begin(state(1));
    difference.begin(state(2));
    double[] diagonal = {10, 20};
    double[] rhs = {1, 2};
    difference.addTo(
        new double[] {0.5, 2}, new double[] {3, 4}, new double[] {5, 6}, diagonal, rhs);
    assertThat(diagonal[0]).isCloseTo(10 + 0.5 * 1.5 / STEP, within(1e-12));
    assertThat(diagonal[1]).isCloseTo(20 + 2 * 1.5 / STEP, within(1e-12));
    assertThat(rhs[0]).isCloseTo(1 + 0.5 * (2 * 3 - 0.5 * 5) / STEP, within(1e-12));
    assertThat(rhs[1]).isCloseTo(2 + 2 * (2 * 4 - 0.5 * 6) / STEP, within(1e-12));
  }

  /** D / (1 + 1.5 D / (α Δt)). */
  @Test
  void faceCoefficient() {
    difference.begin(state(1));
    difference.begin(state(2));
    assertThat(difference.faceCoefficient(0.2, 0.8))
        .isCloseTo(0.2 / (1 + 1.5 * 0.2 / (0.8 * STEP)), within(1e-15));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesStepsThatAreNone(double step) {
    assertThatThrownBy(() -> new TimeDifference(mesh, step))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("a time step must be positive, got " + step + " s");
  }
}
