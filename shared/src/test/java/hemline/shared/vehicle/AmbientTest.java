package hemline.shared.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SurroundingsTest {
  /** ISO 2533, from memory: 1.2250 kg/m³ at sea level, 898.75 hPa and 1.1117 kg/m³ at 1000 m. */
  @Test
  void isTheStandardAtmosphere() {
    assertThat(new Ambient(288.15, 0).air().density()).isCloseTo(1.2250, within(5e-5));
    Ambient high = new Ambient(281.65, 1000);
    assertThat(high.pressure()).isCloseTo(89875, within(3.0));
    assertThat(high.air().density()).isCloseTo(1.1117, within(1e-4));
  }

  /** Valve: opens at preload over seat, passes its curtain, at most its seat. */
  @Test
  void aValveOpensByItsSpring() {
    ReliefValve valve = new ReliefValve(4e-4, 200, 0.2, 20e-3, 0.62, 0.01, 0.1);
    assertThat(valve.openingSuction()).isCloseTo(500, within(1e-9));
    assertThat(valve.flow(500, 1.2)).isZero();
    assertThat(valve.lift(1000)).isCloseTo(1e-3, within(1e-12));
    double curtain = Math.PI * Math.sqrt(4 * 4e-4 / Math.PI) * 1e-3;
    assertThat(valve.flow(1000, 1.2))
        .isCloseTo(0.62 * curtain * Math.sqrt(2000 / 1.2), within(1e-9));
    assertThat(valve.flow(1e5, 1.2)).isCloseTo(0.62 * 4e-4 * Math.sqrt(2e5 / 1.2), within(1e-9));
  }
}
