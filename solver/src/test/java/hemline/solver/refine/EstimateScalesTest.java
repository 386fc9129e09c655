package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Bands of figures that are zero: a fifth of their natural size on one grid. A gap of 2 mm that
 * carries 0.04 m²/s of a fluid of 2 kg/m³ has a dynamic pressure of 400 Pa.
 */
class EstimateScalesTest {
  private static final double GAP = 2e-3;
  private static final double LEAK = 0.04;
  private static final double HEAD = 400;

  private static SealSection lip(double viscosity) {
    return MadeUpGrids.lip(GAP, 600, new GroundMotion(-3, 0), new FluidState(2, viscosity));
  }

  private static GridFamily family(Closure closure, Map<Figure, Double> figures, double... shares) {
    List<Double> stages = java.util.Arrays.stream(shares).boxed().toList();
    GridRun run =
        MadeUpGrids.run(
            0, SolveStatus.CONVERGED, new RawFigures(figures, stages, List.of(0.3), List.of()), 0);
    return MadeUpGrids.family(closure, run);
  }

  private static SectionResult result(double viscosity, GridFamily own, GridFamily... others) {
    return Estimates.result(lip(viscosity), 0, own, List.of(others), List.of(), false);
  }

  private static Estimate of(SectionResult result, Figure figure) {
    return Objects.requireNonNull(result.figures().get(figure));
  }

  @ParameterizedTest
  @CsvSource({
    "LIP_FORCE_X, 0.8", // q h
    "LIP_SHEAR_FORCE_Y, 0.8",
    "GROUND_DRAG, 0.8",
    "LIP_MOMENT, 1.6e-3", // q h²
    "GROUND_POWER, 2.4", // q h u
    "PRESSURE_RECOVERY, 1"
  })
  void naturalSizes(Figure figure, double size) {
    SectionResult result =
        result(1e-5, family(Closure.SST, Map.of(Figure.LEAK_FLOW, LEAK, figure, 0.0), 1.0));
    assertThat(of(result, figure).numerical()).isCloseTo(0.2 * size, within(1e-12));
    assertThat(of(result, Figure.LEAK_FLOW).numerical()).isCloseTo(0.2 * LEAK, within(1e-12));
    assertThat(0.5 * 2 * Math.pow(LEAK / GAP, 2)).isCloseTo(HEAD, within(1e-9));
  }

  /** Twice as large as its size, a figure counts itself. */
  @Test
  void largeFiguresCountThemselves() {
    SectionResult result =
        result(
            1e-5,
            family(Closure.SST, Map.of(Figure.LEAK_FLOW, LEAK, Figure.LIP_MOMENT, -3.2e-3), 1.0));
    assertThat(of(result, Figure.LIP_MOMENT).numerical()).isCloseTo(0.2 * 3.2e-3, within(1e-12));
  }

  /** Shares and carry-over have the size of one; they reach the answer with their values. */
  @Test
  void sharesAndCarryOver() {
    SectionResult result =
        result(1e-5, family(Closure.SST, Map.of(Figure.LEAK_FLOW, LEAK), 0.6, 0.4));
    assertThat(result.figures().stageShares())
        .extracting(Estimate::value)
        .containsExactly(0.6, 0.4);
    assertThat(result.figures().carryOver()).hasSize(1);
    assertThat(result.figures().carryOver().get(0).value()).isEqualTo(0.3);
    assertThat(result.figures().carryOver().get(0).numerical()).isCloseTo(0.2, within(1e-12));
    assertThat(result.figures().stageShares().get(0).numerical()).isCloseTo(0.2, within(1e-12));
  }

  /**
   * A second turbulent model that agrees leaves the residual of the class: edges, or walls alone.
   */
  @Test
  void residualsByClassOfFlow() {
    Map<Figure, Double> leak = Map.of(Figure.LEAK_FLOW, LEAK);
    for (boolean edges : new boolean[] {true, false}) {
      double[] shares = edges ? new double[] {1} : new double[0];
      GridFamily own = family(Closure.SA, leak, shares);
      Estimate e = of(result(1e-5, own, family(Closure.SST, leak, shares)), Figure.LEAK_FLOW);
      ModelResidual residual = edges ? ModelResidual.SEPARATED : ModelResidual.ATTACHED;
      double expected = residual.flow(Closure.SA) * LEAK;
      assertThat(e.modelLow()).isCloseTo(expected, within(1e-12));
      assertThat(e.modelHigh()).isCloseTo(expected, within(1e-12));
      // nothing to compare with, or the laminar flow alone: no residual
      assertThat(of(result(1e-5, own), Figure.LEAK_FLOW).modelHigh()).isZero();
      GridFamily laminar = family(Closure.LAMINAR, leak, shares);
      assertThat(of(result(1e-5, own, laminar), Figure.LEAK_FLOW).modelHigh()).isZero();
      assertThat(of(result(1e-5, laminar, own), Figure.LEAK_FLOW).modelHigh()).isZero();
    }
  }

  /** The distance to a laminar answer fades with the gap Reynolds number of the answer, q / ν. */
  @Test
  void otherModelsFadeWithTheReynoldsNumber() {
    GridFamily own = family(Closure.SST, Map.of(Figure.LEAK_FLOW, LEAK), 1.0);
    GridFamily laminar = family(Closure.LAMINAR, Map.of(Figure.LEAK_FLOW, 0.05), 1.0);
    for (double reynolds : new double[] {400, 2000, 4000, 2e4}) {
      double share = TransitionFade.weight(Closure.SST, Closure.LAMINAR, reynolds);
      Estimate e = of(result(LEAK / reynolds, own, laminar), Figure.LEAK_FLOW);
      assertThat(e.modelHigh()).as("Re %s", reynolds).isCloseTo(0.01 * share, within(1e-12));
      assertThat(e.modelLow()).isZero();
    }
  }
}
