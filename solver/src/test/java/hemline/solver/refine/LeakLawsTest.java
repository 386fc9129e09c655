package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SectionSetup;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.MeshLevel;
import hemline.solver.measure.SectionMeter;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How the leak must answer to size, gap, suction and ground motion, on the coarsest grid. */
class LeakLawsTest {
  private static Map<Figure, Double> figures(SealSection section, Closure closure) {
    GridRun run =
        new FamilySolver()
            .solve(
                SolveRequest.cold(section, MeshLevel.COARSE, 1, closure),
                new CancelToken(),
                ProgressListener.NONE)
            .runs()
            .get(0);
    assertThat(run.status()).as("%s", section).isEqualTo(SolveStatus.CONVERGED);
    return run.figures().scalars();
  }

  /**
   * Figures of a flow that is solved far beyond what products ask, so that no round-off is left.
   */
  private static Map<Figure, Double> settledFigures(SealSection section, Closure closure) {
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = GridDesign.of(setup.domain(), section.gap(), MeshLevel.COARSE);
    FlowSolution flow =
        SequencedSolver.solve(
                grid -> setup.problem(design.lines(2), closure),
                1,
                -section.suction() / section.fluid().density(),
                0,
                problem -> null,
                new StoppingLimits(2000, 100, 30, 1e-6, 2e-5, 1e-6),
                new CancelToken(),
                ProgressListener.NONE)
            .get(0);
    assertThat(flow.outcome().status()).as("%s", section).isEqualTo(SolveStatus.CONVERGED);
    return SectionMeter.measure(setup, flow).figures().scalars();
  }

  private static double leak(SealSection section, Closure closure) {
    return figures(section, closure).get(Figure.LEAK_FLOW);
  }

  private static double leak(LipProfile lip, double gap, double suction, double ground) {
    return leak(Lips.section(lip, gap, suction, ground, 0), Closure.AUTO);
  }

  /**
   * Same shape and Reynolds number: ten times the size at the same speeds or a tenth of them. At
   * some suctions the kinks of the bounded convection leave two flows 3e-5 apart.
   */
  @ParameterizedTest(name = "{0} Pa")
  @CsvSource({"30, LAMINAR, 1e-6, 1e-5", "1200, SST, 1e-5, 1e-4", "600, SA, 1e-5, 1e-4"})
  void sizeDoesNotMatterAtOneReynoldsNumber(
      double suction, Closure closure, double leak, double forces) {
    SealSection small = Lips.section(Lips.leaningTeeth(), 2, suction, 5, 1);
    Map<Figure, Double> s = settledFigures(small, closure);
    FluidState air = small.fluid();
    SealSection slow =
        new SealSection(
            Lips.leaningTeeth(10),
            0.02,
            0.01 * suction,
            new GroundMotion(0.5, 0.1),
            air,
            List.of());
    SealSection thick =
        new SealSection(
            Lips.leaningTeeth(10),
            0.02,
            suction,
            small.ground(),
            new FluidState(air.density(), 10 * air.kinematicViscosity()),
            List.of());
    for (SealSection other : List.of(slow, thick)) {
      Map<Figure, Double> o = settledFigures(other, closure);
      assertThat(o.get(Figure.DISCHARGE_COEFFICIENT))
          .isCloseTo(s.get(Figure.DISCHARGE_COEFFICIENT), within(leak));
      // forces go with suction times length
      double force = s.get(Figure.LIP_FORCE_Y) * 10 * other.suction() / suction;
      assertThat(o.get(Figure.LIP_FORCE_Y)).isCloseTo(force, within(forces * Math.abs(force)));
      double drag = s.get(Figure.GROUND_DRAG) * 10 * other.suction() / suction;
      assertThat(o.get(Figure.GROUND_DRAG)).isCloseTo(drag, within(forces * Math.abs(drag)));
    }
  }

  @Test
  void leakGrowsWithTheGap() {
    double before = 0;
    for (double gap : new double[] {0.3, 0.7, 1.5, 3, 6, 15}) {
      double leak = leak(Lips.flat(8), gap, 600, 0);
      assertThat(leak).as("gap %s mm", gap).isGreaterThan(before);
      before = leak;
    }
  }

  @Test
  void leakGrowsWithTheSuction() {
    double before = 0;
    for (double suction : new double[] {20, 60, 100, 300, 1500, 6000}) {
      double leak = leak(Lips.flat(8), 2, suction, 0);
      assertThat(leak).as("suction %s Pa", suction).isGreaterThan(before);
      before = leak;
    }
  }

  @Test
  void groundThatRunsWithTheLeakRaisesIt() {
    double still = leak(Lips.flat(8), 2, 600, 0);
    assertThat(leak(Lips.flat(8), 2, 600, 15)).isGreaterThan(1.005 * still);
    assertThat(leak(Lips.flat(8), 2, 600, -15)).isLessThan(0.995 * still);
  }

  /** Plain Couette flow, U h / 2, under a lip that is thirty gaps long. */
  @ParameterizedTest(name = "{0} m/s")
  @ValueSource(doubles = {0.02, -0.02})
  void movingGroundAloneDragsCouetteFlowThroughALongGap(double speed) {
    assertThat(leak(Lips.flat(60), 2, 0, speed) / (speed * 2e-3)).isCloseTo(0.5, within(0.02));
  }

  /**
   * A short gap passes more in slow flow, for the ground piles air up before the lip and draws it
   * away behind, and less in fast flow, where the entry costs dynamic head.
   */
  @Test
  void movingGroundAloneDragsAirThroughAShortGap() {
    for (double speed : new double[] {0.02, -0.02, 15, -15}) {
      double leak = leak(Lips.flat(8), 2, 0, speed) / (speed * 2e-3);
      boolean slow = Math.abs(speed) < 1;
      assertThat(leak).as("%s m/s", speed).isBetween(slow ? 0.5 : 0.1, slow ? 0.6 : 0.5);
    }
  }

  @Test
  void spanwiseGroundLeavesALaminarLeakAlone() {
    Map<Figure, Double> still = figures(Lips.section(Lips.flat(8), 2, 20, 0, 0), Closure.LAMINAR);
    Map<Figure, Double> moving = figures(Lips.section(Lips.flat(8), 2, 20, 0, 3), Closure.LAMINAR);
    double leak = still.get(Figure.LEAK_FLOW);
    assertThat(moving.get(Figure.LEAK_FLOW)).isCloseTo(leak, within(1e-6 * leak));
    assertThat(still.get(Figure.GROUND_DRAG_SPANWISE)).isZero();
    assertThat(moving.get(Figure.GROUND_DRAG_SPANWISE)).isNegative();
    assertThat(moving.get(Figure.GROUND_POWER)).isPositive();
  }

  /** The spanwise shear feeds the eddy viscosity, which rubs the leak too. */
  @Test
  void spanwiseGroundSlowsATurbulentLeakALittle() {
    Map<Figure, Double> still = figures(Lips.section(Lips.flat(8), 2, 600, 0, 0), Closure.SST);
    Map<Figure, Double> moving = figures(Lips.section(Lips.flat(8), 2, 600, 0, 30), Closure.SST);
    assertThat(moving.get(Figure.LEAK_FLOW) / still.get(Figure.LEAK_FLOW)).isBetween(0.97, 0.9998);
  }
}
