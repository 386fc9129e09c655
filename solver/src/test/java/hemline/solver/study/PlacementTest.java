package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.solver.study.Placement.Decider;
import hemline.solver.study.Placement.Group;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

final class PlacementTest {
  private static Estimate ratio(double value, double grid, double modelLow, double modelHigh) {
    return new Estimate(value, grid, 0, modelLow, modelHigh, Trend.MONOTONE);
  }

  @Test
  void groupsByTheBand() {
    assertThat(Placement.of(ratio(0.95, 0.02, 0.01, 0.01)).group()).isEqualTo(Group.LESS);
    assertThat(Placement.of(ratio(1.05, 0.02, 0.01, 0.01)).group()).isEqualTo(Group.MORE);
    assertThat(Placement.of(ratio(0.99, 0.02, 0.01, 0.01)).group()).isEqualTo(Group.SAME);
    assertThat(Placement.of(ratio(0.95, 0.2, 0, 0)).group()).isEqualTo(Group.UNCERTAIN);
  }

  @Test
  void tellsWhatWouldDecide() {
    assertThat(Placement.of(ratio(0.97, 0.04, 0.01, 0.01)).decider()).isEqualTo(Decider.FINER_MESH);
    assertThat(Placement.of(ratio(0.97, 0.01, 0.01, 0.04)).decider())
        .isEqualTo(Decider.MEASUREMENT);
    assertThat(Placement.of(ratio(0.9, 0.01, 0.01, 0.01)).decider()).isEqualTo(Decider.NONE);
    assertThat(Placement.of(Estimate.exact(1)).decider()).isEqualTo(Decider.NONE);
  }

  /** Table of the normal distribution: 0.97725 below two standard uncertainties, 0.84134 one. */
  @Test
  void evenBandsGiveTheNormalDistribution() {
    assertThat(Placement.probabilityBelow(ratio(0.98, 0.02, 0, 0), 1))
        .isCloseTo(0.97725, within(1e-5));
    assertThat(Placement.probabilityBelow(ratio(0.99, 0.02, 0, 0), 1))
        .isCloseTo(0.84134, within(1e-5));
    assertThat(Placement.probabilityBelow(ratio(1.01, 0.02, 0, 0), 1))
        .isCloseTo(0.15866, within(1e-5));
    assertThat(Placement.probabilityBelow(Estimate.exact(1), 1)).isEqualTo(0.5);
    assertThat(Placement.probabilityBelow(Estimate.exact(0.9), 1)).isEqualTo(1);
  }

  /** Draws from both halves: a side is drawn with the share of its width. */
  @Test
  void lopsidedBandsAgreeWithSampling() {
    Estimate e = ratio(0.99, 0.01, 0, 0.03);
    SplittableRandom random = new SplittableRandom(7);
    int below = 0;
    int draws = 200_000;
    for (int k = 0; k < draws; k++) {
      double up = (e.high() - e.value()) / 2;
      double down = (e.value() - e.low()) / 2;
      double normal = Math.abs(random.nextGaussian());
      double x = random.nextDouble() < up / (up + down) ? normal * up : -normal * down;
      below += e.value() + x < 1 ? 1 : 0;
    }
    assertThat(Placement.probabilityBelow(e, 1)).isCloseTo((double) below / draws, within(0.004));
  }
}
