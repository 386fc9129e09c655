package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

final class TicksTest {

  @Test
  void roundNumbersInside() {
    Ticks ticks = Ticks.within(-730, 12, 6);
    assertThat(ticks.values())
        .containsExactly(-700.0, -600.0, -500.0, -400.0, -300.0, -200.0, -100.0, 0.0);
    assertThat(ticks.decimals()).isZero();
    assertThat(Ticks.within(0.892, 1.03, 4).decimals()).isEqualTo(2);
  }

  @Test
  void anyRangeGetsAFewTicks() {
    for (long seed = 1; seed <= 300; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double low = random.nextDouble(-1000, 1000);
      double range = Math.pow(10, random.nextDouble(-3, 5));
      Ticks ticks = Ticks.within(low, low + range, 6);
      assertThat(ticks.values().size()).as("seed %d", seed).isBetween(3, 11);
      assertThat(ticks.values())
          .allMatch(t -> t >= low - 1e-6 * range && t <= low + 1.000001 * range);
    }
  }

  @Test
  void emptyRangeIsRefused() {
    assertThatThrownBy(() -> Ticks.within(1, 1, 5)).isInstanceOf(IllegalArgumentException.class);
  }
}
