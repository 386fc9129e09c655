package hemline.solver.rig;

import java.util.List;

/**
 * A rig beside the prediction.
 *
 * @param points in the order of the rig
 * @param mean over all predicted points
 * @param finer what would make the mean fine enough
 * @param scatter standard deviation of single readings as a share; 0 where nothing was repeated
 * @param drawn how far the intervals of the measured coefficients lie from those of a Monte Carlo
 *     check at most, as a share of their half-width
 * @param diagnosis which fault of the rig the errors look like
 * @param relative true where no flow was read: coefficients are known up to a common factor
 * @param decays leaks by the runs in which the suction decayed
 */
public record Comparison(
    List<ComparedPoint> points,
    Mean mean,
    Finer finer,
    double scatter,
    double drawn,
    Diagnosis diagnosis,
    boolean relative,
    List<DecayLeak> decays) {

  /**
   * The points together.
   *
   * @param error mean of E over the prediction; not a number without any prediction
   * @param uncertainty half-width of it at 95 %
   * @param chiSquare squared distance of the points from the prediction's model bands in units of
   *     their joint uncertainty
   * @param verdict over all
   */
  public record Mean(double error, double uncertainty, double chiSquare, Verdict verdict) {}

  /**
   * What would make the mean fine enough to tell.
   *
   * @param matters share of the discharge from which on a difference matters
   * @param decisive what would make the mean finer than that, the strongest first; empty where it
   *     is
   */
  public record Finer(double matters, List<Decider> decisive) {
    public Finer {
      decisive = List.copyOf(decisive);
    }
  }

  /**
   * What would tell.
   *
   * @param source of the uncertainty
   * @param share of the variance of the mean error
   * @param better how many times finer this source has to get; infinite where it alone is not
   *     enough
   */
  public record Decider(Source source, double share, double better) {}

  public Comparison {
    points = List.copyOf(points);
    decays = List.copyOf(decays);
  }
}
