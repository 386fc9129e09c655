package hemline.validation.run;

import hemline.solver.flow.Closure;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.ModelResidual;
import hemline.validation.reference.ExpectedFigure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The band of a flow model round what cases measure and sections do not. */
final class ModelBand {

  private ModelBand() {}

  /**
   * The quantity with the model part that sections give their figures: the distance to the second
   * turbulence model, at least the residual of its kind. Figures of sections, which have theirs,
   * and distances to a reference stay as they are.
   *
   * @param closure of the value
   * @param others families under the second model; none gives no model part
   */
  static @Nullable Measured of(
      @Nullable Measured measured,
      ExpectedFigure expected,
      Probe probe,
      Closure closure,
      List<GridFamily> others) {
    QuantityKind kind = QuantityKind.of(expected.quantity());
    if (measured == null
        || probe.distance()
        || kind == null
        || kind == QuantityKind.GAP_FLOW
        || closure == Closure.LAMINAR) {
      return measured;
    }
    Measured found = measured;
    for (GridFamily other : others) {
      if (other.closure() != Closure.LAMINAR
          && other.finestUsable() != null
          && !measured.grids().isEmpty()) {
        double distance = probe.of(other.grids().get(0)) - measured.grids().get(0).value();
        found = of(measured, expected, kind, closure, distance);
      }
    }
    return found;
  }

  /**
   * The quantity with its model part.
   *
   * @param other where the second turbulence model solved the finest grid of the value
   */
  static Measured onFinest(
      Measured measured,
      ExpectedFigure expected,
      Probe probe,
      Closure closure,
      GridSolution other) {
    QuantityKind kind = QuantityKind.of(expected.quantity());
    if (probe.distance() || kind == null || measured.grids().isEmpty()) {
      return measured;
    }
    double finest = measured.grids().get(measured.grids().size() - 1).value();
    return of(measured, expected, kind, closure, probe.of(other) - finest);
  }

  private static Measured of(
      Measured measured,
      ExpectedFigure expected,
      QuantityKind kind,
      Closure closure,
      double distance) {
    double natural = expected.natural(measured.estimate().value());
    return measured.withSecond(distance, kind.residual(closure) * natural);
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
    double value = ratio.estimate().value();
    double half = ModelResidual.ratio(model) * value;
    Measured wide = ratio.withModel(half, half);
    return new Measured(
        wide.quantity(),
        wide.unit(),
        wide.estimate(),
        wide.grids(),
        wide.hasBand(),
        upper.second() / lower.second());
  }
}
