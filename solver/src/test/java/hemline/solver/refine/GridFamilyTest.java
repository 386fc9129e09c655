package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.RawFigures.Vortex;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Cavity;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Wall;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Families, what is asked of them, and how other flow models widen what they say. */
class GridFamilyTest {
  private static final FluidState FLUID = new FluidState(2, 1e-3);

  private static DuctSection duct(@Nullable Drive drive) {
    return new DuctSection(
        "duct",
        new DuctSection.Channel(0, 10, 1),
        List.of(),
        FLUID,
        new DuctSection.Inflow(drive, drive == null ? null : Inlet.DEVELOPED),
        new DuctSection.Walls(
            new Wall(3, 4, false), new Wall(0, 0, false), drive == null ? new Cavity(0, 0) : null),
        new DuctSection.Measures(null, 0.5),
        "auto");
  }

  @Test
  void conditionsOfLips() {
    SealSection section = Lips.section(Lips.flat(8), 2, 600, 3, 0.5);
    assertThat(section.name()).isEqualTo(section.profile().name());
    assertThat(section.drive()).isEqualTo(new Drive.Suction(600));
    assertThat(section.askedDrop()).isEqualTo(600);
    double jet = Math.sqrt(1200 / section.fluid().density());
    assertThat(Estimates.expectedLeak(section)).isCloseTo(0.7 * 2e-3 * jet, within(1e-15));
    assertThat(Estimates.expectedLeak(section.withSuction(-600)))
        .isCloseTo(-0.7 * 2e-3 * jet, within(1e-15));
  }

  /** A jet of coefficient 0.7 through the reference gap, the leak asked for, or none. */
  @Test
  void conditionsOfDucts() {
    DuctSection flow = duct(new Drive.LeakFlow(0.4));
    assertThat(flow.ground()).isEqualTo(new GroundMotion(3, 4));
    assertThat(flow.askedDrop()).isZero();
    assertThat(Estimates.expectedLeak(flow)).isEqualTo(0.4);
    DuctSection drop = duct(new Drive.PressureDrop(-9));
    assertThat(drop.askedDrop()).isEqualTo(-9);
    assertThat(Estimates.expectedLeak(drop)).isCloseTo(-0.7 * 0.5 * 3, within(1e-15));
    assertThat(duct(null).askedDrop()).isZero();
    assertThat(Estimates.expectedLeak(duct(null))).isZero();
  }

  @Test
  void anAnswerWithoutAFlow() {
    Notice reason = NoticeKind.SOLVE_STOPPED.of();
    DuctSection asked = duct(new Drive.PressureDrop(9));
    SectionResult drop = Estimates.without(asked, Closure.SST, SolveStatus.FAILED, reason);
    assertThat(drop.conditions().suction()).isEqualTo(9);
    assertThat(drop.status()).isEqualTo(SolveStatus.FAILED);
    assertThat(drop.closure()).isEqualTo("sst");
    assertThat(drop.notices()).containsExactly(reason);
    // 0.7 · 0.5 · 3 / 0.001 = 1050
    assertThat(drop.regime()).isEqualTo(Regime.at(1050));
    assertThat(drop.regime()).isNotEqualTo(Regime.at(1.05e-3));
    DuctSection flow = duct(new Drive.LeakFlow(4));
    assertThat(
            Estimates.without(flow, Closure.SST, SolveStatus.FAILED, reason).conditions().suction())
        .isZero();
  }

