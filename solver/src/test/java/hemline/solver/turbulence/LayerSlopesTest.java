package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A wall at 45° through the corners of unit squares, along which the law's own profile flows: wall
 * cells are triangles with their centroids √2 / 6 from the wall, those of the next row lie √2 / 2
 * from it.
 */
class LayerSlopesTest {
  private static final int N = 8;
  private static final double INNER = Math.sqrt(2) / 6;
  private static final double OUTER = Math.sqrt(2) / 2;
  private static final VelocityLaw LAW = SpalartAllmaras.LAW;
  private ClosureMeshes m;

  @BeforeEach
  void mesh() {
    double[] lines = IntStream.rangeClosed(0, N).asDoubleStream().toArray();
    Ring below = new Ring(new double[] {-1, N + 1, N + 1}, new double[] {-1, -1, N + 1});
    m = ClosureMeshes.of(lines, lines, Boundary.SLIP, below);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (m.geometry.buy[b] < -0.5 && m.geometry.bux[b] > 0.5) {
        m.boundary.kind[b] = Boundary.WALL;
      }
    }
  }

  private double distance(int c) {
    return (m.mesh.cy[c] - m.mesh.cx[c]) / Math.sqrt(2);
  }

  /** Speed along the wall in a cell. */
  private void along(int c, double speed) {
    m.state.u[c] = speed / Math.sqrt(2);
    m.state.v[c] = speed / Math.sqrt(2);
    m.state.w[c] = 0.5 * speed;
  }

  /** The law's profile for a friction velocity of 1. */
  private void profile(double nu) {
    for (int c = 0; c < m.mesh.cells; c++) {
      along(c, LAW.velocity(distance(c) / nu));
    }
  }

  private VelocityGradients seen(double nu) {
    SlantedWalls walls = new SlantedWalls(m.geometry, m.boundary);
    VelocityGradients g = new VelocityGradients(m.geometry, m.boundary, true);
    double[] yPlus = Arrays.stream(walls.distance).map(d -> d / nu).toArray();
    new LayerSlopes(m.geometry, walls, LAW).update(yPlus, g);
    g.update(m.state);
    return g;
  }

  private VelocityGradients plain() {
    VelocityGradients g = new VelocityGradients(m.geometry, m.boundary, true);
    g.update(m.state);
    return g;
  }

  private void assertSame(VelocityGradients a, VelocityGradients b, IntPredicate cells) {
    int looked = 0;
    for (int c = 0; c < m.mesh.cells; c++) {
      if (cells.test(c)) {
        assertThat(a.ux[c]).isCloseTo(b.ux[c], within(1e-9));
        assertThat(a.uy[c]).isCloseTo(b.uy[c], within(1e-9));
        assertThat(a.vx[c]).isCloseTo(b.vx[c], within(1e-9));
        assertThat(a.vy[c]).isCloseTo(b.vy[c], within(1e-9));
        assertThat(a.wx[c]).isCloseTo(b.wx[c], within(1e-9));
        assertThat(a.wy[c]).isCloseTo(b.wy[c], within(1e-9));
        looked++;
      }
    }
    assertThat(looked).isGreaterThan(4);
  }

  private boolean isNextRow(int c) {
    return Math.abs(distance(c) - OUTER) < 1e-9 && m.mesh.cx[c] > 1 && m.mesh.cy[c] < N - 1;
  }

  /**
   * As if the wall cells lay on a straight line through the next row whose slope is the mean of the
   * profile over the extent of a square, which is 1.
   */
  @Test
  void theWallCellCountsWithTheMeanSlopeOverTheCell() {
    double nu = 0.02;
    profile(nu);
    VelocityGradients seen = seen(nu);
    double steep = slope(plain());
    double mean = LAW.velocity((OUTER + 0.5) / nu) - LAW.velocity((OUTER - 0.5) / nu);
    for (int c = 0; c < m.mesh.cells; c++) {
      if (distance(c) < OUTER - 1e-9) {
        along(c, LAW.velocity(OUTER / nu) - mean * (OUTER - INNER));
      }
    }
    assertSame(seen, plain(), this::isNextRow);
    assertThat(slope(seen)).isLessThan(0.85 * steep);
  }

  /** Slope of the speed along the wall in a cell of the next row. */
  private double slope(VelocityGradients g) {
    int c = IntStream.range(0, m.mesh.cells).filter(this::isNextRow).findFirst().orElseThrow();
    return 0.5 * (g.uy[c] + g.vy[c] - g.ux[c] - g.vx[c]);
  }

  /** In the sublayer the profile is straight, and elsewhere nothing changes. */
  @Test
  void straightProfilesAndOtherCellsStay() {
    profile(20);
    assertSame(seen(20), plain(), c -> true);
    profile(0.02);
    assertSame(seen(0.02), plain(), c -> Math.abs(distance(c) - OUTER) > 1e-9);
  }

  /** A wall without friction has no law. */
  @Test
  void nothingIsHiddenWithoutFriction() {
    profile(0.02);
    assertSame(seen(Double.POSITIVE_INFINITY), plain(), c -> true);
  }
}
