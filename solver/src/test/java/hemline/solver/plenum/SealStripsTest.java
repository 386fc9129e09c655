package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Vertex;
import hemline.shared.vehicle.FloorOutline;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Length of seal, its corners and what the outer edge of a lip 8 mm wide adds, by hand. */
class SealStripsTest {
  private static final double WIDE = 8e-3;
  private static final double GAP = 1.5e-3;

  private static SealStrips strips(List<Vertex> outline) {
    return new SealStrips(
        Machines.with(Machines.quadratic(900, 6e4), 1e5, outline, 3), Machines.constant(0.7, 0));
  }

  private static double length(SealStrips s, Side side) {
    double sum = 0;
    for (int i = 0; i < s.count; i++) {
      sum += s.lengthAt(i, GAP, side);
    }
    return sum;
  }

  /** Five corners turn out, one turns in: there the outer edge is shorter, and no air comes in. */
  @Test
  void anLShapedFloor() {
    SealStrips s =
        strips(
            List.of(
                new Vertex(0.25, -0.2),
                new Vertex(0.25, 0.02),
                new Vertex(0, 0.02),
                new Vertex(0, 0.2),
                new Vertex(-0.2, 0.2),
                new Vertex(-0.2, -0.2)));
    double perimeter = 2 * (0.45 + 0.4);
    double quarter = 0.5 * Math.PI * WIDE;
    assertThat(length(s, Side.VALUE)).isCloseTo(perimeter + 5 * GAP, within(1e-12));
    assertThat(length(s, Side.LOW)).isCloseTo(perimeter - quarter, within(1e-12));
    assertThat(length(s, Side.HIGH)).isCloseTo(perimeter + 10 * GAP + 5 * quarter, within(1e-12));
    double[] moment = new double[2];
    double facing = 0;
    for (int i = 0; i < s.count; i++) {
      moment[0] += s.length[i] * s.x[i];
      moment[1] += s.length[i] * s.y[i];
      facing += s.length[i] * s.facing[i];
    }
    // lengths 0.22, 0.25, 0.18, 0.2, 0.4, 0.45 at the middles of the edges
    double mx = 0.22 * 0.25 + 0.25 * 0.125 - 0.2 * 0.1 - 0.4 * 0.2 + 0.45 * 0.025;
    double my = 0.22 * -0.09 + 0.25 * 0.02 + 0.18 * 0.11 + 0.2 * 0.2 - 0.45 * 0.2;
    assertThat(moment[0]).isCloseTo(mx, within(1e-12));
    assertThat(moment[1]).isCloseTo(my, within(1e-12));
    // as much faces forwards as rearwards
    assertThat(facing).isCloseTo(0, within(1e-12));
  }

  /** Corners lie at their vertex, half on each edge, and face between the two. */
  @Test
  void cornersBelongToBothEdges() {
    SealStrips s =
        strips(
            List.of(
                new Vertex(0.2, -0.1),
                new Vertex(0.2, 0.1),
                new Vertex(-0.2, 0.1),
                new Vertex(-0.2, -0.1)));
    int corners = 0;
    for (int i = 0; i < s.count; i++) {
      if (s.vertex[i] >= 0) {
        int v = s.vertex[i];
        assertThat(s.x[i]).isEqualTo(v == 0 || v == 1 ? 0.2 : -0.2);
        assertThat(s.y[i]).isEqualTo(v == 1 || v == 2 ? 0.1 : -0.1);
        assertThat(s.edge[i]).isIn(v, (v + 3) % 4);
        assertThat(s.turn[i]).isCloseTo(0.5, within(1e-12));
        assertThat(s.length[i]).isZero();
        assertThat(s.facing[i]).isCloseTo(v == 0 || v == 1 ? 0.5 : -0.5, within(1e-12));
        corners++;
      } else {
        assertThat(s.turn[i]).isZero();
        assertThat(s.length[i]).isPositive();
      }
    }
    assertThat(corners).isEqualTo(8);
  }

  /**
   * Half a disc: the arc is cut into twelve pieces of 15°, along which the outer edge is longer by
   * π b in all; the two corners turn by 97.5° from the chord of the last piece.
   */
  @Test
  void halfADisc() {
    SealStrips s = strips(List.of(new Vertex(0, -0.2, 1), new Vertex(0, 0.2)));
    double perimeter = Math.PI * 0.2 + 0.4;
    double turn = Math.toRadians(97.5);
    double rights = 2 * turn / (0.5 * Math.PI);
    assertThat(length(s, Side.VALUE)).isCloseTo(perimeter + rights * GAP, within(1e-12));
    assertThat(length(s, Side.LOW)).isCloseTo(perimeter, within(1e-12));
    assertThat(length(s, Side.HIGH))
        .isCloseTo(perimeter + 2 * rights * GAP + WIDE * (Math.PI + 2 * turn), within(1e-12));
  }

  @Test
  void everyLipNeedsItsLaw() {
    var m = Machines.round(Machines.quadratic(900, 6e4), 1e5);
    assertThat(FloorOutline.FINEST_TURN).isCloseTo(Math.toRadians(15), within(1e-15));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SealStrips(m, Map.of()))
        .withMessageContaining("lip");
  }
}
