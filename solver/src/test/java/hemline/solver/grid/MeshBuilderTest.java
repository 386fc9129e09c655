package hemline.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MeshBuilderTest {
  private static final Set<Integer> SIDES = Set.of(Patch.LEFT, Patch.RIGHT);

  @Test
  void plainRectangle() {
    GridLines lines = Shapes.uniform(0, 3, 3, 0, 2, 2);
    Mesh mesh = MeshChecks.check(lines, List.of(), SIDES, "plain");
    assertThat(mesh.cells).isEqualTo(6);
    assertThat(mesh.faces).isEqualTo(7);
    assertThat(mesh.boundaryFaces).isEqualTo(10);
    assertThat(mesh.cellAt).containsExactly(0, 1, 2, 3, 4, 5);
    // each face stands where its number says
    for (int f = 0; f < mesh.faces; f++) {
      int perRow = mesh.vertical[f] ? 4 : 3;
      int i = mesh.gridFace[f] % perRow;
      int j = mesh.gridFace[f] / perRow;
      assertThat(mesh.fx[f]).isEqualTo(mesh.vertical[f] ? i : i + 0.5);
      assertThat(mesh.fy[f]).isEqualTo(mesh.vertical[f] ? j + 0.5 : j);
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boolean vertical = mesh.bPatch[b] <= Patch.RIGHT;
      int perRow = vertical ? 4 : 3;
      assertThat(mesh.bx[b]).isEqualTo(mesh.bGridFace[b] % perRow + (vertical ? 0 : 0.5));
      assertThat(mesh.by[b]).isEqualTo(mesh.bGridFace[b] / perRow + (vertical ? 0.5 : 0));
    }
  }

  @Test
  void lipOnGridLinesLeavesWholeCells() {
    GridLines lines = Shapes.uniform(-4, 6, 20, 0, 5, 10);
    Mesh mesh = MeshChecks.check(lines, List.of(Shapes.box(0, 1, 2, 7)), SIDES, "lip");
    assertThat(mesh.cells).isEqualTo(20 * 10 - 4 * 8);
    for (int f = 0; f < mesh.faces; f++) {
      assertThat(mesh.area[f]).isEqualTo(0.5);
    }
    assertThat(wetted(mesh, Patch.FIRST_SOLID)).isCloseTo(2 + 4 + 4, within(1e-14));
    assertThat(wetted(mesh, Patch.TOP)).isCloseTo(8, within(1e-14));
    assertThat(wetted(mesh, Patch.BOTTOM)).isCloseTo(10, within(1e-14));
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      assertThat(mesh.bGridFace[b] >= 0).isEqualTo(mesh.bPatch[b] < Patch.FIRST_SOLID);
    }
  }

  @Test
  void lipAllButOnGridLinesLeavesNoSlivers() {
    GridLines lines = Shapes.uniform(-4, 6, 20, 0, 5, 10);
    double e = 1e-10;
    Ring lip = Shapes.box(e, 1 - e, 2 - e, 5 + e);
    Mesh exact = MeshBuilder.build(lines, List.of(Shapes.box(0, 1, 2, 5)));
    Mesh mesh = MeshBuilder.build(lines, List.of(lip));
    assertThat(mesh.volume).isEqualTo(exact.volume);
    assertThat(mesh.bnx).isEqualTo(exact.bnx);
    assertThat(mesh.area).isEqualTo(exact.area);
  }

  @Test
  void slantedEdgeCutsExactly() {
    // the edge from (0, 0) to (4, 2): under it is solid
    GridLines lines = Shapes.uniform(0, 4, 4, 0, 2, 2);
    Mesh mesh = MeshChecks.check(lines, List.of(Shapes.ring(0, 0, 4, 0, 4, 2)), SIDES, "ramp");
    int corner = mesh.cellAt[0];
    assertThat(mesh.volume[corner]).isCloseTo(0.75, within(1e-15));
    assertThat(mesh.cx[corner]).isCloseTo((0.5 - 0.25 * 2 / 3) / 0.75, within(1e-15));
    assertThat(wetted(mesh, Patch.FIRST_SOLID)).isCloseTo(Math.sqrt(20), within(1e-14));
    // the fluid of rectangle (1, 0) is a quarter; of (3, 1) a quarter too
    assertThat(mesh.volume[mesh.cellAt[1]]).isCloseTo(0.25, within(1e-15));
    assertThat(mesh.volume[mesh.cellAt[7]]).isCloseTo(0.25, within(1e-15));
    assertThat(mesh.cellAt[2]).isEqualTo(-1);
  }

  @Test
  void littleFluidJoinsAcrossTheLongestOpening() {
    // a box leaves 5 % of rectangle (1, 0) beside its neighbour (0, 0)
    GridLines lines = Shapes.uniform(0, 3, 3, 0, 1, 1);
    Mesh mesh = MeshChecks.check(lines, List.of(Shapes.box(1.05, -1, 2, 2)), SIDES, "join");
    assertThat(mesh.cells).isEqualTo(2);
    assertThat(mesh.cellAt).containsExactly(0, 0, 1);
    assertThat(mesh.volume[0]).isCloseTo(1.05, within(1e-15));
    assertThat(mesh.cx[0]).isCloseTo(0.525, within(1e-15));
  }

  @Test
  void thinFinSplitsRectanglesWithoutALeak() {
    GridLines lines = Shapes.uniform(-2, 2, 5, 0, 3, 3);
    Ring fin = Shapes.box(-0.01, 0.5, 0.01, 4);
    Mesh mesh = MeshChecks.check(lines, List.of(fin), SIDES, "fin");
    // rectangles (2, 1) and (2, 2) are two cells each
    assertThat(mesh.cells).isEqualTo(15 + 2);
    for (int f = 0; f < mesh.faces; f++) {
      int a = mesh.owner[f];
      int b = mesh.neighbour[f];
      boolean across = mesh.cx[a] < -0.05 && mesh.cx[b] > 0.05;
      assertThat(across && mesh.fy[f] > 1).isFalse();
    }
  }

  @Test
  void wallToTheGroundSeparatesTheSides() {
    GridLines lines = Shapes.uniform(-2, 2, 7, 0, 3, 5);
    Ring wall = Shapes.box(-0.01, -1, 0.01, 4);
    Mesh both = MeshChecks.check(lines, List.of(wall), SIDES, "both");
    Mesh left = MeshChecks.check(lines, List.of(wall), Set.of(Patch.LEFT), "left");
    assertThat(both.cells).isEqualTo(2 * left.cells);
    assertThat(Arrays.stream(left.bPatch)).doesNotContain(Patch.RIGHT);
    assertThat(Arrays.stream(left.cx).max().orElseThrow()).isNegative();
  }

  @Test
  void sealedPocketIsLeftOut() {
    GridLines lines = Shapes.uniform(0, 10, 20, 0, 10, 20);
    List<Ring> walls =
        List.of(
            Shapes.box(3, 3, 7, 4),
            Shapes.box(3, 6, 7, 7),
            Shapes.box(3, 3.5, 4, 6.5),
            Shapes.box(6, 3.5, 7, 6.5));
    Mesh mesh = MeshChecks.check(lines, walls, SIDES, "pocket");
    assertThat(mesh.cellAt[10 * 20 + 10]).isEqualTo(-1);
    assertThat(Arrays.stream(mesh.volume).sum()).isCloseTo(100 - 16, within(1e-11));
    // surface inside the walls is gone too
    assertThat(wetted(mesh, -1)).isCloseTo(40 + 16, within(1e-12));
  }

  @Test
  void closedCavityKeepsTheLargestFluid() {
    GridLines lines = Shapes.uniform(0, 4, 8, 0, 1, 3);
    Mesh mesh = MeshBuilder.build(lines, List.of(Shapes.box(1, -1, 1.5, 2)), Set.of());
    assertThat(Arrays.stream(mesh.volume).sum()).isCloseTo(2.5, within(1e-13));
    assertThat(Arrays.stream(mesh.bPatch)).doesNotContain(Patch.LEFT).contains(Patch.RIGHT);
  }

  @Test
  void crackShorterThanASliverIsWall() {
    GridLines lines = Shapes.uniform(0, 4, 4, 0, 1, 1);
    double crack = 5e-5;
    Ring below = Shapes.box(1.7, -1, 2.3, 0.5 - crack / 2);
    Ring above = Shapes.box(1.7, 0.5 + crack / 2, 2.3, 2);
    Mesh mesh = MeshBuilder.build(lines, List.of(below, above));
    MeshChecks.closed(mesh, "crack");
    for (int f = 0; f < mesh.faces; f++) {
      assertThat(mesh.area[f]).isGreaterThan(crack);
    }
    Mesh open =
        MeshBuilder.build(
            Shapes.uniform(0, 4, 4, 0, 1, 1),
            List.of(Shapes.box(1.7, -1, 2.3, 0.4), Shapes.box(1.7, 0.6, 2.3, 2)));
    assertThat(open.faces).isGreaterThan(mesh.faces);
  }

  @Test
  void overlappingSolidsLoseTheirBuriedSurface() {
    GridLines lines = Shapes.uniform(0, 10, 10, 0, 5, 5);
    // a skirt with a lip let into it, and a bump half in the ground
    List<Ring> solids =
        List.of(Shapes.box(4, 2, 6, 9), Shapes.box(4.5, 1, 5.5, 3), Shapes.box(4, -1, 5, 0.5));
    Mesh mesh = MeshChecks.check(lines, solids, SIDES, "parts");
    assertThat(wetted(mesh, Patch.FIRST_SOLID)).isCloseTo(3 + 3 + 1, within(1e-13));
    assertThat(wetted(mesh, Patch.FIRST_SOLID + 1)).isCloseTo(1 + 1 + 1, within(1e-13));
    assertThat(wetted(mesh, Patch.FIRST_SOLID + 2)).isCloseTo(0.5 + 0.5 + 1, within(1e-13));
    assertThat(wetted(mesh, Patch.BOTTOM)).isCloseTo(9, within(1e-13));
  }

  @Test
  void solidsThatMeetAtAnEdgeOrACornerSeal() {
    GridLines lines = Shapes.uniform(0, 4, 8, 0, 4, 8);
    List<Ring> edge = List.of(Shapes.box(1, 0, 2, 2.3), Shapes.box(1.2, 2.3, 2.2, 4));
    assertThat(sealed(lines, edge)).isTrue();
    List<Ring> corner = List.of(Shapes.box(1, 0, 2.1, 2.3), Shapes.box(2.1, 2.3, 3, 4));
    assertThat(sealed(lines, corner)).isTrue();
    List<Ring> cornerOnLines = List.of(Shapes.box(1, 0, 2, 2), Shapes.box(2, 2, 3, 4));
    assertThat(sealed(lines, cornerOnLines)).isTrue();
    List<Ring> apart = List.of(Shapes.box(1, 0, 2, 2), Shapes.box(2.1, 2, 3, 4));
    assertThat(sealed(lines, apart)).isFalse();
  }

  private static boolean sealed(GridLines lines, List<Ring> solids) {
    MeshChecks.check(lines, solids, SIDES, "two solids");
    Mesh left = MeshBuilder.build(lines, solids, Set.of(Patch.LEFT));
    return Arrays.stream(left.bPatch).noneMatch(p -> p == Patch.RIGHT);
  }

  @Test
  void islandWithinOneRectangle() {
    GridLines lines = Shapes.uniform(0, 3, 3, 0, 3, 3);
    Ring disc = Shapes.disc(1.5, 1.5, 0.3);
    Mesh mesh = MeshChecks.check(lines, List.of(disc), SIDES, "disc");
    assertThat(mesh.cells).isEqualTo(9);
    int around = mesh.cellAt[4];
    assertThat(mesh.volume[around]).isCloseTo(1 - Shapes.area(disc), within(1e-14));
    assertThat(mesh.cx[around]).isCloseTo(1.5, within(1e-14));
    // chords of the circle are gathered into few surfaces that still go all the way round
    long surfaces = Arrays.stream(mesh.bPatch).filter(p -> p == Patch.FIRST_SOLID).count();
    assertThat(surfaces).isBetween(12L, 24L);
  }

  @Test
  void noFluidIsRefused() {
    GridLines lines = Shapes.uniform(0, 1, 2, 0, 1, 2);
    assertThatThrownBy(() -> MeshBuilder.build(lines, List.of(Shapes.box(-1, -1, 2, 2))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no fluid");
    assertThatThrownBy(
            () -> MeshBuilder.build(lines, List.of(Shapes.ring(0, 0, Double.NaN, 0, 1, 1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("not finite");
  }

  @Test
  void largeGridNearASmoothNose() {
    Ring nose = Shapes.roundNose(8, 2, 40);
    GridLines lines = Shapes.irregular(new SplittableRandom(5), -30, 60, 500, 0, 30, 300);
    Mesh mesh = MeshChecks.check(lines, List.of(nose), SIDES, "nose");
    assertThat(mesh.cells).isGreaterThan(130_000);
    double expected = 2 * (30 - 6) + 4 * Math.PI;
    assertThat(wetted(mesh, Patch.FIRST_SOLID)).isCloseTo(expected, within(1e-3));
  }

  /** Length of surface of a patch; of all patches for -1. */
  static double wetted(Mesh mesh, int patch) {
    double sum = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (patch < 0 || mesh.bPatch[b] == patch) {
        sum += Math.hypot(mesh.bnx[b], mesh.bny[b]);
      }
    }
    return sum;
  }

  @Test
  void solidsMayRunThroughEachOther() {
    SplittableRandom random = new SplittableRandom(11);
    GridLines lines = Shapes.irregular(random, 0, 10, 40, 0, 10, 40);
    List<Ring> solids = new ArrayList<>();
    for (int k = 0; k < 12; k++) {
      solids.add(Shapes.star(random, 1 + 8 * random.nextDouble(), 8 * random.nextDouble(), 2));
    }
    Mesh mesh = MeshChecks.check(lines, solids, SIDES, "heap");
    int surfaces = 0;
    int off = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] >= Patch.FIRST_SOLID) {
        Ring own = solids.get(mesh.bPatch[b] - Patch.FIRST_SOLID);
        double distance = MeshChecks.distance(own, mesh.bx[b], mesh.by[b]);
        // a surface that gathers a slight bend has its centroid beside the outline
        assertThat(distance).isLessThan(0.05 * Math.hypot(mesh.bnx[b], mesh.bny[b]) + 1e-9);
        surfaces++;
        off += distance > 1e-9 ? 1 : 0;
      }
    }
    assertThat(surfaces).isGreaterThan(100);
    assertThat(off).isLessThan(surfaces / 20);
  }
}
