package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Sums and ratios of leaks, grid by grid, by hand. */
class LeakSeriesTest {
  private static final double NU = 1e-5;

  private static LeakSeries leaks(double... q) {
    GridRun[] runs = new GridRun[q.length];
    for (int k = 0; k < q.length; k++) {
      runs[k] = Double.isNaN(q[k]) ? MadeUpGrids.failed(k) : MadeUpGrids.leak(k, q[k]);
    }
    return LeakSeries.of(List.of(runs), NU);
  }

  private static GridRun cycling(int place, double q, double spread) {
    return MadeUpGrids.run(place, SolveStatus.UNSTEADY, MadeUpGrids.figures(q), spread);
  }

  @Test
  void readsLeakSizeAndSpread() {
    LeakSeries series =
        LeakSeries.of(
            List.of(MadeUpGrids.leak(0, -0.03), cycling(1, -0.04, 0.002), MadeUpGrids.failed(2)),
            NU);
    assertThat(series.places()).isEqualTo(3);
    assertThat(series.leak(0)).isEqualTo(-0.03);
    assertThat(series.leak(1)).isEqualTo(-0.04);
    assertThat(series.leak(2)).isNaN();
    assertThat(series.spread(0)).isZero();
    assertThat(series.spread(1)).isCloseTo(0.002, within(1e-15));
    assertThat(series.spread(2)).isZero();
    // cells 4 : 9 : 16, so sizes 1 : 2/3 : 1/2
    assertThat(series.size(0)).isEqualTo(1);
    assertThat(series.size(1)).isCloseTo(2.0 / 3, within(1e-15));
    assertThat(series.size(2)).isCloseTo(0.5, within(1e-15));
    assertThat(series.finest()).isEqualTo(-0.04);
    assertThat(series.usable()).isTrue();
    assertThat(leaks(Double.NaN, Double.NaN).usable()).isFalse();
    assertThat(leaks(Double.NaN).finest()).isNaN();
  }

  /** Grids that never came to be have the sizes that they would have had. */
  @Test
  void sizesOfLostGrids() {
    GridRun lost = new GridRun(0, 0, SolveStatus.FAILED, 0, 0, MadeUpGrids.figures(1), 0);
    LeakSeries series = LeakSeries.of(List.of(lost, lost, lost), NU);
    assertThat(series.size(0)).isEqualTo(1);
    assertThat(series.size(1)).isCloseTo(2.0 / 3, within(1e-15));
    assertThat(series.size(2)).isCloseTo(0.5, within(1e-15));
  }

  /** A gap Reynolds number of 1e-9 is round-off. */
  @Test
  void roundOffIsNoLeak() {
    assertThat(leaks(0.9e-9 * NU).leak(0)).isNaN();
    assertThat(leaks(1.1e-9 * NU).leak(0)).isEqualTo(1.1e-9 * NU);
    assertThat(leaks(-1.1e-9 * NU).leak(0)).isEqualTo(-1.1e-9 * NU);
  }

  /** Leaks add with their weights, independent cycling as squares. */
  @Test
  void sums() {
    LeakSeries a = LeakSeries.of(List.of(cycling(0, 0.02, 0.003), cycling(1, 0.021, 0.003)), NU);
    LeakSeries b = LeakSeries.of(List.of(cycling(0, 0.01, 0.002)), NU);
    LeakSeries sum = LeakSeries.sum(List.of(a, b), List.of(1.0, 2.0));
    assertThat(sum.places()).isEqualTo(1);
    assertThat(sum.leak(0)).isCloseTo(0.04, within(1e-15));
    assertThat(sum.spread(0)).isCloseTo(0.005, within(1e-15));
    assertThat(sum.size(0)).isEqualTo(1);
    assertThat(LeakSeries.sum(List.of(a, leaks(Double.NaN, 0.01)), List.of(1.0, 1.0)).leak(0))
        .isNaN();
  }

  @Test
  void ratiosPlaceByPlace() {
    LeakSeries a = leaks(0.03, -0.02, 0.05);
    LeakSeries b = leaks(0.06, 0.04, Double.NaN);
    assertThat(a.over(b, 0)).isCloseTo(0.5, within(1e-15));
    // opposite ways, none, and beyond the end
    assertThat(a.over(b, 1)).isNaN();
    assertThat(a.over(b, 2)).isNaN();
    assertThat(a.over(leaks(0.06), 1)).isNaN();
    assertThat(leaks(0.06).over(a, 1)).isNaN();
    assertThat(leaks(-0.06).over(leaks(-0.03), 0)).isCloseTo(2, within(1e-15));
  }

  @Test
  void ratioToItselfIsOne() {
    LeakSeries a = leaks(0.03, 0.04);
    assertThat(a.over(a)).isEqualTo(Estimate.exact(1));
    assertThat(a.over(leaks(0.03, 0.04))).isEqualTo(Estimate.exact(1));
    assertThat(a).isEqualTo(leaks(0.03, 0.04)).hasSameHashCodeAs(leaks(0.03, 0.04));
    assertThat(a).isNotEqualTo(leaks(0.03, 0.041));
    LeakSeries none = leaks(Double.NaN);
    assertThat(none.over(none)).isNull();
    assertThat(a.over(leaks(-0.03, -0.04))).isNull();
    assertThat(a.over(none)).isNull();
  }

  /** An error that both leaks share cancels; noise adds as squares, relative to the leaks. */
  @Test
  void estimatesOfRatios() {
    LeakSeries a = leaks(0.033, 0.0318, 0.031);
    LeakSeries b = leaks(0.066, 0.0636, 0.062);
    Estimate same = Objects.requireNonNull(a.over(b));
    assertThat(same.value()).isCloseTo(0.5, within(1e-12));
    assertThat(same.numerical()).isLessThan(1e-10);
    LeakSeries noisy = LeakSeries.of(List.of(cycling(0, 0.02, 0.0006)), NU);
    LeakSeries other = LeakSeries.of(List.of(cycling(0, 0.01, 0.0004)), NU);
    Estimate one = Objects.requireNonNull(noisy.over(other));
    assertThat(one.value()).isCloseTo(2, within(1e-12));
    // 3 % and 4 % of the ratio of 2
    assertThat(one.iteration()).isCloseTo(2 * 0.05, within(1e-12));
    // the same as the estimate of the ratios themselves over the mean sizes
    LeakSeries c = leaks(0.030, 0.029, 0.0285);
    LeakSeries d = leaks(0.050, 0.050, 0.050);
    Estimate ratio = Objects.requireNonNull(c.over(d));
    Estimate direct =
        ThreeGrid.estimate(
            new GridValues(
                new double[] {0.6, 0.58, 0.57}, new double[] {1, 2.0 / 3, 0.5}, new double[3]),
            1);
    assertThat(ratio.value()).isCloseTo(direct.value(), within(1e-12));
    assertThat(ratio.numerical()).isCloseTo(direct.numerical(), within(1e-12));
    assertThat(ratio.trend()).isEqualTo(direct.trend());
  }
}
