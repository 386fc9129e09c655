package hemline.solver.refine;

import hemline.solver.flow.Closure;

/**
 * How much the laminar and the turbulent answer count for each other, by gap Reynolds number.
 *
 * <p>The share of the laminar flow falls from 1 at {@link #FROM} to 0 at {@link #TO}, as the cube
 * of the logarithmic distance to the end: half of it is gone where the choice of the flow model
 * changes. A band reaches the other answer in full where its share is a half or more, else twice
 * its share of the way, so that it always holds the mean of both by their shares. Measured: behind
 * a step the flow leaves the laminar answer at q/ν of about 600 and has become turbulent at 3300
 * (Armaly, Durst, Pereira and Schönung 1983, J. Fluid Mech. 127, 473, with their Reynolds number on
 * twice the inlet height). The form of the fade is our own.
 */
public final class TransitionFade {
  /** Below this gap Reynolds number the laminar answer stands alone. */
  public static final double FROM = 500;

  /** Above this gap Reynolds number the turbulent answer stands alone. */
  public static final double TO = 10_000;

  /** Shares of the way below this are lost in the residual of the models. */
  private static final double LEAST = 0.1;

  private TransitionFade() {}

  /** Share of the laminar answer, 1 to 0. */
  static double laminarShare(double gapReynolds) {
    double s = Math.log(Math.abs(gapReynolds) / FROM) / Math.log(TO / FROM);
    double left = 1 - Math.max(0, Math.min(1, s));
    return left * left * left;
  }

  /**
   * Share of the distance to another flow model that a band holds.
   *
   * @param own flow model of the answer
   * @param other flow model it is compared with
   * @param gapReynolds of the answer
   */
  public static double weight(Closure own, Closure other, double gapReynolds) {
    boolean laminar = own == Closure.LAMINAR;
    if (laminar == (other == Closure.LAMINAR)) {
      return 1;
    }
    double share = laminarShare(gapReynolds);
    return Math.min(1, 2 * (laminar ? 1 - share : share));
  }

  /**
   * True where another flow model is worth a solve.
   *
   * @param own flow model of the answer
   * @param other flow model to compare with
   * @param gapReynolds of the answer
   */
  public static boolean counts(Closure own, Closure other, double gapReynolds) {
    return weight(own, other, gapReynolds) >= LEAST;
  }
}
