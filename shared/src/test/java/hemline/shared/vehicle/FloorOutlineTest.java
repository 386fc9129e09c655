package hemline.shared.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class FloorOutlineTest {
  private static final LipProfile LIP =
      new LipProfile(
          "lip",
          "flat",
          "",
          new Outline(List.of(new Vertex(0, 0), new Vertex(8e-3, 0), new Vertex(8e-3, 1e-2))),
          1,
          List.of());

  private static FloorOutline floor(Vertex... vertices) {
    return new FloorOutline(
        List.of(vertices), Collections.nCopies(vertices.length, new SealEdge(LIP, 2e-3)), 0.03);
  }

  /** An L of three unit squares: centre at 5/6 from its outer corner. */
  @Test
  void findsTheCentreOfAnL() {
    FloorOutline l =
        floor(
            new Vertex(0, 0),
            new Vertex(2, 0),
            new Vertex(2, 1),
            new Vertex(1, 1),
            new Vertex(1, 2),
            new Vertex(0, 2));
    assertThat(l.area()).isCloseTo(3, within(1e-14));
    assertThat(l.perimeter()).isCloseTo(8, within(1e-14));
    assertThat(l.centre()).containsExactly(new double[] {5.0 / 6, 5.0 / 6}, within(1e-14));
  }

  /** A half disc of radius 1: area π/2, centre 4/(3π) from its chord. */
  @Test
  void findsTheCentreOfAHalfDisc() {
    FloorOutline half = floor(new Vertex(0, -1, 1), new Vertex(0, 1));
    assertThat(half.area()).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(half.perimeter()).isCloseTo(Math.PI + 2, within(1e-12));
    assertThat(half.centre()).containsExactly(new double[] {4 / (3 * Math.PI), 0}, within(1e-12));
    assertThat(half.pieces().get(0).outwardY()).isNegative();
    assertThat(half.pieces().get(6).outwardX()).isPositive();
  }

  @Test
  void facesOutwards() {
    FloorOutline box =
        floor(new Vertex(1, -1), new Vertex(1, 1), new Vertex(-1, 1), new Vertex(-1, -1));
    assertThat(box.pieces().get(0).outwardX()).isEqualTo(1);
    assertThat(box.pieces().get(1).outwardY()).isEqualTo(1);
    assertThat(box.pieces().get(2).outwardX()).isEqualTo(-1);
    assertThat(box.pieces().get(3).outwardY()).isEqualTo(-1);
  }

  @Test
  void stretchesAboutItsCentre() {
    FloorOutline box =
        floor(new Vertex(3, 1), new Vertex(3, 3), new Vertex(1, 3), new Vertex(1, 1));
    FloorOutline longer = box.stretched(2, 0.5);
    assertThat(longer.area()).isCloseTo(4, within(1e-14));
    assertThat(longer.perimeter()).isCloseTo(10, within(1e-14));
    assertThat(longer.centre()).containsExactly(new double[] {2, 2}, within(1e-14));
  }
}
