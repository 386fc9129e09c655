package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.GeometryFactory;

class MeshBuilderTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Set<Integer> ALL_SIDES = Set.of(0, 1, 2, 3);

  static LongStream seeds() {
    return LongStream.range(0, Long.getLong("hemline.seeds", 300));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomSolidsLeaveAValidMesh(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int nx = 1 + random.nextInt(25);
    int ny = 1 + random.nextInt(25);
    GridLines lines = Shapes.irregular(random, -1, 2, nx, 0, 1.5, ny);
    List<Ring> solids = new ArrayList<>();
    int count = random.nextInt(5);
    for (int k = 0; k < count; k++) {
      double x = -1 + 3 * random.nextDouble();
      double y = 1.5 * random.nextDouble();
      Ring ring = Shapes.star(random, x, y, 0.05 + 0.6 * random.nextDouble());
      solids.add(random.nextInt(3) == 0 ? snapped(ring, lines, random) : ring);
    }
    MeshChecks.check(lines, solids, ALL_SIDES, "seed " + seed);
  }

  /** Moves some vertices onto grid lines. */
  private static Ring snapped(Ring ring, GridLines lines, SplittableRandom random) {
    double[] x = ring.x().clone();
    double[] y = ring.y().clone();
    for (int k = 0; k < x.length; k++) {
      double near = random.nextInt(2) == 0 ? 0 : 1e-11 * random.nextDouble();
      if (random.nextInt(2) == 0) {
        x[k] = lines.x()[random.nextInt(lines.nx() + 1)] + near;
      }
      if (random.nextInt(2) == 0) {
        y[k] = lines.y()[random.nextInt(lines.ny() + 1)] - near;
      }
    }
    return new Ring(x, y);
  }
}
