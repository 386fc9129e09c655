package hemline.solver.refine;

import static hemline.solver.refine.TransitionFade.laminarShare;
import static hemline.solver.refine.TransitionFade.weight;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.flow.Closure;
import org.junit.jupiter.api.Test;

class TransitionFadeTest {

  @Test
  void laminarShareFallsWithoutAStep() {
    assertThat(laminarShare(0)).isEqualTo(1);
    assertThat(laminarShare(500)).isEqualTo(1);
    assertThat(laminarShare(Math.sqrt(500 * 10_000))).isCloseTo(0.125, within(1e-12));
    assertThat(laminarShare(1000)).isBetween(0.4, 0.6);
    assertThat(laminarShare(-10_000)).isEqualTo(0);
    double last = 1;
    for (double re = 400; re < 12_000; re *= 1.01) {
      double share = laminarShare(re);
      assertThat(share).isBetween(last - 0.015, last);
      last = share;
    }
  }

  @Test
  void bandsHoldTheMeanOfBothAnswersByTheirShares() {
    double laminar = 0.6;
    double turbulent = 0.75;
    for (double re = 501; re < 10_000; re *= 1.1) {
      double share = laminarShare(re);
      double mean = share * laminar + (1 - share) * turbulent;
      double down = weight(Closure.SA, Closure.LAMINAR, re) * (turbulent - laminar);
      double up = weight(Closure.LAMINAR, Closure.SA, re) * (turbulent - laminar);
      assertThat(turbulent - down).isLessThanOrEqualTo(mean + 1e-12);
      assertThat(laminar + up).isGreaterThanOrEqualTo(mean - 1e-12);
    }
    assertThat(weight(Closure.SA, Closure.SST, 700)).isEqualTo(1);
  }
}
