package hemline.solver.refine;

import hemline.shared.result.Figure;
import hemline.solver.flow.Closure;

/**
 * What a turbulent flow model misses even where both models agree, as relative half-widths that
 * hold 95 % of errors of normal spread: rms error on flows of the same class with known answers,
 * the standard deviation of the reference added as if it hid an error, times Student's t for their
 * number.
 *
 * <p>The flows and their errors are the table {@code model-residuals.csv} of the validation module,
 * which is written with the result of its catalogue; a test there derives these figures from it and
 * holds each flow by those of the others.
 */
public enum ModelResidual {
  /** Edges, eddies and jets decide: lips, and ducts with obstacles. */
  SEPARATED(0.0301, 0.068),
  /** Wall friction alone decides: ducts without obstacle. */
  ATTACHED(0.1035, 0.042);

  private static final double RATIO_SA = 0.0265;
  private static final double RATIO_SST = 0.0896;

  /** Shear on ground and lip, of its value. */
  private static final double FRICTION_SA = 0.207;

  private static final double FRICTION_SST = 0.084;

  private final double sa;
  private final double sst;

  ModelResidual(double sa, double sst) {
    this.sa = sa;
    this.sst = sst;
  }

  /**
   * Half-width of leak and discharge coefficient, of the value.
   *
   * @param closure a turbulent one
   */
  public double flow(Closure closure) {
    return closure == Closure.SST ? sst : sa;
  }

  /**
   * Half-width of the leak of one lip over that of another, of the value: errors that both share
   * cancel.
   *
   * @param closure a turbulent one
   */
  public static double ratio(Closure closure) {
    return closure == Closure.SST ? RATIO_SST : RATIO_SA;
  }

  /**
   * Half-width of wall friction, of its value.
   *
   * @param closure a turbulent one
   */
  public static double friction(Closure closure) {
    return closure == Closure.SST ? FRICTION_SST : FRICTION_SA;
  }

  /**
   * Half-width of a figure in its unit.
   *
   * @param closure a turbulent one
   * @param figure which
   * @param value its value
   * @param scale its natural size
   */
  double of(Closure closure, Figure figure, double value, double scale) {
    return switch (figure) {
      case LEAK_FLOW, DISCHARGE_COEFFICIENT, EFFECTIVE_GAP -> flow(closure) * Math.abs(value);
      case GROUND_DRAG, GROUND_DRAG_SPANWISE, GROUND_POWER, LIP_SHEAR_FORCE_X, LIP_SHEAR_FORCE_Y ->
          friction(closure) * Math.abs(value);
      default -> share(closure, value, scale);
    };
  }

  /** Half-width of pressures, forces and shares, which go with the square of the flow. */
  double share(Closure closure, double value, double scale) {
    return 2 * flow(closure) * Math.max(Math.abs(value), scale);
  }
}
