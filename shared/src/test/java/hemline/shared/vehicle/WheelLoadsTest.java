package hemline.shared.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class WheelLoadsTest {
  private static final List<Axle> TWO =
      List.of(new Axle("front", 0.3, 0.4, 2e4, true), new Axle("rear", -0.1, 0.4, 3e4, true));

  /** Two axles carry by the lever rule, whatever their springs. */
  @Test
  void sharesByTheLeverRule() {
    double[] wheel = WheelLoads.under(TWO, new double[] {100, 100 * 0.1, 0});
    assertThat(wheel[0] + wheel[1]).isCloseTo(50, within(1e-10));
    assertThat(wheel[2] + wheel[3]).isCloseTo(50, within(1e-10));
    double[] left = WheelLoads.under(TWO, new double[] {100, 0, 100 * 0.2});
    assertThat(left[0] + left[2]).isCloseTo(100, within(1e-10));
    assertThat(left[1] + left[3]).isCloseTo(0, within(1e-10));
    assertThat(left[0] + left[1]).isCloseTo(25, within(1e-10));
  }

  @Test
  void knowsWhatStands() {
    assertThat(WheelLoads.stand(TWO)).isTrue();
    assertThat(WheelLoads.stand(TWO.subList(0, 1))).isFalse();
    assertThat(
            WheelLoads.stand(
                List.of(new Axle("a", 0.1, 0, 1e4, true), new Axle("b", -0.1, 0, 1e4, true))))
        .isFalse();
    assertThat(
            WheelLoads.stand(
                List.of(new Axle("a", 0.1, 0, 1e4, true), new Axle("b", -0.1, 0.2, 1e4, true))))
        .isTrue();
  }
}
