package hemline.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WallDistanceTest {

  private static boolean[] walls(Mesh mesh, int... patches) {
    boolean[] walls = new boolean[mesh.boundaryFaces];
    for (int b = 0; b < walls.length; b++) {
      for (int p : patches) {
        walls[b] |= mesh.bPatch[b] == p;
      }
    }
    return walls;
  }

  @Test
  void betweenPlates() {
    Mesh mesh = MeshBuilder.build(Shapes.uniform(0, 5, 31, 0, 1, 17), List.of());
    double[] both = WallDistance.of(mesh, walls(mesh, Patch.BOTTOM, Patch.TOP));
    double[] floor = WallDistance.of(mesh, walls(mesh, Patch.BOTTOM));
    for (int c = 0; c < mesh.cells; c++) {
      double y = mesh.cy[c];
      assertThat(both[c]).isCloseTo(Math.min(y, 1 - y), within(1e-15));
      assertThat(floor[c]).isCloseTo(y, within(1e-15));
    }
  }

  @Test
  void noWallIsInfinitelyFar() {
    Mesh mesh = MeshBuilder.build(Shapes.uniform(0, 1, 3, 0, 1, 3), List.of());
    assertThat(WallDistance.of(mesh, walls(mesh))).containsOnly(Double.POSITIVE_INFINITY);
  }

  @Test
  void aroundADiscWithinTheChordsOfACell() {
    double r = 0.4;
    Ring disc = Shapes.disc(0.03, 0.02, r);
    Mesh mesh = MeshBuilder.build(Shapes.uniform(-2, 2, 80, -1.5, 1.5, 60), List.of(disc));
    double[] distance = WallDistance.of(mesh, walls(mesh, Patch.FIRST_SOLID));
    for (int c = 0; c < mesh.cells; c++) {
      double exact = Math.hypot(mesh.cx[c] - 0.03, mesh.cy[c] - 0.02) - r;
      // sagitta of a chord as long as a cell's diagonal: 0.07² / (8 r)
      assertThat(distance[c]).isCloseTo(exact, within(0.0016));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void nearestOfAllEdgesOfRandomSolids(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    GridLines lines = Shapes.irregular(random, 0, 6, 50, 0, 4, 40);
    // turns of a triangle are sharp, so that each surface is a piece of an edge
    List<Ring> solids =
        List.of(triangle(random, 1, 2), triangle(random, 3, 2), triangle(random, 5, 2));
    Mesh mesh = MeshBuilder.build(lines, solids);
    double[] distance =
        WallDistance.of(mesh, walls(mesh, Patch.FIRST_SOLID, Patch.FIRST_SOLID + 1, 6));
    for (int c = 0; c < mesh.cells; c++) {
      double exact = Double.POSITIVE_INFINITY;
      for (Ring solid : solids) {
        exact = Math.min(exact, MeshChecks.distance(solid, mesh.cx[c], mesh.cy[c]));
      }
      assertThat(distance[c]).as("seed %d cell %d", seed, c).isCloseTo(exact, within(1e-13));
    }
  }

  private static Ring triangle(SplittableRandom random, double x, double y) {
    double turn = random.nextDouble();
    double[] px = new double[3];
    double[] py = new double[3];
    for (int k = 0; k < 3; k++) {
      double angle = turn + 2 * Math.PI * k / 3;
      double r = 0.4 + 0.3 * random.nextDouble();
      px[k] = x + r * Math.cos(angle);
      py[k] = y + r * Math.sin(angle);
    }
    return new Ring(px, py);
  }
}
