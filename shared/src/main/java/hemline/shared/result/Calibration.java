package hemline.shared.result;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;

/**
 * What a measurement taught of the predictions of one lip: C_d = factor × predicted + offset.
 *
 * @param lip name
 * @param outline digest of the lip's resolved outline
 * @param rig name of the rig file that was measured
 * @param invented true where nobody measured
 * @param points measured, at least 1
 * @param factor positive
 * @param factorUncertainty standard uncertainty of it
 * @param offset of the discharge coefficient
 * @param offsetUncertainty standard uncertainty of it
 * @param correlation of factor and offset, −1 to 1
 * @param rest standard deviation of the discharge coefficient that is left unexplained
 * @param gapLow smallest gap measured, m
 * @param gapHigh largest gap measured, m
 * @param suctionLow smallest suction measured, Pa
 * @param suctionHigh largest suction measured, Pa
 */
public record Calibration(
    String lip,
    String outline,
    String rig,
    boolean invented,
    int points,
    double factor,
    double factorUncertainty,
    double offset,
    double offsetUncertainty,
    double correlation,
    double rest,
    double gapLow,
    double gapHigh,
    double suctionLow,
    double suctionHigh) {
  /** Quantile of the normal distribution that leaves 2.5 % on either side. */
  private static final double WIDE = 1.959964;

  private static final double SLACK = 1.05;

  public Calibration {
    if (!(factor > 0)
        || points < 1
        || !(factorUncertainty >= 0 && offsetUncertainty >= 0 && rest >= 0)
        || !(Math.abs(correlation) <= 1)
        || !(gapLow > 0 && gapHigh >= gapLow && suctionLow > 0 && suctionHigh >= suctionLow)
        || !Double.isFinite(factor + factorUncertainty + offset + offsetUncertainty + rest)
        || !Double.isFinite(gapHigh + suctionHigh)) {
      throw new IllegalArgumentException("a calibration needs a positive factor, finite figures");
    }
  }

  /** True where a section lies within what was measured, ground at rest. */
  public boolean covers(double gap, double suction, double groundSpeed) {
    return groundSpeed == 0
        && gap >= gapLow / SLACK
        && gap <= gapHigh * SLACK
        && suction >= suctionLow / SLACK
        && suction <= suctionHigh * SLACK;
  }

  /** Standard uncertainty of a calibrated coefficient. */
  public double standardUncertainty(double predicted) {
    double a = predicted * factorUncertainty;
    double b = offsetUncertainty;
    return Math.sqrt(Math.max(0, a * a + b * b + 2 * correlation * a * b + rest * rest));
  }

  /**
   * A calibrated discharge coefficient. Within what was measured the uncertainty of the measurement
   * takes the place of the flow model's band; elsewhere it comes on top of it.
   */
  public Estimate of(Estimate discharge, boolean covered) {
    double wide = WIDE * standardUncertainty(discharge.value());
    return new Estimate(
        factor * discharge.value() + offset,
        factor * discharge.numerical(),
        factor * discharge.iteration(),
        wide + (covered ? 0 : factor * discharge.modelLow()),
        wide + (covered ? 0 : factor * discharge.modelHigh()),
        discharge.trend());
  }

  /**
   * What it is and where it comes from.
   *
   * @param kind one of the calibrations
   */
  public Notice notice(NoticeKind kind) {
    return kind.of(
        rig,
        factor,
        WIDE * factorUncertainty,
        offset,
        WIDE * offsetUncertainty,
        points,
        gapLow,
        gapHigh,
        suctionLow,
        suctionHigh,
        invented ? 1 : 0);
  }
}
