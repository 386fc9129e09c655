package hemline.solver.study;

import hemline.shared.result.Estimate;
import java.util.Locale;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What the evidence says of a lip beside the baseline.
 *
 * @param group on which side of the baseline it lies
 * @param probabilityLess probability that it leaks less than the baseline, 0 to 1
 * @param decider what would decide, where the group leaves it open
 */
public record Placement(Group group, double probabilityLess, Decider decider) {
  /**
   * Bands reach as far as twice the standard uncertainty: 95 % of a normal distribution (JCGM
   * 100:2008, 6.2 and 6.3).
   */
  private static final double COVERAGE = 2;

  /**
   * A band reaching further than this share to either side places nothing: lips of one width differ
   * by 2 to 8 %. Common practice, no source.
   */
  static final double WIDEST = 0.1;

  /** Side of the baseline. */
  public enum Group {
    /** The band lies below 1. */
    LESS,
    /** The band holds 1 and is narrow enough to say that the two are alike. */
    SAME,
    /** The band lies above 1. */
    MORE,
    /** The band holds 1 and is too wide to say anything. */
    UNCERTAIN;

    /** Name in files. */
    public String key() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What further evidence would tell two lips apart. */
  public enum Decider {
    /** Nothing is open. */
    NONE,
    /** Without the parts of the band from grid and iteration the order would be clear. */
    FINER_MESH,
    /** The flow model leaves it open; a measurement of both lips decides. */
    MEASUREMENT;

    /** Name in files. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * The placement of a lip.
   *
   * @param ratio its leak over the baseline's
   */
  public static Placement of(Estimate ratio) {
    double p = probabilityBelow(ratio, 1);
    int side = Crossings.side(ratio);
    if (side != 0) {
      return new Placement(side < 0 ? Group.LESS : Group.MORE, p, Decider.NONE);
    }
    boolean narrow = Math.max(ratio.high() - 1, 1 - ratio.low()) <= WIDEST;
    return new Placement(narrow ? Group.SAME : Group.UNCERTAIN, p, decider(ratio));
  }

  private static Decider decider(Estimate ratio) {
    if (ratio.low() == ratio.high()) {
      return Decider.NONE;
    }
    double model = ratio.value() < 1 ? ratio.modelHigh() : ratio.modelLow();
    return Math.abs(ratio.value() - 1) > model ? Decider.FINER_MESH : Decider.MEASUREMENT;
  }

  /**
   * Probability that a value lies below a limit: two halves of normal distributions of different
   * width that meet at the best value (John 1982, "The three-parameter two-piece normal family of
   * distributions", Commun. Statist. Theory Meth. 11, 879; from memory).
   */
  static double probabilityBelow(Estimate e, double limit) {
    double below = (e.value() - e.low()) / COVERAGE;
    double above = (e.high() - e.value()) / COVERAGE;
    double distance = limit - e.value();
    if (!(below + above > 0)) {
      return distance == 0 ? 0.5 : distance > 0 ? 1 : 0;
    }
    NormalDistribution unit = new NormalDistribution(null, 0, 1);
    if (distance <= 0) {
      return below > 0
          ? 2 * below / (below + above) * unit.cumulativeProbability(distance / below)
          : 0;
    }
    return above > 0
        ? 1 - 2 * above / (below + above) * unit.cumulativeProbability(-distance / above)
        : 1;
  }
}
