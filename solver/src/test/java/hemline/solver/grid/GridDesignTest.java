package hemline.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoublePredicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class GridDesignTest {
  private static final double MM = 1e-3;
  private static final double SKY = 1;
  private static final Set<Integer> SIDES = Set.of(Patch.LEFT, Patch.RIGHT);

  /** An open section of the usual lengths around a lip of some width, all in m. */
  private static GridDesign.Domain open(double gap, double width, double height, Ring... solids) {
    double top = Math.max(15 * gap, height + 5 * gap);
    return new GridDesign.Domain(-15 * gap, width + 25 * gap, 0, top, List.of(solids));
  }

  static Stream<Arguments> lips() {
    double h = 2 * MM;
    return Stream.of(
        Arguments.of("flat", 8, 8000, 10000, Shapes.flatLip(8 * MM, h, SKY)),
        Arguments.of("knife", 0.5, 6500, 9000, Shapes.flatLip(0.5 * MM, h, SKY)),
        Arguments.of(
            "three teeth",
            8,
            9000,
            14000,
            Shapes.labyrinth(3, 3.75 * MM, 0.5 * MM, 5 * MM, h, SKY)),
        Arguments.of(
            "teeth 1 mm apart", 6, 9000, 14000, Shapes.labyrinth(3, MM, 0.5 * MM, 5 * MM, h, SKY)),
        Arguments.of("pocket", 8, 9000, 14000, Shapes.pocket(8 * MM, h, SKY)),
        Arguments.of(
            "inclined teeth", 8, 9000, 15000, Shapes.inclinedTeeth(3, 3 * MM, 1.5 * MM, h, SKY)),
        Arguments.of(
            "teeth inclined back",
            8,
            9000,
            15000,
            Shapes.inclinedTeeth(3, 3 * MM, -1.5 * MM, h, SKY)),
        Arguments.of("hook", 8, 8000, 14000, Shapes.hook(5 * MM, h, SKY)),
        Arguments.of("round nose", 8, 6000, 10000, Shapes.roundNose(8 * MM, h, SKY)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("lips")
  void lipGetsAFineGapAndAModestCount(String name, double width, int least, int most, Ring lip) {
    double h = 2 * MM;
    GridDesign.Domain domain = open(h, width * MM, 12 * MM, lip);
    GridDesign design = GridDesign.of(domain, h, MeshLevel.MEDIUM);
    GridLines lines = design.lines(GridDesign.FINEST);
    Mesh mesh = MeshChecks.check(lines, domain.solids(), SIDES, name);
    assertThat(mesh.cells).isBetween(least, most);
    boolean round = name.equals("round nose");
    assertThat(between(lines.y(), 0, h)).isBetween(16, round ? 28 : 20);
    // finer at both walls of the gap than in its middle, and even elsewhere
    int gapCells = between(lines.y(), 0, h);
    double first = lines.y()[1] - lines.y()[0];
    double last = lines.y()[gapCells] - lines.y()[gapCells - 1];
    double middle = lines.y()[gapCells / 2] - lines.y()[gapCells / 2 - 1];
    assertThat(first).isBetween(h / 40, h / 25);
    // a round wall, from which the flow separates where its boundary layer says, gets finer cells
    assertThat(last).isCloseTo(round ? h / 160 : first, within(0.2 * last));
    assertThat(middle).isBetween(1.5 * first, 3 * first);
    assertThat(steepest(lines.x())).isLessThan(1.5);
    assertThat(steepest(lines.y())).isLessThan(round ? 1.45 : 1.3);
    // the other levels
    int coarse = MeshBuilder.build(level(domain, h, MeshLevel.COARSE), domain.solids()).cells;
    int fine = MeshBuilder.build(level(domain, h, MeshLevel.FINE), domain.solids()).cells;
    assertThat((double) coarse / mesh.cells).isBetween(0.33, 0.5);
    assertThat((double) fine / mesh.cells).isBetween(2.6, 3.5);
  }

  private static GridLines level(GridDesign.Domain domain, double gap, MeshLevel level) {
    return GridDesign.of(domain, gap, level).lines(GridDesign.FINEST);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("lips")
  void cornersAndWallsLieOnLinesOfEveryGrid(
      String name, double width, int least, int most, Ring lip) {
    double h = 2 * MM;
    GridDesign design = GridDesign.of(open(h, width * MM, 12 * MM, lip), h, MeshLevel.COARSE);
    for (int multiplier : new int[] {1, 2, 3, 4}) {
      GridLines lines = design.lines(multiplier);
      if (name.equals("round nose")) {
        assertThat(lines.x()).contains(0, 4 * MM, 8 * MM);
        assertThat(lines.y()).contains(h);
        continue;
      }
      for (int k = 0; k < lip.size(); k++) {
        assertThat(lines.x()).contains(lip.x()[k]);
        if (lip.y()[k] < SKY) {
          assertThat(lines.y()).contains(lip.y()[k]);
        }
      }
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("lips")
  void gridsOfAFamilyAreSimilar(String name, double width, int least, int most, Ring lip) {
    double h = 2 * MM;
    GridDesign design = GridDesign.of(open(h, width * MM, 12 * MM, lip), h, MeshLevel.MEDIUM);
    GridLines base = design.lines(1);
    GridLines two = design.lines(2);
    GridLines three = design.lines(3);
    GridLines four = design.lines(4);
    assertThat(four.nx()).isEqualTo(4 * base.nx()).isEqualTo(2 * two.nx());
    assertThat(three.ny()).isEqualTo(3 * base.ny());
    for (int i = 0; i <= base.nx(); i++) {
      assertThat(two.x()[2 * i]).isEqualTo(base.x()[i]);
      assertThat(three.x()[3 * i]).isEqualTo(base.x()[i]);
      assertThat(four.x()[4 * i]).isEqualTo(base.x()[i]);
    }
    for (int j = 0; j <= two.ny(); j++) {
      assertThat(four.y()[2 * j]).isEqualTo(two.y()[j]);
    }
    assertThat(design.rectangles(3)).isEqualTo(three.nx() * three.ny());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("lips")
  void mirrorImageGivesTheMirrorLines(String name, double width, int least, int most, Ring lip) {
    double h = 2 * MM;
    GridDesign.Domain domain = open(h, width * MM, 12 * MM, lip);
    GridDesign.Domain mirror =
        new GridDesign.Domain(
            -domain.xMax(), -domain.xMin(), 0, domain.yMax(), List.of(Shapes.mirrored(lip)));
    GridLines a = level(domain, h, MeshLevel.MEDIUM);
    GridLines b = level(mirror, h, MeshLevel.MEDIUM);
    assertThat(b.y()).containsExactly(a.y(), within(1e-12));
    assertThat(b.nx()).isEqualTo(a.nx());
    for (int i = 0; i <= a.nx(); i++) {
      assertThat(b.x()[a.nx() - i]).isCloseTo(-a.x()[i], within(1e-12));
    }
  }

  @Test
  void shearLayerBehindTheLipHasCompactCells() {
    double h = 2 * MM;
    GridLines lines =
        level(open(h, 8 * MM, 12 * MM, Shapes.flatLip(8 * MM, h, SKY)), h, MeshLevel.MEDIUM);
    assertThat(worstAspect(lines, x -> x >= 8 * MM && x < 8 * MM + 3 * h, y -> y < 2 * h))
        .isLessThan(5.5);
    assertThat(worstAspect(lines, x -> x >= 8 * MM && x < 8 * MM + 6 * h, y -> y < 2 * h))
        .isLessThan(8);
  }

  @Test
  void cellsOfDuctsShrinkTowardsSharpEdgesOverTheGap() {
    double h = 2 * MM;
    double land = 0.25 * h;
    GridLines lines =
        GridDesign.ofDuct(open(h, land, 12 * MM, Shapes.flatLip(land, h, SKY)), h, MeshLevel.MEDIUM)
            .lines(GridDesign.FINEST);
    assertThat(between(lines.x(), 0, land)).isGreaterThanOrEqualTo(8);
    for (int i = 0; i < lines.nx(); i++) {
      if (lines.x()[i] == 0 || lines.x()[i + 1] == 0) {
        assertThat(lines.x()[i + 1] - lines.x()[i]).isLessThan(h / 36);
      }
    }
    for (int j = 0; j < lines.ny(); j++) {
      if (lines.y()[j] == h || lines.y()[j + 1] == h) {
        assertThat(lines.y()[j + 1] - lines.y()[j]).isLessThan(h / 45);
      }
    }
  }

  /** About a twentieth of a free round body in a duct, on all its sides; a box asks for none. */
  @Test
  void ductsHaveEvenCellsOverARoundBody() {
    GridLines round = inDuct(Shapes.disc(0, 0.2, 0.05));
    for (double[] lines : List.of(round.x(), round.y())) {
      double from = lines == round.x() ? -0.05 : 0.15;
      assertThat(between(lines, from, from + 0.1)).isBetween(20, 24);
      for (int i = 0; i + 1 < lines.length; i++) {
        boolean over = lines[i] > from - 1e-9 && lines[i + 1] < from + 0.1 + 1e-9;
        boolean near = lines[i] > from - 0.05 && lines[i + 1] < from + 0.15;
        assertThat(lines[i + 1] - lines[i])
            .isLessThan(over ? 0.0055 : near ? 0.0101 : Double.MAX_VALUE);
      }
    }
    assertThat(between(inDuct(Shapes.box(-0.05, 0.15, 0.05, 0.25)).x(), -0.05, 0.05))
        .isNotEqualTo(between(round.x(), -0.05, 0.05));
    // a body that stands on the ground is left to the rules of walls, whose cells are not even
    double[] rows = inDuct(Shapes.disc(0, 0.04, 0.05)).y();
    double least = Double.MAX_VALUE;
    double most = 0;
    for (int i = 0; rows[i + 1] < 0.09; i++) {
      least = Math.min(least, rows[i + 1] - rows[i]);
      most = Math.max(most, rows[i + 1] - rows[i]);
    }
    assertThat(most / least).isGreaterThan(2);
  }

  private static GridLines inDuct(Ring body) {
    return GridDesign.ofDuct(
            new GridDesign.Domain(-0.2, 2, 0, 0.41, List.of(body)), 0.1, MeshLevel.MEDIUM)
        .lines(GridDesign.FINEST);
  }

  @Test
  void cellsAreFineAtTheLowestPointOfARoundNose() {
    double h = 2 * MM;
    GridLines lines =
        level(open(h, 8 * MM, 12 * MM, Shapes.roundNose(8 * MM, h, SKY)), h, MeshLevel.MEDIUM);
    for (int i = 0; i < lines.nx(); i++) {
      if (Math.abs(lines.x()[i] - 4 * MM) < 0.5 * h) {
        assertThat(lines.x()[i + 1] - lines.x()[i]).isLessThan(h / 8);
      }
    }
    for (int j = 0; j < lines.ny(); j++) {
      if (Math.abs(lines.y()[j] - h) < 1e-9) {
        assertThat(lines.y()[j + 1] - lines.y()[j]).isLessThan(h / 16);
      }
    }
  }

  @Test
  void narrowGapUnderAWideLip() {
    double h = 0.3 * MM;
    GridDesign.Domain domain = open(h, 60 * MM, 10.3 * MM, Shapes.flatLip(60 * MM, h, SKY));
    GridLines lines = level(domain, h, MeshLevel.MEDIUM);
    Mesh mesh = MeshChecks.check(lines, domain.solids(), SIDES, "wide");
    assertThat(mesh.cells).isLessThan(14_000);
    assertThat(between(lines.y(), 0, h)).isEqualTo(20);
    // in the middle of the gap's height
    assertThat(worstAspect(lines, x -> x >= 0 && x < 60 * MM, y -> y > 0.3 * h && y < 0.6 * h))
        .isLessThan(22);
  }

  @Test
  void wideGapUnderAShortLip() {
    double h = 15 * MM;
    GridDesign.Domain domain = open(h, 8 * MM, 25 * MM, Shapes.flatLip(8 * MM, h, SKY));
    GridLines lines = level(domain, h, MeshLevel.MEDIUM);
    Mesh mesh = MeshChecks.check(lines, domain.solids(), SIDES, "short");
    assertThat(mesh.cells).isBetween(6000, 10_000);
    assertThat(between(lines.x(), 0, 8 * MM)).isGreaterThanOrEqualTo(8);
  }

  @Test
  void bumpOnTheGroundGetsItsOwnLines() {
    double h = 2 * MM;
    Ring bump = Shapes.box(2 * MM, -MM, 4 * MM, 0.5 * MM);
    GridDesign.Domain domain = open(h, 8 * MM, 12 * MM, Shapes.flatLip(8 * MM, h, SKY), bump);
    GridLines lines = level(domain, h, MeshLevel.MEDIUM);
    assertThat(lines.x()).contains(2 * MM, 4 * MM);
    assertThat(lines.y()).contains(0.5 * MM, h);
    Mesh mesh = MeshChecks.check(lines, domain.solids(), SIDES, "bump");
    assertThat(mesh.cells).isLessThan(14_000);
  }

  @Test
  void closeWallsBothKeepTheirLinesAndCloseCornersShareOne() {
    double h = 2 * MM;
    double e = 0.004 * MM;
    double w = 0.06 * MM;
    Ring stepped = Shapes.ring(0, SKY, 0, h + 5 * MM, w, h + 5 * MM, w, h, 8 * MM, h, 8 * MM, SKY);
    GridLines lines = level(open(h, 8 * MM, 12 * MM, stepped), h, MeshLevel.MEDIUM);
    assertThat(lines.x()).contains(0, w);
    Ring chamfered =
        Shapes.ring(0, SKY, 0, h + 5 * MM, e, h + 4 * MM, 2 * e, h, 8 * MM, h, 8 * MM, SKY);
    GridLines merged = level(open(h, 8 * MM, 12 * MM, chamfered), h, MeshLevel.MEDIUM);
    assertThat(merged.x()).contains(0).doesNotContain(e).doesNotContain(2 * e);
  }

  @Test
  void sameGapGivesTheSameCellsInTheGap() {
    // so that errors cancel in the ratio of a candidate to the flat lip
    double h = 2 * MM;
    double[] flat =
        level(open(h, 8 * MM, 12 * MM, Shapes.flatLip(8 * MM, h, SKY)), h, MeshLevel.MEDIUM).y();
    double[] other =
        level(open(h, 8 * MM, 12 * MM, Shapes.pocket(8 * MM, h, SKY)), h, MeshLevel.MEDIUM).y();
    for (int j = 0; j <= between(flat, 0, h); j++) {
      assertThat(other[j]).isCloseTo(flat[j], within(1e-12));
    }
  }

  @Test
  void channelAndCavityWithoutSolids() {
    GridDesign.Domain channel = new GridDesign.Domain(0, 50, 0, 1, List.of());
    GridDesign design = GridDesign.of(channel, 1, MeshLevel.MEDIUM);
    assertThat(design.rectangles(GridDesign.FINEST)).isBetween(6000, 12_000);
    GridDesign.Domain square = new GridDesign.Domain(0, 1, 0, 1, List.of());
    GridLines cavity = GridDesign.ofCavity(square, 1, MeshLevel.MEDIUM).lines(GridDesign.FINEST);
    assertThat(cavity.x()).isEqualTo(cavity.y());
    assertThat(cavity.nx()).isBetween(80, 110);
    assertThat(cavity.x()[1]).isLessThan(0.7 / cavity.nx());
    assertThat(steepest(cavity.x())).isLessThan(1.1);
  }

  @Test
  void stepInADuct() {
    Ring step = Shapes.box(-5, -1, 0, 0.5);
    GridDesign.Domain duct = new GridDesign.Domain(-5, 30, 0, 1, List.of(step));
    GridLines lines = level(duct, 0.5, MeshLevel.MEDIUM);
    assertThat(lines.x()).contains(0);
    assertThat(lines.y()).contains(0.5);
    Mesh mesh = MeshChecks.check(lines, duct.solids(), SIDES, "step");
    assertThat(mesh.cells).isBetween(8000, 20_000);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void anyHeapOfSolidsGetsAMeshOfBoundedSize(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Ring> solids = new ArrayList<>();
    for (int k = 0; k < 6; k++) {
      double x = 20 * random.nextDouble();
      double y = 2 + 8 * random.nextDouble();
      solids.add(
          random.nextBoolean()
              ? Shapes.star(random, x, y, 2)
              : Shapes.disc(x, y, 0.2 + random.nextDouble()));
    }
    GridDesign.Domain domain = new GridDesign.Domain(-10, 40, 0, 12, solids);
    GridDesign design = GridDesign.of(domain, 1, MeshLevel.MEDIUM);
    assertThat(design.rectangles(GridDesign.FINEST)).as("seed %d", seed).isLessThan(60_000);
    MeshChecks.check(design.lines(GridDesign.FINEST), solids, SIDES, "seed " + seed);
  }

  @Test
  void badArgumentsAreRefused() {
    GridDesign.Domain domain = new GridDesign.Domain(0, 1, 0, 1, List.of());
    assertThatThrownBy(() -> GridDesign.of(domain, 0, MeshLevel.MEDIUM))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("gap");
    assertThatThrownBy(() -> GridDesign.of(domain, 1, MeshLevel.MEDIUM).lines(0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("multiplier");
    assertThatThrownBy(() -> new GridDesign.Domain(1, 0, 0, 1, List.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static int between(double[] line, double from, double to) {
    int count = 0;
    for (double c : line) {
      count += c > from + 1e-12 && c <= to + 1e-12 ? 1 : 0;
    }
    return count;
  }

  /** Largest ratio of neighbouring cells. */
  private static double steepest(double[] line) {
    double worst = 1;
    for (int i = 1; i + 1 < line.length; i++) {
      double ratio = (line[i + 1] - line[i]) / (line[i] - line[i - 1]);
      worst = Math.max(worst, Math.max(ratio, 1 / ratio));
    }
    return worst;
  }

  private static double worstAspect(GridLines lines, DoublePredicate inX, DoublePredicate inY) {
    double worst = 1;
    for (int i = 0; i < lines.nx(); i++) {
      for (int j = 0; j < lines.ny(); j++) {
        if (inX.test(lines.x()[i]) && inY.test(lines.y()[j])) {
          double dx = lines.x()[i + 1] - lines.x()[i];
          double dy = lines.y()[j + 1] - lines.y()[j];
          worst = Math.max(worst, Math.max(dx / dy, dy / dx));
        }
      }
    }
    return worst;
  }
}
