package hemline.solver.refine;

import static hemline.solver.refine.MadeUpGrids.failed;
import static hemline.solver.refine.MadeUpGrids.figures;
import static hemline.solver.refine.MadeUpGrids.leak;
import static hemline.solver.refine.MadeUpGrids.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** When a second start is tried, what counts as another flow, and how the answer tells of it. */
class BranchesTest {
  private static final FluidState AIR = new FluidState(1.225, 1.46e-5);
  private static final SealSection LIP = MadeUpGrids.lip(2e-3, 600, GroundMotion.STILL, AIR);

  private static GridRun with(int place, double leak, double discharge) {
    return run(
        place,
        SolveStatus.CONVERGED,
        new RawFigures(
            Map.of(Figure.LEAK_FLOW, leak, Figure.DISCHARGE_COEFFICIENT, discharge),
            List.of(),
            List.of(),
            List.of()),
        0);
  }

  @Test
  void gridsFurtherApartThanTheirErrorAskForASecondStart() {
    assertThat(Branches.disagree(List.of(leak(0, 1.4), leak(1, 1.02), leak(2, 1)))).isFalse();
    assertThat(Branches.disagree(List.of(leak(0, 1.4), leak(1, 1.04), leak(2, 1)))).isTrue();
    assertThat(Branches.disagree(List.of(leak(0, -1.4), leak(1, -1), leak(2, -1.04)))).isTrue();
  }

  @Test
  void aBrokenFamilyIsLeftAlone() {
    assertThat(Branches.disagree(List.of(leak(0, 1), leak(1, 2)))).isFalse();
    assertThat(Branches.disagree(List.of(leak(0, 1), leak(1, 2), failed(2)))).isFalse();
  }

  @Test
  void anotherFlowIsASettledOneFarFromTheFirst() {
    List<GridRun> runs = List.of(leak(0, 1.4), leak(1, 1.2), leak(2, 1.1));
    GridRun far = leak(2, 1);
    assertThat(Branches.other(runs, far)).isSameAs(far);
    assertThat(Branches.other(runs, leak(2, 1.09))).isNull();
    assertThat(Branches.other(runs, run(2, SolveStatus.UNSTEADY, figures(1), 0))).isNull();
    assertThat(Branches.other(runs, failed(2))).isNull();
  }

  @Test
  void theAnswerNamesBothFlowsAndItsBandReachesBoth() {
    GridFamily family =
        MadeUpGrids.family(
                Closure.SA, with(0, 0.06, 0.961), with(1, 0.0599, 0.9594), with(2, 0.05985, 0.9586))
            .beside(with(2, 0.0719, 1.151));
    SectionResult result = Estimates.result(LIP, 0, family, List.of(), List.of(), false);

    assertThat(result.notices()).contains(NoticeKind.FLOW_TWO_FOUND.of(0.9586, 1.151));
    var leak = result.figures().get(Figure.LEAK_FLOW);
    assertThat(leak).isNotNull();
    assertThat(leak.value() + leak.numerical()).isCloseTo(0.0719, within(1e-12));
    // and so does that of a ratio to another lip
    LeakSeries series = LeakSeries.of(family, LIP, MeshLevel.MEDIUM);
    assertThat(series.spread(2)).isCloseTo(0.0719 - 0.05985, within(1e-12));
    assertThat(series.spread(1)).isZero();
  }

  @Test
  void oneFlowIsNotTalkedAbout() {
    GridFamily family = MadeUpGrids.family(Closure.SA, leak(0, 1.4), leak(1, 1.2), leak(2, 1.1));
    SectionResult result = Estimates.result(LIP, 0, family, List.of(), List.of(), false);
    assertThat(result.notices())
        .extracting(Notice::code)
        .doesNotContain("flow.two-found", "model.lost");
  }

  @Test
  void aModelThatLostTheFlowIsNamed() {
    GridFamily family =
        MadeUpGrids.family(Closure.SA, leak(0, 0.06), leak(1, 0.0599), leak(2, 0.05985))
            .after(Closure.LAMINAR);
    SectionResult result = Estimates.result(LIP, 0, family, List.of(), List.of(), false);
    assertThat(result.notices()).contains(NoticeKind.MODEL_LOST.of(List.of("laminar", "sa")));
  }
}
