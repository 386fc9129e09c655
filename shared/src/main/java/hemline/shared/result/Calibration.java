package hemline.shared.result;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.section.SectionConditions;

/**
 * What a measurement taught of the predictions of one lip: C_d = factor × predicted + offset.
 *
 * @param lip name
 * @param outline digest of the lip's resolved outline
 * @param rig name of the rig file that was measured
 * @param invented true where nobody measured
 * @param points measured, at least 1
 * @param line factor and offset
 * @param range that was measured
 */
public record Calibration(
    String lip, String outline, String rig, boolean invented, int points, Line line, Range range) {
  /**
   * Factor and offset of the discharge coefficient; offset, its uncertainty and correlation are 0
   * where it is a factor alone.
   *
   * @param factor positive
   * @param factorUncertainty standard uncertainty of it
   * @param offset of the discharge coefficient
   * @param offsetUncertainty standard uncertainty of it
   * @param correlation of factor and offset, −1 to 1
   * @param rest standard deviation of the discharge coefficient that is left unexplained
   */
  public record Line(
      double factor,
      double factorUncertainty,
      double offset,
      double offsetUncertainty,
      double correlation,
      double rest) {
    private boolean sound() {
      return factor > 0
          && factorUncertainty >= 0
          && offsetUncertainty >= 0
          && rest >= 0
          && Math.abs(correlation) <= 1
          && Double.isFinite(factor + factorUncertainty + offset + offsetUncertainty + rest);
    }

    /** A calibrated coefficient. */
    double at(double predicted) {
      return factor * predicted + offset;
    }

    /** Standard uncertainty of a calibrated coefficient. */
    double uncertainty(double predicted) {
      double a = predicted * factorUncertainty;
      double b = offsetUncertainty;
      return Math.sqrt(Math.max(0, a * a + b * b + 2 * correlation * a * b + rest * rest));
    }
  }

  /**
   * Gaps and suctions that were measured.
   *
   * @param gapLow smallest gap, m
   * @param gapHigh largest gap, m
   * @param suctionLow smallest suction, Pa
   * @param suctionHigh largest suction, Pa
   */
  public record Range(double gapLow, double gapHigh, double suctionLow, double suctionHigh) {
    private boolean sound() {
      return gapLow > 0
          && gapHigh >= gapLow
          && suctionLow > 0
          && suctionHigh >= suctionLow
          && Double.isFinite(gapHigh + suctionHigh);
    }
  }

  /** Quantile of the normal distribution that leaves 2.5 % on either side. */
  private static final double WIDE = 1.959964;

  private static final double SLACK = 1.05;

  public Calibration {
    if (points < 1 || !line.sound() || !range.sound()) {
      throw new IllegalArgumentException("a calibration needs a positive factor, finite figures");
    }
  }

  /** True where a section lies within what was measured, ground at rest. */
  public boolean covers(SectionConditions at) {
    return at.groundSpeed() == 0
        && at.gap() >= range.gapLow / SLACK
        && at.gap() <= range.gapHigh * SLACK
        && at.suction() >= range.suctionLow / SLACK
        && at.suction() <= range.suctionHigh * SLACK;
  }

  /**
   * A calibrated discharge coefficient. Within what was measured the uncertainty of the measurement
   * takes the place of the flow model's band; elsewhere both count.
   */
  public Estimate of(Estimate discharge, boolean covered) {
    double factor = line.factor;
    Estimate calibrated =
        new Estimate(
            line.at(discharge.value()),
            factor * discharge.numerical(),
            factor * discharge.iteration(),
            covered ? 0 : factor * discharge.modelLow(),
            covered ? 0 : factor * discharge.modelHigh(),
            discharge.trend());
    return calibrated.with(WIDE * line.uncertainty(discharge.value()));
  }

  /**
   * What it is and where it comes from.
   *
   * @param kind one of the calibrations
   */
  public Notice notice(NoticeKind kind) {
    return kind.of(
        rig,
        line.factor,
        WIDE * line.factorUncertainty,
        line.offset,
        WIDE * line.offsetUncertainty,
        points,
        range.gapLow,
        range.gapHigh,
        range.suctionLow,
        range.suctionHigh,
        invented ? 1 : 0);
  }
}
