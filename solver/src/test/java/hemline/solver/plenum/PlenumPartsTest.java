package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Small parts of the balance by hand: bands carried through, headings, steps, curves. */
class PlenumPartsTest {
  private static void assertBand(
      Estimate e, double value, double grid, double cycle, double low, double high) {
    assertThat(e.value()).isCloseTo(value, within(1e-12));
    assertThat(e.numerical()).isCloseTo(grid, within(1e-12));
    assertThat(e.iteration()).isCloseTo(cycle, within(1e-12));
    assertThat(e.modelLow()).isCloseTo(low, within(1e-12));
    assertThat(e.modelHigh()).isCloseTo(high, within(1e-12));
    assertThat(e.trend()).isEqualTo(Trend.UNKNOWN);
  }

  /** 8 to 13 about 10: three and one tenth of the lesser side are grid and iteration. */
  @Test
  void bandsAreSharedOut() {
    Bands<Double> b = new Bands<>(10.0, 8.0, 13.0, 0.3, 0.1);
    double low = Math.sqrt(2 * 2 - 0.8 * 0.8);
    double high = Math.sqrt(3 * 3 - 0.8 * 0.8);
    assertBand(b.of(x -> x), 10, 0.6, 0.2, low, high);
    // a figure that falls with the leak: the ends change places
    assertBand(b.of(x -> -x), -10, 0.6, 0.2, high, low);
    // both ends on one side
    assertBand(b.of(12, 10, 11), 12, 0, 0, 2, 0);
    assertBand(b.of(9, 10, 11), 9, 0, 0, 0, 2);
    assertBand(b.map(x -> 2 * x).of(x -> x), 20, 1.2, 0.4, 2 * low, 2 * high);
  }

  /** A side without a point counts as far off as the value. */
  @Test
  void lostSidesCountInFull() {
    assertBand(
        new Bands<>(10.0, null, 13.0, 0.5, 0).of(x -> x),
        10,
        1.5,
        0,
        Math.sqrt(97.75),
        Math.sqrt(6.75));
    assertBand(new Bands<>(10.0, 8.0, null, 0, 0).of(x -> x), 10, 0, 0, 10, 0);
    assertThat(new Bands<>(1.0, null, 2.0, 0, 0).map(x -> x + 1).low()).isNull();
    assertThat(new Bands<>(1.0, 2.0, null, 0, 0).map(x -> x + 1).high()).isNull();
    assertThat(new Bands<>(1.0, 2.0, null, 0, 0).map(x -> x + 1).low()).isEqualTo(3.0);
  }

  @ParameterizedTest
  @CsvSource({
    "90, 0, nose down, -180",
    "90, 90, right side up, 90",
    "90, 180, nose up, 0",
    "90, 270, left side up, -90",
    "90, -90, left side up, -90",
    "90, 450, right side up, 90",
    "45, 150, nose 30\u00b0 left of uphill, 30",
    "45, 210, nose 30\u00b0 right of uphill, -30",
    "45, 20, nose 160\u00b0 left of uphill, 160",
  })
  void headings(double tilt, double downhill, String words, double nose) {
    Attitude a = new Attitude(Math.toRadians(tilt), Math.toRadians(downhill));
    assertThat(a.heading()).isEqualTo(words);
    assertThat(a.pulls()).isTrue();
    double found = Math.toDegrees(a.noseFromUphill());
    // straight down is told as half a turn to the left
    assertThat(found).isCloseTo(nose == -180 ? 180 : nose, within(1e-9));
    assertThat(a.x()).isCloseTo(Math.cos(Math.toRadians(downhill)), within(1e-12));
    assertThat(a.y()).isCloseTo(Math.sin(Math.toRadians(downhill)), within(1e-12));
  }

  /** On level ground and under a ceiling no heading counts; square ones have exact parts. */
  @Test
  void headingsThatDoNotCount() {
    assertThat(new Attitude(0, 1).heading()).isEqualTo("any");
    assertThat(new Attitude(Math.PI, 1).heading()).isEqualTo("any");
    assertThat(new Attitude(Math.PI, 1).pulls()).isFalse();
    assertThat(new Attitude(1, 0.5 * Math.PI).x()).isZero();
    assertThat(new Attitude(1, Math.PI).y()).isZero();
    assertThat(Attitude.noseUp(1).x()).isEqualTo(-1);
    assertThat(Attitude.noseUp(1).tilt()).isEqualTo(1);
  }

  @Test
  void stepsUnderEdgesAndCorners() {
    Crossing c = new Crossing(2e-3, 0.06, Set.of(1, 3), 2);
    assertThat(c.share(1, 0.24)).isCloseTo(0.25, within(1e-12));
    assertThat(c.share(3, 0.03)).isEqualTo(1);
    assertThat(c.share(0, 0.24)).isZero();
    assertThat(c.corner(2)).isEqualTo(1);
    assertThat(c.corner(1)).isZero();
  }

  /** Curves are alike by what they hold, and keep their own copies. */
  @Test
  void curves() {
    double[] flow = {0, 1};
    double[] pressure = {5, 4};
    FlowCurve curve = new FlowCurve(1, 2e-3, flow, pressure);
    FlowCurve same = new FlowCurve(1, 2e-3, flow.clone(), pressure.clone());
    flow[0] = 9;
    assertThat(curve).isEqualTo(same).hasSameHashCodeAs(same);
    assertThat(curve.flow()).containsExactly(0, 1);
    assertThat(
            List.of(
                new FlowCurve(2, 2e-3, same.flow(), same.pressure()),
                new FlowCurve(1, 3e-3, same.flow(), same.pressure()),
                new FlowCurve(1, 2e-3, flow, same.pressure()),
                new FlowCurve(1, 2e-3, same.flow(), flow)))
        .doesNotContain(curve);
    assertThat(curve.equals("curve")).isFalse();
  }
}
