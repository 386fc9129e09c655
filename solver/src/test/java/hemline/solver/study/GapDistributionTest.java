package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

final class GapDistributionTest {
  @Test
  void evenSortsAndDropsRepeats() {
    GapDistribution even = GapDistribution.even(List.of(3e-3, 1e-3, 3e-3));
    assertThat(even.gaps()).containsExactly(1e-3, 3e-3);
    assertThat(even.weights()).containsExactly(0.5, 0.5);
    assertThat(even.uniform()).isTrue();
  }

  @Test
  void weightsAreScaled() {
    GapDistribution d = GapDistribution.of(List.of(1e-3, 2e-3, 3e-3), List.of(1.0, 2.0, 1.0));
    assertThat(d.weights()).containsExactly(0.25, 0.5, 0.25);
    assertThat(d.uniform()).isFalse();
  }

  /** A leak that is straight between the gaps has the mean of the heights themselves. */
  @Test
  void heightsWeighAsStraightInterpolationWouldHaveIt() {
    List<Double> gaps = List.of(1e-3, 2e-3, 4e-3);
    List<Double> heights = List.of(1e-3, 1.25e-3, 2e-3, 3e-3, 4e-3);
    GapDistribution d = GapDistribution.ofHeights(gaps, heights);
    assertThat(d.weights().get(0)).isCloseTo(1.75 / 5, within(1e-12));
    assertThat(d.weights().get(1)).isCloseTo(1.75 / 5, within(1e-12));
    assertThat(d.weights().get(2)).isCloseTo(1.5 / 5, within(1e-12));
    double mean = 0;
    for (int g = 0; g < 3; g++) {
      mean += d.weights().get(g) * (5 + 3 * gaps.get(g));
    }
    double asked = heights.stream().mapToDouble(h -> 5 + 3 * h).average().orElseThrow();
    assertThat(mean).isCloseTo(asked, within(1e-12));
  }

  @Test
  void refusesWhatIsNoDistribution() {
    assertThat(GapDistribution.check("gaps", 2, List.of(1.0))).hasSize(1);
    assertThat(GapDistribution.check("gaps", 1, List.of(-1.0))).hasSize(1);
    assertThat(GapDistribution.check("gaps", 1, List.of(0.0))).hasSize(1);
    assertThatThrownBy(() -> new GapDistribution(List.of(1e-3), List.of(0.5)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new GapDistribution(List.of(2e-3, 1e-3), List.of(0.5, 0.5)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
