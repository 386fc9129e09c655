package hemline.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Properties of meshes of random sections; {@code -Dhemline.seed=} replays one seed. */
class MeshPropertyTest {
  private static final Set<Integer> ALL_SIDES =
      Set.of(Patch.LEFT, Patch.RIGHT, Patch.BOTTOM, Patch.TOP);

  static LongStream seeds() {
    Long one = Long.getLong("hemline.seed");
    return one != null
        ? LongStream.of(one)
        : LongStream.range(0, Long.getLong("hemline.seeds", 80));
  }

  private record Section(GridLines lines, List<Ring> solids) {
    static Section random(SplittableRandom random) {
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
      return new Section(lines, solids);
    }

    /** Moves some vertices onto grid lines, or all but onto them. */
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

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void areasAddUpAndCellsClose(long seed) {
    Section s = Section.random(new SplittableRandom(seed));
    MeshChecks.check(s.lines, s.solids, ALL_SIDES, "seed " + seed);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void solidsAcrossTheFlowLeaveNoSealedPocket(long seed) {
    Section s = Section.random(new SplittableRandom(seed));
    Set<Integer> sides = Set.of(Patch.LEFT, Patch.RIGHT);
    Mesh mesh = MeshChecks.check(s.lines, s.solids, sides, "seed " + seed);
    assertThat(MeshChecks.reachable(mesh, sides)).as("seed %d", seed).isEqualTo(mesh.cells);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void mirrorImageGivesTheMirrorMesh(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    GridLines lines = Shapes.irregular(random, -1, 1.7, 17, 0, 1.5, 13);
    List<Ring> solids = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      double x = -1 + 2.7 * random.nextDouble();
      solids.add(Shapes.star(random, x, 1.5 * random.nextDouble(), 0.5));
    }
    int nx = lines.nx();
    double[] back = new double[nx + 1];
    for (int i = 0; i <= nx; i++) {
      back[i] = -lines.x()[nx - i];
    }
    Mesh a = MeshBuilder.build(lines, solids, ALL_SIDES);
    Mesh b =
        MeshBuilder.build(
            new GridLines(back, lines.y()),
            solids.stream().map(Shapes::mirrored).toList(),
            ALL_SIDES);
    String what = "seed " + seed;
    assertThat(b.cells).as(what).isEqualTo(a.cells);
    assertThat(b.faces).as(what).isEqualTo(a.faces);
    for (int j = 0; j < lines.ny(); j++) {
      for (int i = 0; i < nx; i++) {
        int p = a.cellAt[j * nx + i];
        int q = b.cellAt[j * nx + nx - 1 - i];
        assertThat(q >= 0).as(what).isEqualTo(p >= 0);
        if (p >= 0) {
          assertThat(b.volume[q]).as(what).isCloseTo(a.volume[p], within(1e-13));
          assertThat(b.cx[q]).as(what).isCloseTo(-a.cx[p], within(1e-10));
          assertThat(b.cy[q]).as(what).isCloseTo(a.cy[p], within(1e-10));
        }
      }
    }
    double[] va = MeshChecks.openLengths(a, true);
    double[] vb = MeshChecks.openLengths(b, true);
    for (int j = 0; j < lines.ny(); j++) {
      for (int i = 0; i <= nx; i++) {
        assertThat(vb[j * (nx + 1) + nx - i])
            .as(what)
            .isCloseTo(va[j * (nx + 1) + i], within(1e-13));
      }
    }
    for (int k = 0; k < solids.size() + Patch.FIRST_SOLID; k++) {
      int mirrored = k <= Patch.RIGHT ? Patch.RIGHT - k : k;
      assertThat(MeshBuilderTest.wetted(b, mirrored))
          .as(what)
          .isCloseTo(MeshBuilderTest.wetted(a, k), within(1e-3));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void startVertexDoesNotMatter(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Section s = Section.random(random);
    if (MeshChecks.fluid(s.lines, s.solids, ALL_SIDES).isEmpty()) {
      return;
    }
    List<Ring> turned =
        s.solids.stream().map(r -> Shapes.rotated(r, random.nextInt(r.size()))).toList();
    Mesh a = MeshBuilder.build(s.lines, s.solids, ALL_SIDES);
    Mesh b = MeshBuilder.build(s.lines, turned, ALL_SIDES);
    String what = "seed " + seed;
    assertThat(b.cellAt).as(what).isEqualTo(a.cellAt);
    assertThat(b.gridFace).as(what).isEqualTo(a.gridFace);
    for (int c = 0; c < a.cells; c++) {
      assertThat(b.volume[c]).as(what).isCloseTo(a.volume[c], within(1e-14));
    }
    for (int f = 0; f < a.faces; f++) {
      assertThat(b.area[f]).as(what).isCloseTo(a.area[f], within(1e-14));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void openLengthsAreTheChordsOfTheFluid(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    GridLines lines = Shapes.irregular(random, -1, 2, 12, 0, 1.5, 9);
    List<Ring> solids = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      double x = -1 + 3 * random.nextDouble();
      solids.add(Shapes.star(random, x, 1.5 * random.nextDouble(), 0.5));
    }
    Geometry fluid = MeshChecks.fluid(lines, solids, ALL_SIDES);
    Mesh mesh = MeshBuilder.build(lines, solids, ALL_SIDES);
    double[] open = MeshChecks.openLengths(mesh, true);
    int nx = lines.nx();
    for (int j = 0; j < lines.ny(); j++) {
      for (int i = 1; i < nx; i++) {
        double x = lines.x()[i];
        double chord = chord(fluid, x, lines.y()[j], x, lines.y()[j + 1]);
        double got = open[j * (nx + 1) + i];
        boolean joined = joinedAcross(mesh, lines, fluid, i, j);
        double sliver = MeshBuilder.SLIVER * (lines.y()[j + 1] - lines.y()[j]);
        assertThat(got).as("seed %d at %d, %d", seed, i, j).isLessThan(chord + 1e-13);
        if (!joined && chord > sliver) {
          assertThat(got).as("seed %d at %d, %d", seed, i, j).isCloseTo(chord, within(1e-13));
        }
      }
    }
  }

  /** True when some parts left and right of a vertical grid edge are one cell, or may be. */
  private static boolean joinedAcross(Mesh mesh, GridLines lines, Geometry fluid, int i, int j) {
    int left = mesh.cellAt[j * lines.nx() + i - 1];
    int right = mesh.cellAt[j * lines.nx() + i];
    return left == right || !inOnePart(lines, fluid, i - 1, j) || !inOnePart(lines, fluid, i, j);
  }

  private static boolean inOnePart(GridLines lines, Geometry fluid, int i, int j) {
    Ring box = Shapes.box(lines.x()[i], lines.y()[j], lines.x()[i + 1], lines.y()[j + 1]);
    return MeshChecks.polygon(box).intersection(fluid).getNumGeometries() <= 1;
  }

  private static double chord(Geometry fluid, double x0, double y0, double x1, double y1) {
    return new GeometryFactory()
        .createLineString(new Coordinate[] {new Coordinate(x0, y0), new Coordinate(x1, y1)})
        .intersection(fluid)
        .getLength();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void allButCoincidentEdgesStillClose(long seed) {
    // vertices on a coarse lattice or off it by 1e-12 to 1e-6 of the domain, edges may cross
    SplittableRandom random = new SplittableRandom(seed);
    for (int round = 0; round < 10; round++) {
      int nx = 2 + random.nextInt(8);
      int ny = 2 + random.nextInt(8);
      GridLines lines = Shapes.uniform(0, nx, nx, 0, ny, ny);
      double off = Math.pow(10, -6 - 6 * random.nextDouble()) * Math.max(nx, ny);
      List<Ring> solids = new ArrayList<>();
      int count = 1 + random.nextInt(4);
      for (int k = 0; k < count; k++) {
        double x = nx * random.nextDouble();
        double y = ny * random.nextDouble();
        solids.add(
            onLattice(Shapes.star(random, x, y, 0.5 + 2 * random.nextDouble()), off, random));
      }
      if (MeshChecks.fluid(lines, solids, ALL_SIDES).getArea() > 0.01) {
        Mesh mesh = MeshBuilder.build(lines, solids, ALL_SIDES);
        MeshChecks.closed(mesh, "seed " + seed);
        MeshChecks.ordered(mesh, "seed " + seed);
        assertThat(mesh.volume).as("seed %d", seed).doesNotContain(0);
      }
    }
  }

  private static Ring onLattice(Ring ring, double off, SplittableRandom random) {
    double[] x = ring.x().clone();
    double[] y = ring.y().clone();
    for (int k = 0; k < x.length; k++) {
      if (random.nextInt(4) > 0) {
        x[k] = Math.rint(2 * x[k]) / 2 + (random.nextBoolean() ? 0 : off * random.nextDouble());
      }
      if (random.nextInt(4) > 0) {
        y[k] = Math.rint(2 * y[k]) / 2 - (random.nextBoolean() ? 0 : off * random.nextDouble());
      }
    }
    return new Ring(x, y);
  }
}
