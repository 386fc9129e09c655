package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Viscosity between a wall cell and its neighbour, with layers written down. */
class LayerFacesTest {
  private static final double NU = 1e-5;

  /** Three cells over a wall, with centres at 1, 3 and 5 of a height. */
  private static ClosureMeshes column(double first) {
    double h = 2 * first;
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 1}, new double[] {0, h, 2 * h, 3 * h}, Boundary.SLIP);
    m.boundary.kind[m.face(0, Patch.BOTTOM)] = Boundary.WALL;
    return m;
  }

  /**
   * In a layer of constant stress, ν̃ = κ u_τ y, the velocity between the first two cells changes
   * as the law says, wherever they lie; the mean of their viscosities misses it by up to a third.
   */
  @ParameterizedTest
  @CsvSource({"2", "6", "10", "20", "50", "300"})
  void followsTheLaw(double yPlus) {
    double friction = 0.7;
    ClosureMeshes m = column(yPlus * NU / friction);
    for (int c = 0; c < 3; c++) {
      m.state.nuTilde[c] = 0.41 * friction * m.mesh.cy[c];
    }
    double[] ratio = new double[m.mesh.faces];
    Arrays.fill(ratio, 1);
    new LayerFaces(m.geometry, m.boundary.walls(), NU, LayerFacesTest::eddy)
        .update(m.state.nuTilde, ratio);
    double mean = NU + 0.5 * (eddy(m.state.nuTilde[0]) + eddy(m.state.nuTilde[1]));
    double slope = friction * friction / (ratio[0] * mean);
    double change = slope * (m.mesh.cy[1] - m.mesh.cy[0]) / friction;
    double law = SpalartAllmaras.LAW.velocity(3 * yPlus) - SpalartAllmaras.LAW.velocity(yPlus);
    assertThat(change).isCloseTo(law, within(5e-3 * law));
    assertThat(ratio[0]).isLessThan(1);
    // away from the wall the mean stands
    assertThat(ratio[1]).isEqualTo(1);
  }

  /** Even viscosity, and a wall with no cells beyond it: nothing to correct. */
  @Test
  void evenViscosityStands() {
    ClosureMeshes m = column(1e-3);
    Arrays.fill(m.state.nuTilde, 30 * NU);
    double[] ratio = {0.5, 0.5};
    new LayerFaces(m.geometry, m.boundary.walls(), NU, LayerFacesTest::eddy)
        .update(m.state.nuTilde, ratio);
    assertThat(ratio[0]).isCloseTo(1, within(1e-12));
    assertThat(ratio[1]).isEqualTo(0.5);
    double[] kept = {0.5, 0.5};
    new LayerFaces(m.geometry, new boolean[m.mesh.boundaryFaces], NU, LayerFacesTest::eddy)
        .update(m.state.nuTilde, kept);
    assertThat(kept).containsExactly(0.5, 0.5);
  }

  /** ν̃ χ³ / (χ³ + 7.1³). */
  private static double eddy(double nuTilde) {
    double cube = Math.pow(nuTilde / NU, 3);
    return nuTilde * cube / (cube + 357.911);
  }
}
