package hemline.validation.run;

import hemline.solver.flow.Closure;
import hemline.solver.refine.ModelResidual;
import org.jspecify.annotations.Nullable;

/**
 * Kinds of quantities that cases measure in turbulent flow, and what turbulence models miss of
 * each, as half-widths over the natural size that hold 95 % of errors of normal spread.
 *
 * <p>Flow, discharge and friction along a gap have the residuals of sections. The others are
 * derived by the same rule from the rows of {@code check} with A or B references, both models, and
 * kept in the table {@code bench/model-residuals.csv}; a test derives these figures from it.
 */
enum QuantityKind {
  /** Discharge coefficient of a lip. */
  DISCHARGE(ModelResidual.SEPARATED.flow(Closure.SA), ModelResidual.SEPARATED.flow(Closure.SST)),
  /** Flow along a gap without obstacle. */
  GAP_FLOW(ModelResidual.ATTACHED.flow(Closure.SA), ModelResidual.ATTACHED.flow(Closure.SST)),
  /**
   * Friction along a gap without obstacle and of other attached layers, and the momentum thickness
   * of such a layer, which sums it up.
   */
  GAP_FRICTION(ModelResidual.friction(Closure.SA), ModelResidual.friction(Closure.SST)),
  /** Its square root. */
  FRICTION_VELOCITY(
      0.5 * ModelResidual.friction(Closure.SA), 0.5 * ModelResidual.friction(Closure.SST)),
  /** Speed at a place or the largest on a line. */
  SPEED(0.1003, 0.128),
  /** Pressure on a wall or in a pocket, and what of it is won back. */
  PRESSURE(0.2254, 0.157),
  /** Length of an eddy, and how fast layers grow. */
  LENGTH(0.2702, 0.382),
  /** Friction where the flow has separated or comes back to the wall. */
  FRICTION(0.505, 0.378);

  private final double sa;
  private final double sst;

  QuantityKind(double sa, double sst) {
    this.sa = sa;
    this.sst = sst;
  }

  /**
   * Half-width over the natural size.
   *
   * @param closure a turbulent one
   */
  double residual(Closure closure) {
    return closure == Closure.SST ? sst : sa;
  }

  /**
   * Kind of a quantity; null for figures of sections, which have bands of their own, and for what
   * has no kin to derive a residual from.
   */
  static @Nullable QuantityKind of(String quantity) {
    if (quantity.equals(Probes.BASE_COEFFICIENT)) {
      return DISCHARGE;
    }
    if (quantity.equals("leakFlow")) {
      return GAP_FLOW;
    }
    if (quantity.equals("friction velocity")) {
      return FRICTION_VELOCITY;
    }
    if (quantity.startsWith("friction coefficient of ")
        || quantity.startsWith("friction over ")
        || quantity.startsWith("momentum thickness at ")) {
      return GAP_FRICTION;
    }
    if (quantity.startsWith("friction coefficient at ") || quantity.startsWith("friction over ")) {
      return FRICTION;
    }
    if (quantity.startsWith("max u on ")
        || quantity.startsWith("speed share at ")
        || quantity.equals("centre speed")) {
      return SPEED;
    }
    if (quantity.startsWith("base pressure share at ")
        || quantity.startsWith("ground pressure at ")
        || quantity.startsWith("pressure coefficient at ")
        || quantity.startsWith("pressure rise from ")) {
      return PRESSURE;
    }
    if (quantity.startsWith("zero of ")
        || quantity.startsWith("growth of ") && !quantity.endsWith("maximum")) {
      return LENGTH;
    }
    return null;
  }
}
