package hemline.shared.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CornerResolverTest {
  private static final List<Vertex> SQUARE =
      List.of(new Vertex(0, 0), new Vertex(4, 0), new Vertex(4, 4), new Vertex(0, 4));

  private static CornerResolver.Resolved resolve(DrawnOutline drawn) {
    List<Problem> problems = new ArrayList<>();
    CornerResolver.Resolved resolved = CornerResolver.resolve(drawn, "outline", problems);
    assertThat(problems).isEmpty();
    assertThat(resolved).isNotNull();
    return resolved;
  }

  private static List<Problem> problems(Rounding... roundings) {
    List<Problem> problems = new ArrayList<>();
    assertThat(
            CornerResolver.resolve(
                new DrawnOutline(SQUARE, List.of(roundings)), "outline", problems))
        .isNull();
    return problems;
  }

  @Test
  void roundsACorner() {
    CornerResolver.Resolved r = resolve(new DrawnOutline(SQUARE, List.of(Rounding.round(1, 1))));
    assertThat(r.outline().vertices()).hasSize(5);
    Vertex start = r.outline().vertices().get(1);
    assertThat(start.x()).isEqualTo(3);
    assertThat(start.bulge()).isCloseTo(Math.tan(Math.PI / 8), within(1e-15));
    Arc arc = Arc.of(start, r.outline().vertices().get(2));
    assertThat(arc.radius()).isCloseTo(1, within(1e-14));
    assertThat(arc.xc()).isCloseTo(3, within(1e-14));
    assertThat(arc.yc()).isCloseTo(1, within(1e-14));
    assertThat(r.edge()).containsExactly(0, 2, 3, 4);
    assertThat(Polygons.signedArea(r.outline().vertices()))
        .isCloseTo(16 - (1 - Math.PI / 4), within(1e-13));
  }

  @Test
  void chamfersACorner() {
    CornerResolver.Resolved r = resolve(new DrawnOutline(SQUARE, List.of(Rounding.chamfer(0, 1))));
    assertThat(r.outline().vertices().subList(0, 2))
        .containsExactly(new Vertex(0, 1), new Vertex(1, 0));
    assertThat(Polygons.signedArea(r.outline().vertices())).isCloseTo(15.5, within(1e-13));
  }

  @Test
  void roundingsThatMeetLeaveACircle() {
    List<Rounding> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      all.add(Rounding.round(i, 2));
    }
    CornerResolver.Resolved r = resolve(new DrawnOutline(SQUARE, all));
    assertThat(r.outline().vertices()).hasSize(4);
    assertThat(r.edge()).containsExactly(-1, -1, -1, -1);
    assertThat(Polygons.signedArea(r.outline().vertices())).isCloseTo(4 * Math.PI, within(1e-12));
  }

  @Test
  void namesVertexAndCure() {
    assertThat(problems(Rounding.round(1, 5)).get(0).text())
        .contains("corner 1 at (4000, 0) mm", "too large", "4000 mm long");
    assertThat(problems(Rounding.round(1, 3), Rounding.round(2, 3)).get(0).text())
        .contains("would take 6000 mm");
    assertThat(problems(Rounding.round(7, 1)).get(0).text()).contains("no corner 7");
    assertThat(problems(Rounding.round(1, 0)).get(0).text()).contains("must be positive");
    assertThat(problems(Rounding.round(1, 1), Rounding.chamfer(1, 1)).get(0).text())
        .contains("rounded twice");
  }

  @Test
  void refusesCornersOnArcs() {
    List<Vertex> vertices = new ArrayList<>(SQUARE);
    vertices.set(1, new Vertex(4, 0, 0.3));
    List<Problem> problems = new ArrayList<>();
    CornerResolver.resolve(
        new DrawnOutline(vertices, List.of(Rounding.round(2, 1))), "outline", problems);
    assertThat(problems.get(0).text()).contains("corner 2", "joins an arc");
  }

  /** A rounding is tangent to both edges: the area it removes is r² (tan(t/2) - t/2), turn t. */
  @Test
  void removesTheAreaOfATangentArc() {
    for (int seed = 0; seed < 300; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double turn = random.nextDouble(0.05, 3.0);
      double tilt = random.nextDouble(0, 6);
      // a triangle with a turn at vertex 1
      Vertex a = new Vertex(-Math.cos(tilt), -Math.sin(tilt));
      Vertex c = new Vertex(Math.cos(tilt + turn), Math.sin(tilt + turn));
      List<Vertex> triangle = List.of(a, new Vertex(0, 0), c);
      double r = random.nextDouble(0.01, 0.99) / Math.tan(turn / 2);
      double before = Polygons.signedArea(triangle);
      double after =
          Polygons.signedArea(
              resolve(new DrawnOutline(triangle, List.of(Rounding.round(1, r))))
                  .outline()
                  .vertices());
      double removed = r * r * (Math.tan(turn / 2) - turn / 2);
      assertThat(before - after)
          .as("seed %d", seed)
          .isCloseTo(removed, within(1e-12 * (1 + r * r)));
    }
  }
}
