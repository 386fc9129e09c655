package hemline.solver.rig;

import java.util.List;

/**
 * How much readings of one point differ: pooled standard deviation of single readings as a share of
 * their mean (JCGM 100:2008, 4.2.4).
 *
 * @param share 0 where nothing was repeated
 * @param degreesOfFreedom infinite where nothing was repeated
 */
record Scatter(double share, double degreesOfFreedom) {
  static final Scatter NONE = new Scatter(0, Double.POSITIVE_INFINITY);

  /** Pools groups of values: s² = Σ Σ (x − x̄)² / x̄² over Σ (n − 1). */
  static Scatter of(List<double[]> groups) {
    double sum = 0;
    int freedom = 0;
    for (double[] group : groups) {
      double mean = 0;
      for (double value : group) {
        mean += value / group.length;
      }
      for (double value : group) {
        sum += (value / mean - 1) * (value / mean - 1);
      }
      freedom += group.length - 1;
    }
    return freedom == 0 ? NONE : new Scatter(Math.sqrt(sum / freedom), freedom);
  }
}