  @Test
  void theFinestUsableGridCounts() {
    GridFamily family =
        MadeUpGrids.family(
            Closure.SST, MadeUpGrids.leak(0, 1), MadeUpGrids.leak(1, 2), MadeUpGrids.failed(2));
    assertThat(Objects.requireNonNull(family.finestUsable()).run())
        .isEqualTo(MadeUpGrids.leak(1, 2));
    assertThat(MadeUpGrids.family(Closure.SST, MadeUpGrids.leak(0, 1)).finestUsable()).isNotNull();
    assertThat(MadeUpGrids.family(Closure.SST, MadeUpGrids.failed(0)).finestUsable()).isNull();
    assertThat(family.cancelled()).isFalse();
    GridRun stopped = MadeUpGrids.run(1, SolveStatus.CANCELLED, MadeUpGrids.figures(1), 0);
    assertThat(MadeUpGrids.family(Closure.SST, MadeUpGrids.leak(0, 1), stopped).cancelled())
        .isTrue();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MadeUpGrids.family(Closure.AUTO))
        .withMessageContaining("AUTO");
  }

  @Test
  void fieldsMayBeLeftOut() {
    GridSolution bare = new GridSolution(MadeUpGrids.leak(0, 1));
    assertThat(bare.hasField()).isFalse();
    assertThatIllegalStateException().isThrownBy(bare::field);
    GridSolution full = new GridSolution(MadeUpGrids.leak(0, 1), MadeUpGrids.still());
    assertThat(full.hasField()).isTrue();
    assertThat(full.field().mesh().cells).isEqualTo(1);
  }

  /** Figures of the flow go with it, pressures with its square, friction for itself. */
  @Test
  void residualsOfTheModels() {
    for (ModelResidual r : ModelResidual.values()) {
      for (Closure closure : List.of(Closure.SA, Closure.SST)) {
        double flow = r.flow(closure);
        assertThat(flow).isBetween(0.01, 0.3);
        assertThat(r.of(closure, Figure.LEAK_FLOW, -3, 7)).isCloseTo(3 * flow, within(1e-15));
        assertThat(r.of(closure, Figure.LIP_FORCE_X, -3, 2)).isCloseTo(6 * flow, within(1e-15));
        assertThat(r.of(closure, Figure.LIP_FORCE_X, -3, 7)).isCloseTo(14 * flow, within(1e-15));
        assertThat(r.of(closure, Figure.GROUND_DRAG, -3, 7))
            .isCloseTo(3 * ModelResidual.friction(closure), within(1e-15));
      }
    }
    // the one-equation model is better at edges, the other at walls
    assertThat(ModelResidual.SEPARATED.flow(Closure.SA))
        .isLessThan(ModelResidual.SEPARATED.flow(Closure.SST));
    assertThat(ModelResidual.ratio(Closure.SA))
        .isLessThan(ModelResidual.ratio(Closure.SST))
        .isPositive();
    assertThat(ModelResidual.friction(Closure.SST))
        .isLessThan(ModelResidual.friction(Closure.SA))
        .isPositive();
  }

  /** Twice the laminar share, 2 (1 − ln(q/ν / 500) / ln 20)³, must be a tenth at least. */
  @Test
  void faintModelsAreNotSolved() {
    double edge = 500 * Math.pow(20, 1 - Math.cbrt(0.05));
    assertThat(TransitionFade.counts(Closure.SA, Closure.LAMINAR, 0.99 * edge)).isTrue();
    assertThat(TransitionFade.counts(Closure.SA, Closure.LAMINAR, 1.01 * edge)).isFalse();
    assertThat(TransitionFade.counts(Closure.SA, Closure.SST, 1e6)).isTrue();
    // by the laminar answer twice what is left: a twentieth of the flow is turbulent
    double start = 500 * Math.pow(20, 1 - Math.cbrt(0.95));
    assertThat(TransitionFade.counts(Closure.LAMINAR, Closure.SA, 0.99 * start)).isFalse();
    assertThat(TransitionFade.counts(Closure.LAMINAR, Closure.SA, 1.01 * start)).isTrue();
    assertThat(TransitionFade.weight(Closure.LAMINAR, Closure.SA, 1e5)).isEqualTo(1);
  }

  private static GridRun eddies(int place, Vortex... vortices) {
    return MadeUpGrids.run(
        place,
        SolveStatus.CONVERGED,
        new RawFigures(Map.of(Figure.LEAK_FLOW, 1.0), List.of(), List.of(), List.of(vortices)),
        0);
  }

  /** Eddies under another model widen the band to either side; one that it lacks down to zero. */
  @Test
  void eddiesUnderOtherModels() {
    Vortex left = new Vortex(0.3, 1, 1);
    Vortex right = new Vortex(0.2, 5, 1);
    GridFamily own = MadeUpGrids.family(Closure.SST, eddies(0, left, right));
    GridFamily other = MadeUpGrids.family(Closure.SA, eddies(0, new Vortex(0.37, 1.2, 1)));
    FigureSeries series = FigureSeries.of(own);
    List<GridFamily> others = List.of(other, MadeUpGrids.family(Closure.SA, MadeUpGrids.failed(0)));
    var found =
        VortexMatching.estimates(series, others, new ModelSpread(Closure.SST, series, others, 1e5));
    assertThat(found).hasSize(2);
    assertThat(found.get(0).strength().modelHigh()).isCloseTo(0.07, within(1e-12));
    assertThat(found.get(0).strength().modelLow()).isZero();
    assertThat(found.get(1).strength().modelHigh()).isZero();
    assertThat(found.get(1).strength().modelLow()).isCloseTo(0.2, within(1e-12));
    // half of it where the other model is laminar and half gone
    double half = 500 * Math.pow(20, 1 - Math.cbrt(0.25));
    GridFamily laminar = MadeUpGrids.family(Closure.LAMINAR, eddies(0, new Vortex(0.37, 1.2, 1)));
    List<GridFamily> faded = List.of(laminar);
    var less =
        VortexMatching.estimates(series, faded, new ModelSpread(Closure.SST, series, faded, half));
    assertThat(less.get(0).strength().modelHigh()).isCloseTo(0.035, within(1e-12));
    assertThat(less.get(1).strength().modelLow()).isCloseTo(0.1, within(1e-12));
  }

  /** Each eddy is taken once, the nearest pair first, within half the way to the next eddy. */
  @Test
  void eddiesAreMatchedByTheirCentres() {
    List<Vortex> fine = List.of(new Vortex(0.3, 0, 0), new Vortex(0.2, 4, 0));
    Vortex between = new Vortex(0.1, 1.9, 0);
    Vortex near = new Vortex(0.15, 0.5, 0);
    assertThat(VortexMatching.match(fine, List.of(between, near))).containsExactly(near, null);
    assertThat(VortexMatching.match(fine, List.of(between))).containsExactly(between, null);
    Vortex far = new Vortex(0.1, 6.1, 0);
    assertThat(VortexMatching.match(fine, List.of(far))).containsExactly(null, null);
    Vortex edge = new Vortex(0.1, 6, 0);
    assertThat(VortexMatching.match(fine, List.of(edge))).containsExactly(null, edge);
  }
}
