package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.solver.flow.Closure;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.ModelResidual;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The band of a flow model round discharge coefficients that sections do not measure themselves.
 */
final class ModelBand {
  private static final String DISCHARGE = "base discharge coefficient";

  private ModelBand() {}

  /**
   * The quantity with the model part that sections give their discharge coefficient: the distance
   * to the second turbulence model, at least the residual. Other quantities stay as they are.
   *
   * @param closure of the value
   * @param others families under the second model; none gives no model part
   */
  static @Nullable Measured of(
      @Nullable Measured measured, Probe probe, Closure closure, List<GridFamily> others) {
    if (measured == null || !measured.quantity().equals(DISCHARGE) || others.isEmpty()) {
      return measured;
    }
    double value = measured.estimate().value();
    double low = ModelResidual.SEPARATED.flow(closure) * value;
    double high = low;
    for (GridFamily other : others) {
      if (other.finestUsable() != null && !measured.grids().isEmpty()) {
        double distance = probe.of(other.grids().get(0)) - measured.grids().get(0).value();
        low = Math.max(low, -distance);
        high = Math.max(high, distance);
      }
    }
    return with(measured, low, high);
  }

  /**
   * A ratio with the residual of ratios where both parts have a model band.
   *
   * @param closure key of the flow model of both
   */
  static Measured ofRatio(Measured ratio, Measured upper, Measured lower, String closure) {
    if (upper.estimate().model() == 0 || lower.estimate().model() == 0) {
      return ratio;
    }
    Closure model = closure.equals(Closure.SST.key()) ? Closure.SST : Closure.SA;
    double half = ModelResidual.ratio(model) * ratio.estimate().value();
    return with(ratio, half, half);
  }

  private static Measured with(Measured m, double low, double high) {
    Estimate e = m.estimate();
    return new Measured(
        m.quantity(),
        m.unit(),
        new Estimate(e.value(), e.numerical(), e.iteration(), low, high, e.trend()),
        m.grids(),
        m.hasBand());
  }
}
