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
    assertThat(t.estimate(1e-4, 300).low()).isCloseTo(0.7 * 0.01, within(1e-12));
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
}
