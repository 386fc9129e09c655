package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ThinAndMovingLeakTest {
  private static final List<Double> GAPS = List.of(1e-3, 3e-3);
  private static final List<Double> SUCTIONS = List.of(100.0, 900.0);

  private static LeakTable table(double thin, double wide, double thinLift, double wideLift) {
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : GAPS) {
      for (double suction : SUCTIONS) {
        boolean first = gap == GAPS.get(0);
        Estimate c = Estimate.exact(first ? thin : wide);
        points.add(
            Machines.point(gap, suction, c).with(c, Estimate.exact(first ? thinLift : wideLift)));
      }
    }
    return new LeakTable(GAPS, SUCTIONS, points);
  }

  /** A film between plates leaks h³, so C_d ~ h²: at a tenth of the gap a hundredth of it. */
  @Test
  void belowTheSolvedGapsTheBandReachesToAFilm() {
    LeakTable t = table(0.7, 0.7, -2e-3, -2e-3);
    double x = Math.log(1e-4);
    double y = Math.log(300);
    assertThat(t.discharge(x, y, Side.VALUE)).isCloseTo(0.7, within(1e-12));
    assertThat(t.discharge(x, y, Side.LOW)).isCloseTo(0.7 * 0.01, within(1e-12));
    assertThat(t.estimate(x, y).low()).isCloseTo(0.7 * 0.01, within(1e-12));
    assertThat(t.discharge(Math.log(1e-3), y, Side.LOW)).isCloseTo(0.7, within(1e-12));
  }

  /** Lift of −2 mm at 1 mm and −4 mm at 3 mm: on the same slope it would be 0.09 mm at 0.1 mm. */
  @Test
  void theLiftHasABandBeyondTheSolvedGaps() {
    LeakTable t = table(0.7, 0.7, -2e-3, -4e-3);
    double x = Math.log(1e-4);
    double y = Math.log(300);
    double change = 2e-3 / Math.log(3) * Math.log(10);
    assertThat(t.lift(x, y, Side.VALUE)).isCloseTo(-2e-3, within(1e-12));
    assertThat(t.lift(x, y, Side.HIGH)).isCloseTo(-2e-3 + change, within(1e-9));
    assertThat(t.lift(x, y, Side.LOW)).isCloseTo(-2e-3 - change, within(1e-9));
  }

  /** A moving ground changes the lips' forces as the sections solved for it say. */
  @Test
  void liftsFollowTheMovingGround() {
    LeakLaw law =
        new LeakLaw(
            table(0.7, 0.7, -1e-2, -1e-2),
            new LeakLaw.Moving(
                table(0.7, 0.7, -1e-2, -1e-2),
                table(0.7, 0.7, -8e-3, -8e-3),
                table(0.7, 0.7, -1e-2, -1e-2),
                table(0.7, 0.7, -1.4e-2, -1.4e-2)));
    double x = Math.log(2e-3);
    double y = Math.log(300);
    assertThat(law.lift(x, y, false, 1, Side.VALUE)).isCloseTo(-1e-2, within(1e-12));
    assertThat(law.lift(x, y, true, 1, Side.VALUE)).isCloseTo(-1.4e-2, within(1e-12));
    assertThat(law.lift(x, y, true, -1, Side.VALUE)).isCloseTo(-8e-3, within(1e-12));
    assertThat(law.lift(x, y, true, 0, Side.VALUE)).isCloseTo(-1e-2, within(1e-12));
  }

  private static LeakTable even(double c, double width) {
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : GAPS) {
      for (double suction : SUCTIONS) {
        points.add(
            Machines.point(gap, suction, new Estimate(c, width, 0, 0, 0, Estimate.Trend.MONOTONE)));
      }
    }
    return new LeakTable(GAPS, SUCTIONS, points);
  }

  /**
   * Leaks over that at rest 0.9 rearwards, 1.02 along and 1.2 forwards. Half-way forwards the
   * parabola gives 1.1025 and straight lines 1.11, half-way rearwards 0.9525 and 0.96; what the
   * moving tables are surer of less than the still one, weighed by direction, comes to the band.
   */
  @Test
  void bandsBetweenTheDirections() {
    LeakLaw law =
        new LeakLaw(
            even(0.7, 0.01),
            new LeakLaw.Moving(
                even(0.7, 0.01), even(0.63, 0.03), even(0.714, 0.02), even(0.84, 0.05)));
    double x = Math.log(2e-3);
    double y = Math.log(300);
    double still = 0.01 / 0.7;
    double ahead = 0.0075 + 0.5 * 0.05 / 0.84 + 0.5 * 0.02 / 0.714 - still;
    assertThat(law.discharge(x, y, true, 0.5, Side.VALUE)).isCloseTo(0.7 * 1.1025, within(1e-9));
    assertThat(law.discharge(x, y, true, 0.5, Side.LOW))
        .isCloseTo(0.69 * (1.1025 - ahead), within(1e-9));
    assertThat(law.discharge(x, y, true, 0.5, Side.HIGH))
        .isCloseTo(0.71 * (1.1025 + ahead), within(1e-9));
    double back = 0.0075 + 0.5 * 0.03 / 0.63 + 0.5 * 0.02 / 0.714 - still;
    assertThat(law.discharge(x, y, true, -0.5, Side.VALUE)).isCloseTo(0.7 * 0.9525, within(1e-9));
    assertThat(law.discharge(x, y, true, -0.5, Side.LOW))
        .isCloseTo(0.69 * (0.9525 - back), within(1e-9));
    assertThat(law.discharge(x, y, true, -0.5, Side.HIGH))
        .isCloseTo(0.71 * (0.9525 + back), within(1e-9));
    // straight ahead and beyond: the front's own band
    double front = 0.05 / 0.84 - still;
    for (double facing : new double[] {1, 1.3}) {
      assertThat(law.discharge(x, y, true, facing, Side.LOW))
          .isCloseTo(0.69 * (1.2 - front), within(1e-9));
    }
    assertThat(law.discharge(x, y, true, -1.3, Side.LOW))
        .isCloseTo(0.69 * (0.9 - (0.03 / 0.63 - still)), within(1e-9));
    assertThat(law.discharge(x, y, false, 0.5, Side.LOW)).isCloseTo(0.69, within(1e-9));
    // tables surer than the one at rest take nothing away
    LeakLaw sure =
        new LeakLaw(
            even(0.7, 0.1),
            new LeakLaw.Moving(even(0.7, 0.1), even(0.63, 0), even(0.714, 0), even(0.84, 0)));
    assertThat(sure.discharge(x, y, true, 1, Side.LOW)).isCloseTo(0.6 * 1.2, within(1e-9));
  }

  /** Lifts change by 2 mm rearwards and −4 mm forwards: half-way −1.75 and 1.25 mm, ± 0.25 mm. */
  @Test
  void bandsOfTheLiftBetweenTheDirections() {
    LeakTable rest = table(0.7, 0.7, -1e-2, -1e-2);
    LeakLaw law =
        new LeakLaw(
            rest,
            new LeakLaw.Moving(
                rest, table(0.7, 0.7, -8e-3, -8e-3), rest, table(0.7, 0.7, -1.4e-2, -1.4e-2)));
    double x = Math.log(2e-3);
    double y = Math.log(300);
    assertThat(law.lift(x, y, true, 0.5, Side.VALUE)).isCloseTo(-1.175e-2, within(1e-12));
    assertThat(law.lift(x, y, true, 0.5, Side.LOW)).isCloseTo(-1.2e-2, within(1e-12));
    assertThat(law.lift(x, y, true, 0.5, Side.HIGH)).isCloseTo(-1.15e-2, within(1e-12));
    assertThat(law.lift(x, y, true, -0.5, Side.VALUE)).isCloseTo(-0.875e-2, within(1e-12));
    assertThat(law.lift(x, y, true, -0.5, Side.LOW)).isCloseTo(-0.9e-2, within(1e-12));
    assertThat(law.lift(x, y, true, -0.5, Side.HIGH)).isCloseTo(-0.85e-2, within(1e-12));
  }
}
