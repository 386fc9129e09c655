package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LeakTableTest {
  private static final List<Double> GAPS = List.of(1e-3, 1.7e-3, 3e-3);
  private static final List<Double> SUCTIONS = List.of(100.0, 300.0, 900.0);

  private static LeakTable table(double factor) {
    List<LeakPoint> points = new ArrayList<>();
    for (double h : GAPS) {
      for (double p : SUCTIONS) {
        double c = factor * value(h, p);
        points.add(
            Machines.point(
                h, p, new Estimate(c, 0.01, 0.002, 0.003, 0.004, Estimate.Trend.MONOTONE)));
      }
    }
    return new LeakTable(GAPS, SUCTIONS, points);
  }

  private static double value(double h, double p) {
    return 0.6 + 0.05 * Math.log(h / 1e-3) + 0.02 * Math.log(p / 100);
  }

  /** Half a band below: what grid and iteration leave, more beyond the points, and the model. */
  private static double down(double beyond) {
    return Math.hypot(0.012 + beyond, 0.003);
  }

  private static double up(double beyond) {
    return Math.hypot(0.012 + beyond, 0.004);
  }

  private static double at(LeakTable t, double h, double p, Side side) {
    return t.discharge(Math.log(h), Math.log(p), side);
  }

  @Test
  void keepsItsPoints() {
    LeakTable t = table(1);
    for (double h : GAPS) {
      for (double p : SUCTIONS) {
        assertThat(at(t, h, p, Side.VALUE)).isCloseTo(value(h, p), within(1e-12));
        assertThat(at(t, h, p, Side.LOW)).isCloseTo(value(h, p) - down(0), within(1e-12));
        assertThat(at(t, h, p, Side.HIGH)).isCloseTo(value(h, p) + up(0), within(1e-12));
        assertThat(t.holds(h, p)).isTrue();
      }
    }
  }

  @Test
  void isExactForWhatIsStraightInTheLogarithms() {
    LeakTable t = table(1);
    for (double h = 1e-3; h < 3e-3; h *= 1.05) {
      for (double p = 100; p < 900; p *= 1.1) {
        assertThat(at(t, h, p, Side.VALUE)).isCloseTo(value(h, p), within(1e-9));
      }
    }
  }

  @Test
  void widensBeyondItsPoints() {
    LeakTable t = table(1);
    assertThat(t.holds(0.5e-3, 300)).isFalse();
    assertThat(t.holds(2e-3, 1500)).isFalse();
    assertThat(at(t, 0.5e-3, 300, Side.VALUE)).isCloseTo(value(1e-3, 300), within(1e-9));
    assertThat(at(t, 0.5e-3, 300, Side.HIGH) - at(t, 0.5e-3, 300, Side.VALUE))
        .isCloseTo(up(0.05 * Math.log(2)), within(1e-6));
    assertThat(at(t, 2e-3, 1800, Side.VALUE) - at(t, 2e-3, 1800, Side.LOW))
        .isCloseTo(down(0.02 * Math.log(2)), within(1e-6));
    Estimate e = t.estimate(Math.log(0.5e-3), Math.log(300));
    assertThat(e.high()).isCloseTo(at(t, 0.5e-3, 300, Side.HIGH), within(1e-12));
  }

  @Test
  void addsWhatCurvesAndStraightLinesDisagreeBy() {
    List<LeakPoint> points = new ArrayList<>();
    for (double h : GAPS) {
      for (int j = 0; j < 3; j++) {
        points.add(Machines.point(h, SUCTIONS.get(j), Estimate.exact(j == 0 ? 0.5 : 0.7)));
      }
    }
    LeakTable t = new LeakTable(GAPS, SUCTIONS, points);
    double v = at(t, 2e-3, 170, Side.VALUE);
    assertThat(v).isBetween(0.5, 0.7);
    assertThat(at(t, 2e-3, 170, Side.HIGH)).isGreaterThan(v + 0.005);
    assertThat(at(t, 2e-3, 500, Side.VALUE)).isCloseTo(0.7, within(1e-9));
  }

  @Test
  void takesTheDirectionOfTheEdge() {
    LeakLaw law =
        new LeakLaw(table(1), new LeakLaw.Moving(table(1), table(0.9), table(1.02), table(1.2)));
    double x = Math.log(2e-3);
    double y = Math.log(400);
    double rest = value(2e-3, 400);
    assertThat(law.discharge(x, y, false, 1, Side.VALUE)).isCloseTo(rest, within(1e-9));
    assertThat(law.discharge(x, y, true, 1, Side.VALUE)).isCloseTo(1.2 * rest, within(1e-9));
    assertThat(law.discharge(x, y, true, 0, Side.VALUE)).isCloseTo(1.02 * rest, within(1e-9));
    assertThat(law.discharge(x, y, true, -1, Side.VALUE)).isCloseTo(0.9 * rest, within(1e-9));
    // in between a parabola, its distance from straight lines in the band
    double slanted = law.discharge(x, y, true, 0.5, Side.VALUE) / rest;
    assertThat(slanted).isCloseTo(1.02 + 0.5 * 0.15 + 0.25 * 0.03, within(1e-9));
    assertThat(law.discharge(x, y, true, 0.5, Side.HIGH) / rest)
        .isGreaterThan(slanted + Math.abs(1.11 - slanted) - 1e-9);
  }

  @Test
  void laysLaddersOverARange() {
    assertThat(LeakLattice.ladder(1e-3, 3e-3, 1e-3, Math.sqrt(3)))
        .containsExactly(1e-3, 1.732e-3, 3e-3);
    assertThat(LeakLattice.ladder(200, 850, 100, 3)).containsExactly(100.0, 300.0, 900.0);
    assertThat(LeakLattice.ladder(500, 500, 100, 3)).containsExactly(300.0, 900.0);
    assertThat(LeakLattice.ladder(300, 300, 100, 3)).containsExactly(300.0, 900.0);
    List<Double> wide = LeakLattice.ladder(3e-4, 1.5e-2, 1e-3, Math.sqrt(3));
    assertThat(wide.get(0)).isLessThanOrEqualTo(3e-4 * 1.05);
    assertThat(wide.get(wide.size() - 1)).isGreaterThanOrEqualTo(1.5e-2 / 1.05);
  }

  /** Beyond the largest gap and the smallest suction the value stays, the band grows likewise. */
  @Test
  void widensOnTheOtherSidesToo() {
    LeakTable t = table(1);
    assertThat(at(t, 6e-3, 300, Side.VALUE)).isCloseTo(value(3e-3, 300), within(1e-9));
    assertThat(at(t, 6e-3, 300, Side.HIGH) - at(t, 6e-3, 300, Side.VALUE))
        .isCloseTo(up(0.05 * Math.log(2)), within(1e-6));
    assertThat(at(t, 6e-3, 300, Side.VALUE) - at(t, 6e-3, 300, Side.LOW))
        .isCloseTo(down(0.05 * Math.log(2)), within(1e-6));
    assertThat(at(t, 2e-3, 50, Side.VALUE)).isCloseTo(value(2e-3, 100), within(1e-9));
    assertThat(at(t, 2e-3, 50, Side.HIGH) - at(t, 2e-3, 50, Side.VALUE))
        .isCloseTo(up(0.02 * Math.log(2)), within(1e-6));
    assertThat(at(t, 2e-3, 1800, Side.VALUE)).isCloseTo(value(2e-3, 900), within(1e-9));
    // both beyond: both changes, and no more than a half in all
    assertThat(at(t, 6e-3, 1800, Side.HIGH) - at(t, 6e-3, 1800, Side.VALUE))
        .isCloseTo(up(0.07 * Math.log(2)), within(1e-6));
    assertThat(at(t, 6e3, 300, Side.HIGH) - at(t, 6e3, 300, Side.VALUE))
        .isCloseTo(up(0.5), within(1e-6));
  }

  /** The parts of a band as they were given, the lift's band as half its width. */
  @Test
  void keepsThePartsOfTheBands() {
    List<LeakPoint> points = new ArrayList<>();
    for (double h : GAPS) {
      for (double p : SUCTIONS) {
        Estimate c = new Estimate(0.6, 0.01, 0.002, 0.003, 0.004, Estimate.Trend.MONOTONE);
        points.add(
            Machines.point(h, p, c)
                .with(c, new Estimate(-2e-3, 1e-4, 0, 1e-4, 3e-4, Estimate.Trend.MONOTONE)));
      }
    }
    LeakTable t = new LeakTable(GAPS, SUCTIONS, points);
    double x = Math.log(2e-3);
    double y = Math.log(200);
    Estimate e = t.estimate(x, y);
    assertThat(e.numerical()).isCloseTo(0.01, within(1e-12));
    assertThat(e.iteration()).isCloseTo(0.002, within(1e-12));
    assertThat(e.modelLow()).isCloseTo(0.003, within(1e-12));
    assertThat(e.modelHigh()).isCloseTo(0.004, within(1e-12));
    double wide = 0.5e-4 * (Math.sqrt(2) + Math.sqrt(10));
    assertThat(t.lift(x, y, Side.VALUE)).isCloseTo(-2e-3, within(1e-12));
    assertThat(t.lift(x, y, Side.LOW)).isCloseTo(-2e-3 - wide, within(1e-12));
    assertThat(t.lift(x, y, Side.HIGH)).isCloseTo(-2e-3 + wide, within(1e-12));
  }

  /** One gap and one suction make a table too, the same everywhere. */
  @Test
  void onePointIsATable() {
    LeakTable t =
        new LeakTable(
            List.of(2e-3), List.of(300.0), List.of(Machines.point(2e-3, 300, Estimate.exact(0.6))));
    assertThat(at(t, 2e-3, 300, Side.VALUE)).isEqualTo(0.6);
    assertThat(at(t, 5e-3, 900, Side.HIGH)).isEqualTo(0.6);
    assertThat(t.leastGap()).isCloseTo(2e-3, within(1e-15));
  }
}
