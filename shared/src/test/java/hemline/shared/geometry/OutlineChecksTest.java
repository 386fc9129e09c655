package hemline.shared.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class OutlineChecksTest {

  private static List<Vertex> vertices(double... xyb) {
    List<Vertex> out = new ArrayList<>();
    for (int i = 0; i < xyb.length; i += 3) {
      out.add(new Vertex(xyb[i], xyb[i + 1], xyb[i + 2]));
    }
    return out;
  }

  private static List<Problem> check(double... xyb) {
    return OutlineChecks.check(new DrawnOutline(vertices(xyb)), "outline");
  }

  private static Problem only(List<Problem> problems) {
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  @Test
  void passesSoundOutlines() {
    assertThat(check(0, 0, 0, 1, 0, 0, 1, 1, 0)).isEmpty();
    assertThat(check(0, 0, 1, 1, 0, 1)).as("circle").isEmpty();
    assertThat(check(0, 0, 1, 1, 0, 0)).as("half disc").isEmpty();
    assertThat(check(0, 0, 0, 0, 1, 0, 1, 1, 0, 1, 0, 0)).as("clockwise").isEmpty();
    assertThat(check(0, 4, 1, 8, 4, 0, 8, 10, 0, 0, 10, 0)).as("nose").isEmpty();
  }

  @Test
  void countsVertices() {
    assertThat(only(check()).text()).contains("at least three");
    assertThat(only(check(0, 0, 0, 1, 0, 0)).text()).contains("this one has 2");
  }

  @Test
  void refusesNumbersThatAreNotFinite() {
    assertThat(only(check(0, 0, 0, 1, Double.NaN, 0, 1, 1, 0)).text()).contains("corner 1");
    assertThat(only(check(0, 0, 0, 1, 0, Double.POSITIVE_INFINITY, 1, 1, 0)).code())
        .isEqualTo("outline.number");
    assertThat(only(check(0, 0, 0, 1e9, 0, 0, 1, 1, 0)).code()).isEqualTo("outline.size");
    assertThat(only(check(0, 0, 0, 1, 0, 1e-9, 1, 1, 0)).code()).isEqualTo("outline.bulge");
  }

  @Test
  void findsEdgesWithoutLength() {
    assertThat(only(check(0, 0, 0, 1, 0, 0, 1, 0, 0, 1, 1, 0)).text())
        .contains("corner 1 to 2 has no length");
    assertThat(only(check(0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0, 0)).text())
        .contains("last corner repeats the first");
    assertThat(only(check(2, 2, 0, 2, 2, 0, 2, 2, 0)).text()).contains("at one point");
  }

  @Test
  void findsCrossingEdges() {
    Problem p = only(check(0, 0, 0, 1, 1, 0, 1, 0, 0, 0, 1, 0));
    assertThat(p.code()).isEqualTo("outline.crossing");
    assertThat(p.text())
        .contains("from corner 0 to 1 crosses the edge from corner 2 to 3")
        .contains("(500, 500) mm");
  }

  @Test
  void findsCrossingArcs() {
    // a half circle of radius 2 that dips below the base line at y = -1
    Problem p = check(-2, 0, 1, 2, 0, 0, 2, 3, 0, 4, 3, 0, 4, -1, 0, -2, -1, 0).get(0);
    assertThat(p.text()).contains("from corner 0 to 1 crosses the edge from corner 4 to 5");
  }

  @Test
  void findsTouchingAndDoubledEdges() {
    assertThat(check(0, 0, 0, 4, 0, 0, 4, 2, 0, 2, 0, 0, 0, 2, 0).get(0).text())
        .contains("touches");
    List<Problem> spike = check(0, 0, 0, 4, 0, 0, 2, 0, 0, 2, 2, 0);
    assertThat(spike.get(0).code()).isEqualTo("outline.duplicate");
    assertThat(spike.get(0).text()).contains("folds back");
    // a slit drawn with no width
    List<Problem> slit = check(0, 0, 0, 4, 0, 0, 4, 2, 0, 2, 2, 0, 2, 1, 0, 2, 2.5, 0, 0, 2, 0);
    assertThat(slit).extracting(Problem::code).contains("outline.duplicate");
  }

  @Test
  void findsRoundingsThatCutThroughAnotherEdge() {
    // a slot from above ends close to the lower right corner
    List<Vertex> slotted =
        vertices(
            0, 0, 0, 10, 0, 0, 10, 10, 0, 9.6, 10, 0, 9.6, 0.3, 0, 9.5, 0.3, 0, 9.5, 10, 0, 0, 10,
            0);
    assertThat(OutlineChecks.check(new DrawnOutline(slotted), "outline")).isEmpty();
    Problem p =
        only(
            OutlineChecks.check(
                new DrawnOutline(slotted, List.of(Rounding.round(1, 6))), "outline"));
    assertThat(p.code()).isEqualTo("outline.rounding");
    assertThat(p.text()).contains("make the roundings smaller");
  }

  /** Straight random outlines: the library's own validity test is the judge. */
  @Test
  void agreesWithThePolygonLibrary() {
    int simple = 0;
    for (int seed = 0; seed < 2000; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      int n = 3 + random.nextInt(5);
      List<Vertex> v = new ArrayList<>();
      Coordinate[] c = new Coordinate[n + 1];
      for (int i = 0; i < n; i++) {
        // a coarse lattice makes touching and lying on each other frequent
        v.add(new Vertex(random.nextInt(7), random.nextInt(7)));
        c[i] = new Coordinate(v.get(i).x(), v.get(i).y());
      }
      c[n] = c[0];
      boolean valid = new GeometryFactory().createPolygon(c).isValid();
      boolean repeats = false;
      for (int i = 0; i < n; i++) {
        repeats |= c[i].equals(c[i + 1]);
      }
      boolean sound = OutlineChecks.check(new DrawnOutline(v), "outline").isEmpty();
      assertThat(sound).as("seed %d %s", seed, v).isEqualTo(valid && !repeats);
      simple += sound ? 1 : 0;
    }
    assertThat(simple).as("both kinds occur").isBetween(200, 1900);
  }

  @Test
  void areaOfArcsIsExact() {
    assertThat(Polygons.signedArea(vertices(0, 0, 1, 2, 0, 1))).isCloseTo(Math.PI, within(1e-14));
    assertThat(Polygons.signedArea(vertices(0, 0, -1, 2, 0, -1)))
        .isCloseTo(-Math.PI, within(1e-14));
    Outline nose = new Outline(vertices(0, 4, 1, 8, 4, 0, 8, 10, 0, 0, 10, 0));
    double area = 48 + 8 * Math.PI;
    assertThat(Polygons.signedArea(nose.vertices())).isCloseTo(area, within(1e-12));
    assertThat(Polygons.polygon(nose, 1).getArea()).isCloseTo(area, within(2e-4 * area));
    assertThat(Polygons.signedArea(Polygons.reversed(nose).vertices()))
        .isCloseTo(-area, within(1e-12));
  }

  @Test
  void reversingTwiceGivesTheSame() {
    Outline nose = new Outline(vertices(0, 4, 1, 8, 4, 0, 8, 10, -0.3, 0, 10, 0));
    assertThat(Polygons.reversed(Polygons.reversed(nose))).isEqualTo(nose);
  }
}
