package hemline.shared.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ThinPartsTest {
  private static final double MM = 1e-3;

  private static Outline outline(double... xy) {
    List<Vertex> v = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      v.add(new Vertex(MM * xy[i], MM * xy[i + 1]));
    }
    return new Outline(v);
  }

  private static Outline fin(double thick) {
    double l = 4 - thick / 2;
    double r = 4 + thick / 2;
    return outline(l, 0, r, 0, r, 7, 8, 7, 8, 10, 0, 10, 0, 7, l, 7);
  }

  @Test
  void tellsAThinFinFromOneThatPrints() {
    assertThat(ThinParts.thinWalls(List.of(fin(0.8)), 0.8 * MM, 1.25)).isEmpty();
    List<ThinParts.Part> parts = ThinParts.thinWalls(List.of(fin(0.78)), 0.8 * MM, 1.25);
    assertThat(parts).hasSize(1);
    assertThat(parts.get(0).y()).isBetween(0.0, 7 * MM);
    assertThat(parts.get(0).length()).isGreaterThan(6 * MM);
  }

  @Test
  void passesRoundedEndsAndUsualCorners() {
    Outline rod =
        new Outline(
            List.of(
                new Vertex(0, 0, 1),
                new Vertex(0.8 * MM, 0),
                new Vertex(0.8 * MM, 5 * MM, 1),
                new Vertex(0, 5 * MM)));
    assertThat(ThinParts.thinWalls(List.of(rod), 0.8 * MM, 1.25)).isEmpty();
    Outline wedge45 = outline(0, 0, 10, 0, 10, 10);
    assertThat(ThinParts.thinWalls(List.of(wedge45), 0.8 * MM, 1.25)).isEmpty();
    Outline wedge15 = outline(0, 0, 20, 0, 20, 20 * Math.tan(Math.toRadians(15)));
    assertThat(ThinParts.thinWalls(List.of(wedge15), 0.8 * MM, 1.25)).hasSize(1);
    assertThat(ThinParts.thinWalls(List.of(wedge15), 0.01 * MM, 10)).isEmpty();
  }

  @Test
  void findsNarrowSlots() {
    Outline slotted = outline(0, 0, 4, 0, 4, 5, 4.3, 5, 4.3, 0, 8, 0, 8, 10, 0, 10);
    assertThat(ThinParts.narrowSlots(List.of(slotted), 0.4 * MM, 1.25)).hasSize(1);
    assertThat(ThinParts.narrowSlots(List.of(slotted), 0.29 * MM, 1.25)).isEmpty();
    assertThat(ThinParts.thinWalls(List.of(slotted), 0.8 * MM, 1.25)).isEmpty();
    List<Outline> twins =
        List.of(outline(0, 0, 4, 0, 4, 4, 0, 4), outline(4.2, 0, 8, 0, 8, 4, 4.2, 4));
    assertThat(ThinParts.narrowSlots(twins, 0.4 * MM, 1.25)).hasSize(1);
  }

  @Test
  void turningTheDrawingChangesNothing() {
    for (int seed = 0; seed < 50; seed++) {
      double angle = new SplittableRandom(seed).nextDouble(0, 7);
      for (double thick : new double[] {0.7, 0.81}) {
        List<Vertex> turned =
            fin(thick).vertices().stream()
                .map(
                    v ->
                        new Vertex(
                            Math.cos(angle) * v.x() - Math.sin(angle) * v.y(),
                            Math.sin(angle) * v.x() + Math.cos(angle) * v.y()))
                .toList();
        assertThat(ThinParts.thinWalls(List.of(new Outline(turned)), 0.8 * MM, 1.25))
            .as("seed %d, %s mm", seed, thick)
            .hasSize(thick < 0.8 ? 1 : 0);
      }
    }
  }
}
