package hemline.solver.rig;

/**
 * What a measurement depends on (input quantity of JCGM 100:2008, 4.1).
 *
 * @param source where its uncertainty comes from
 * @param point the one point that it belongs to, from 0; {@link #SHARED} where all share it
 * @param estimate best value, SI
 * @param standardUncertainty SI, not negative
 * @param degreesOfFreedom of that uncertainty, positive, infinite where it is taken as known
 * @param shape of its distribution
 */
public record InputQuantity(
    Source source,
    int point,
    double estimate,
    double standardUncertainty,
    double degreesOfFreedom,
    Shape shape) {
  /** In the place of a point: all points share the error. */
  public static final int SHARED = -1;

  /** Distributions, JCGM 101:2008, 6.4. */
  public enum Shape {
    NORMAL,
    /** Equally likely within ± √3 standard uncertainties. */
    RECTANGULAR,
    /** Student's, by the degrees of freedom: a mean of few repeats. */
    STUDENT
  }

  public InputQuantity {
    if (!(standardUncertainty >= 0) || !(degreesOfFreedom > 0) || !Double.isFinite(estimate)) {
      throw new IllegalArgumentException(
          "an input needs a finite estimate, an uncertainty from 0 on and degrees of freedom above"
              + " 0, got "
              + estimate
              + ", "
              + standardUncertainty
              + ", "
              + degreesOfFreedom);
    }
  }

  /** An error within equal limits either way, as makers state accuracies. */
  static InputQuantity within(Source source, int point, double halfWidth) {
    return new InputQuantity(
        source, point, 0, halfWidth / Math.sqrt(3), Double.POSITIVE_INFINITY, Shape.RECTANGULAR);
  }

  /** An error with a standard uncertainty. */
  static InputQuantity normal(Source source, int point, double standardUncertainty) {
    return new InputQuantity(
        source, point, 0, standardUncertainty, Double.POSITIVE_INFINITY, Shape.NORMAL);
  }
}
