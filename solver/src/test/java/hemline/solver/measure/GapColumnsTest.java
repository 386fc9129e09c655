package hemline.solver.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Wall;
import hemline.solver.flow.Closure;
import hemline.solver.flow.DuctSetup;
import hemline.solver.grid.GridLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Columns under a tooth and over a bump on uneven lines, by hand: a tooth from x = 2 to 4 down to y
 * = 3, a bump from x = 6 to 8 up to y = 1, in a channel 6 high.
 */
class GapColumnsTest {
  private static final double[] X = {0, 2, 3, 4, 6, 7, 8, 12};
  private static final double[] Y = {0, 1, 3, 4, 6};
  private final MadeFlow flow = flow();

  private static Outline box(double x0, double y0, double x1, double y1) {
    return new Outline(
        List.of(new Vertex(x0, y0), new Vertex(x1, y0), new Vertex(x1, y1), new Vertex(x0, y1)));
  }

  private static MadeFlow flow() {
    DuctSection duct =
        new DuctSection(
            "made",
            new DuctSection.Channel(0, 12, 6),
            List.of(box(2, 3, 4, 6), box(6, 0, 8, 1)),
            new FluidState(1, 0.1),
            new DuctSection.Inflow(new Drive.LeakFlow(2), Inlet.UNIFORM),
            new DuctSection.Walls(new Wall(0, 0, false), new Wall(0, 0, false), null),
            new DuctSection.Measures(null, 3),
            "laminar");
    return new MadeFlow(new DuctSetup(duct).problem(new GridLines(X, Y), Closure.LAMINAR));
  }

  private GapColumns columns(double from, double to) {
    return new GapColumns(flow.settled(), from, to);
  }

  /** Columns whose middle lies under the lip. */
  @Test
  void firstAndLast() {
    GapColumns c = columns(2, 4);
    assertThat(c.first).isEqualTo(1);
    assertThat(c.last).isEqualTo(2);
    assertThat(columns(2.4, 7.4).first).isEqualTo(1);
    assertThat(columns(2.6, 7.6).last).isEqualTo(5);
    assertThat(columns(2.6, 7.6).first).isEqualTo(2);
  }

  @Test
  void columnsByPlace() {
    GapColumns c = columns(2, 4);
    double[] at = {-1, 0, 1.9, 2, 2.9, 3, 7.9, 8, 11, 12, 99};
    int[] column = {0, 0, 0, 1, 1, 2, 5, 6, 6, 6, 6};
    for (int i = 0; i < at.length; i++) {
      assertThat(c.at(at[i])).as("x = %s", at[i]).isEqualTo(column[i]);
    }
  }

  /** What is open over the ground or over a bump, up to the tooth. */
  @Test
  void clearances() {
    GapColumns c = columns(2, 4);
    double[] clear = {6, 3, 3, 6, 5, 5, 6};
    for (int i = 0; i < clear.length; i++) {
      assertThat(c.clearance(i)).as("column %d", i).isCloseTo(clear[i], within(1e-12));
    }
  }

  /** p = y in cells 1 and 2 high: (1 · 0.5 + 2 · 2) / 3; over the bump 2, 1 and 2 high. */
  @Test
  void meanPressures() {
    flow.pressure((x, y) -> y);
    assertThat(columns(2, 4).meanPressure(1)).isCloseTo(1.5, within(1e-12));
    assertThat(columns(2, 4).meanPressure(4)).isCloseTo((2 * 2 + 3.5 + 2 * 5) / 5, within(1e-12));
  }

  /** u of 2 and 5, v of 1 and −3, p of 7 and −4 in two cells 1 and 2 high. */
  @Test
  void energies() {
    flow.velocity((x, y) -> y < 1 ? 2 : 5, (x, y) -> y < 1 ? 1 : -3)
        .pressure((x, y) -> y < 1 ? 7 : -4);
    GapColumns c = columns(2, 4);
    double low = 0.5 * (2 * 2 + 1);
    double high = 0.5 * (5 * 5 + 3 * 3);
    double q = 2 * 1 + 5 * 2;
    assertThat(c.totalPressure(1)).isCloseTo((2 * (7 + low) + 10 * (-4 + high)) / q, within(1e-12));
    assertThat(c.kineticHead(1)).isCloseTo((2 * low + 10 * high) / q, within(1e-12));
    assertThat(c.kineticFlux(1, 3)).isCloseTo(2 * low + 10 * high, within(1e-12));
    // up to y = 2 half of the upper cell, up to 0.5 half of the lower one
    assertThat(c.kineticFlux(1, 2)).isCloseTo(2 * low + 5 * high, within(1e-12));
    assertThat(c.kineticFlux(1, 0.5)).isCloseTo(low, within(1e-12));
    // over the bump three cells of the upper speed
    assertThat(c.kineticFlux(4, 6)).isCloseTo(25 * high, within(1e-12));
    assertThat(c.kineticHead(4)).isCloseTo(high, within(1e-12));
    flow.velocity((x, y) -> 0, (x, y) -> 3);
    assertThat(columns(2, 4).kineticHead(1)).isZero();
  }

  /** Below 1.3 gaps a column is a constriction; only more than 1.5 gaps part two of them. */
  @Test
  void constrictions() {
    flow.velocity((x, y) -> 1, (x, y) -> 0).pressure((x, y) -> x < 5 ? 10 : 4);
    // clearances 6, 3, 3, 6, 5, 5, 6 over gaps of 4.5: 1.33 and 1.11 of it, never parted
    assertThat(new Stages(columns(0, 12), 4.5, 20, 0).shares).hasSize(1);
    // gaps of 3.9: 3 and 5 are 0.77 and 1.28, parted by the 6 between, which are 1.54
    Stages two = new Stages(columns(0, 12), 3.9, 20, 0);
    assertThat(two.shares).hasSize(2);
    // total pressure between them, in the column from 4 to 6: 4.5 where its middle is not below 5
    assertThat(two.shares.get(0)).isCloseTo((20 - 4.5) / 20, within(1e-12));
    assertThat(two.shares.get(1)).isCloseTo(4.5 / 20, within(1e-12));
    // kinetic flux below 3.9: leaves over 3 of height, arrives over 2.9 above the bump
    assertThat(two.carryOver).hasSize(1);
    assertThat(two.carryOver.get(0)).isCloseTo(2.9 / 3, within(1e-12));
    // the other way round it leaves over the 2.9 above the bump
    flow.velocity((x, y) -> -1, (x, y) -> 0);
    assertThat(new Stages(columns(0, 12), 3.9, 0, 20).carryOver.get(0))
        .isCloseTo(3 / 2.9, within(1e-12));
    assertThat(new Stages(columns(0, 12), 2, 20, 0).shares).isEmpty();
    assertThat(new Stages(columns(0, 12), 3.9, 7, 7).shares).isEmpty();
  }
}
