package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.validation.reference.Evidence;
import hemline.validation.reference.ExpectedFigure;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class ModelBandTest {
  private static final GridSolution GRID =
      new GridSolution(
          new GridRun(
              100,
              10,
              SolveStatus.CONVERGED,
              0,
              0,
              new RawFigures(Map.of(), List.of(), List.of(), List.of()),
              0));

  private record Constant(double value, boolean distance) implements Probe {
    @Override
    public double of(GridSolution grid) {
      return value;
    }

    @Override
    public String unit() {
      return "1";
    }
  }

  /** A value of 1.2, 1 on the coarsest grid, where the second model gives another. */
  private static Measured band(
      String quantity, double reference, double scale, Closure closure, Constant other) {
    Measured measured =
        new Measured(
            quantity,
            "1",
            new Estimate(1.2, 0.01, 0, 0, 0, Estimate.Trend.MONOTONE),
            List.of(new Measured.GridPoint(100, 1), new Measured.GridPoint(400, 1.2)),
            true);
    ExpectedFigure expected =
        new ExpectedFigure(
            quantity,
            new ExpectedFigure.Reference(reference, 0),
            new ExpectedFigure.Tolerance(0.1, scale, ExpectedFigure.Comparison.WITHIN, "made up"),
            new Evidence("made up", "made up", Evidence.Grade.A),
            null);
    @Nullable Measured found =
        ModelBand.of(
            measured,
            expected,
            other,
            closure,
            List.of(new GridFamily(Closure.SST, List.of(GRID))));
    return Objects.requireNonNull(found);
  }

  @Test
  void theSecondModelWidensOneSideAndTheResidualBoth() {
    double residual = 1.2 * QuantityKind.SPEED.residual(Closure.SA);
    Measured near = band("max u on x=6", 1.1, 1.1, Closure.SA, new Constant(1.001, false));
    assertThat(near.estimate().modelLow()).isCloseTo(residual, within(1e-12));
    assertThat(near.estimate().modelHigh()).isCloseTo(residual, within(1e-12));
    assertThat(near.second()).isCloseTo(1.201, within(1e-12));
    assertThat(near.estimate().numerical()).isEqualTo(0.01);
    Measured far = band("max u on x=6", 1.1, 1.1, Closure.SA, new Constant(0.5, false));
    assertThat(far.estimate().modelLow()).isCloseTo(0.5, within(1e-12));
    assertThat(far.estimate().modelHigh()).isCloseTo(residual, within(1e-12));
  }

  @Test
  void aScaleOfItsOwnStandsForTheSizeOfTheValue() {
    Measured found = band("ground pressure at 1", 0.01, 3, Closure.SST, new Constant(1, false));
    assertThat(found.estimate().modelHigh())
        .isCloseTo(3 * QuantityKind.PRESSURE.residual(Closure.SST), within(1e-12));
  }

  @Test
  void distancesLaminarFlowsAndFiguresOfSectionsStayAsTheyAre() {
    Constant other = new Constant(2, false);
    assertThat(band("max u on x=6", 1.1, 1.1, Closure.SA, new Constant(2, true)).second()).isNaN();
    assertThat(band("max u on x=6", 1.1, 1.1, Closure.LAMINAR, other).estimate().model()).isZero();
    assertThat(band("dischargeCoefficient", 1.1, 1.1, Closure.SA, other).second()).isNaN();
    assertThat(band("leakFlow", 1.1, 1.1, Closure.SA, other).second()).isNaN();
  }
}
