package hemline.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Detail finer than a reach is joined, all else stays to the last bit; lengths in mm. */
class FineDetailTest {
  private static final double REACH = 2e-3;
  private static final Outline BOX = outline(0, 0, 8, 0, 8, 10, 0, 10);

  private static Outline outline(double... xy) {
    List<Vertex> v = new ArrayList<>();
    for (int k = 0; k < xy.length; k += 2) {
      v.add(new Vertex(xy[k], xy[k + 1]));
    }
    return new Outline(v);
  }

  private static Outline plain(Outline drawn) {
    return FineDetail.of(drawn, REACH).outline();
  }

  private static double extreme(Outline o, ToDoubleFunction<Vertex> of, boolean least) {
    var all = o.vertices().stream().mapToDouble(of);
    return (least ? all.min() : all.max()).orElseThrow();
  }

  @Test
  void outlineWithoutDetailIsHandedBack() {
    Outline arc = new Outline(List.of(new Vertex(0, 0, 0.01), new Vertex(8, 0), new Vertex(8, 10)));
    Outline steps = outline(0, 0, 4, 0, 4, 2.1e-3, 8, 2.1e-3, 8, 10, 0, 10);
    for (Outline o : List.of(BOX, arc, steps)) {
      FineDetail fine = FineDetail.of(o, REACH);
      assertThat(fine.outline()).isSameAs(o);
      assertThat(fine.joined()).isEmpty();
      assertThat(fine.edge(2)).isEqualTo(2);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {5e-6, 1e-4, 1.4e-3})
  void stepsNotchesAndChamfersAtACornerMakeTheCorner(double s) {
    assertThat(plain(outline(0, s, s, s, s, 0, 8, 0, 8, 10, 0, 10))).isEqualTo(BOX);
    assertThat(plain(outline(0, 0, 8 - s, 0, 8 - s, s, 8, s, 8, 10, 0, 10))).isEqualTo(BOX);
    assertThat(plain(outline(0, s, s, 0, 8, 0, 8, 10, 0, 10)).vertices())
        .containsExactlyInAnyOrderElementsOf(BOX.vertices());
  }

  @ParameterizedTest
  @ValueSource(doubles = {5e-6, 1e-4, 1.9e-3})
  void stepInALandMakesOneLandAtTheLowerLevel(double s) {
    assertThat(plain(outline(0, 0, 4, 0, 4, s, 8, s, 8, 10, 0, 10))).isEqualTo(BOX);
    assertThat(plain(outline(0, s, 4, s, 4, 0, 8, 0, 8, 10, 0, 10))).isEqualTo(BOX);
    // within the box around the lip the longer land wins
    assertThat(plain(outline(0, 0, 1, 0, 1, 3, 4, 3, 4, 3 + s, 9, 3 + s, 9, 10, 0, 10)))
        .isEqualTo(outline(0, 0, 1, 0, 1, 3 + s, 9, 3 + s, 9, 10, 0, 10));
  }

  @Test
  void tinyRoundingMakesACorner() {
    double r = 1e-3;
    double quarter = Math.tan(Math.PI / 8);
    Outline rounded =
        new Outline(
            List.of(
                new Vertex(0, 0),
                new Vertex(8 - r, 0, quarter),
                new Vertex(8, r),
                new Vertex(8, 10),
                new Vertex(0, 10)));
    assertThat(plain(rounded)).isEqualTo(BOX);
  }

  @Test
  void spikesOnALandVanish() {
    double s = 1e-4;
    Outline spike = outline(0, 0, 3, 0, 3 + s, s, 3 + 2 * s, 0, 8, 0, 8, 10, 0, 10);
    FineDetail fine = FineDetail.of(spike, REACH);
    assertThat(fine.outline()).isEqualTo(BOX);
    assertThat(fine.joined()).hasSize(1);
    assertThat(fine.joined().get(0).x()).isCloseTo(3, within(REACH));
  }

  @Test
  void edgesKeepTheirNumbers() {
    double s = 1e-4;
    Outline drawn = outline(0, s, s, s, s, 0, 8, 0, 8, 10, 5, 10, 5, 10 - s, 0, 10 - s);
    FineDetail fine = FineDetail.of(drawn, REACH);
    // the two halves of the top become one edge
    assertThat(fine.outline()).isEqualTo(BOX);
    assertThat(fine.edge(4)).isEqualTo(2);
    assertThat(fine.edge(6)).isEqualTo(2);
    assertThat(fine.edge(2)).isEqualTo(0);
  }

  @Test
  void manyShortEdgesInARowAreNotDrawnTogether() {
    // a half circle of chords of 1.6 µm: no vertex moves further than the reach
    List<Vertex> v = new ArrayList<>();
    int n = 2000;
    for (int k = 0; k <= n; k++) {
      double t = Math.PI * (1 + (double) k / n);
      v.add(new Vertex(1 + Math.cos(t), 1 + Math.sin(t)));
    }
    v.add(new Vertex(2, 3));
    v.add(new Vertex(0, 3));
    Outline drawn = new Outline(v);
    Outline left = plain(drawn);
    assertThat(left.vertices().size()).isBetween(n / 4, n);
    double before = Polygons.signedArea(drawn.vertices());
    assertThat(Polygons.signedArea(left.vertices())).isCloseTo(before, within(Math.PI * REACH));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void wallsMoveByNoMoreThanTheReach(long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    List<Vertex> v = new ArrayList<>();
    double x = 0;
    double y = 0;
    double length = 0;
    while (x < 8) {
      v.add(new Vertex(x, y));
      double small = Math.pow(10, chance.nextDouble(-6, -2));
      double dx = chance.nextInt(3) == 0 ? small : chance.nextDouble(0.1, 1);
      double dy = chance.nextInt(2) == 0 ? 0 : chance.nextDouble(-1, 1) * small;
      x += dx;
      y += dy;
      length += Math.hypot(dx, dy);
    }
    v.add(new Vertex(x, y));
    v.add(new Vertex(x, 10));
    v.add(new Vertex(0, 10));
    Outline drawn = new Outline(v);
    Outline left = plain(drawn);
    assertThat(left.vertices().size()).isLessThan(v.size());
    for (boolean least : new boolean[] {true, false}) {
      assertThat(extreme(left, Vertex::x, least)).isEqualTo(extreme(drawn, Vertex::x, least));
      assertThat(extreme(left, Vertex::y, least)).isEqualTo(extreme(drawn, Vertex::y, least));
    }
    for (Vertex a : drawn.vertices()) {
      assertThat(left.vertices())
          .as("something near %s", a)
          .anyMatch(
              b ->
                  Math.abs(a.x() - b.x()) <= 4 * REACH && Math.abs(a.y() - b.y()) <= REACH
                      || Math.abs(a.y() - b.y()) <= REACH);
    }
    double moved = Polygons.signedArea(left.vertices()) - Polygons.signedArea(drawn.vertices());
    assertThat(moved).isCloseTo(0, within(REACH * (length + 20)));
    assertThat(Polygons.polygon(left, 1).isValid()).isTrue();
  }
}
