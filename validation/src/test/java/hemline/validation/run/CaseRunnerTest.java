package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CaseRunnerTest {
  private static final ReferenceCase CASE = ReferenceCases.in("lips").get(0);
  private static final RunOptions OPTIONS =
      new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, false, 1);

  /** Answers any duct with the given pressure drop, 1 % too high on the coarse grids. */
  private record Answer(double pressureDrop, SolveStatus status, List<Closure> asked)
      implements SectionFamily {

    @Override
    public GridFamily solve(
        DuctSection section,
        MeshLevel level,
        int grids,
        Closure closure,
        CancelToken cancel,
        ProgressListener progress) {
      asked.add(closure);
      FlowField still =
          new FlowField(
              MeshBuilder.build(new GridLines(new double[] {0, 1}, new double[] {0, 1}), List.of()),
              new double[1],
              new double[1],
              new double[1],
              new double[1],
              new double[1],
              new double[0],
              new double[4],
              new double[4]);
      List<GridSolution> solved = new ArrayList<>();
      for (int k = 0; k < grids; k++) {
        Map<Figure, Double> scalars =
            Map.of(Figure.PRESSURE_DROP, pressureDrop * (k == 2 ? 1 : 1.01));
        RawFigures figures = new RawFigures(scalars, List.of(), List.of(), List.of());
        int cells = 100 * (k + 2) * (k + 2);
        solved.add(new GridSolution(new GridRun(cells, 1, status, 0, 0, figures, 0), still));
      }
      return new GridFamily(Closure.LAMINAR, solved);
    }

    @Override
    public GridFamily solve(
        SealSection section,
        MeshLevel level,
        int grids,
        Closure closure,
        CancelToken cancel,
        ProgressListener progress) {
      throw new IllegalStateException("no lip is asked here");
    }
  }

  private static List<CheckRow> run(double pressureDrop, SolveStatus status) {
    return new CaseRunner(new Answer(pressureDrop, status, new ArrayList<>()), OPTIONS)
        .run(CASE, new CancelToken(), ProgressListener.NONE);
  }

  @Test
  void everyExpectedFigureGetsARow() {
    double reference = CASE.expected().get(0).reference();
    List<CheckRow> rows = run(1.014 * reference, SolveStatus.CONVERGED);
    assertThat(rows).hasSize(2);
    CheckRow drop = rows.get(0);
    assertThat(drop.caseName()).isEqualTo(CASE.name());
    assertThat(drop.relativeError().orElseThrow()).isCloseTo(0.014, within(1e-12));
    assertThat(drop.pass()).isTrue();
    assertThat(drop.insideBand()).isTrue();
    CheckRow force = rows.get(1);
    assertThat(force.computed()).isNull();
    assertThat(force.pass()).isFalse();
    assertThat(force.insideBand()).isFalse();
    assertThat(force.relativeError()).isEmpty();
  }

  @Test
  void onlyAConvergedValueWithinTheTolerancePasses() {
    double reference = CASE.expected().get(0).reference();
    assertThat(run(1.016 * reference, SolveStatus.CONVERGED).get(0).pass()).isFalse();
    assertThat(run(reference, SolveStatus.UNSTEADY).get(0).pass()).isFalse();
    CheckRow failed = run(reference, SolveStatus.FAILED).get(0);
    assertThat(failed.pass()).isFalse();
    assertThat(failed.computed()).isNull();
    assertThat(run(1.2 * reference, SolveStatus.CONVERGED).get(0).insideBand()).isFalse();
  }

  @Test
  void theModelOfTheCaseIsAsked() {
    Answer answer = new Answer(1, SolveStatus.CONVERGED, new ArrayList<>());
    new CaseRunner(answer, OPTIONS).run(CASE, new CancelToken(), ProgressListener.NONE);
    assertThat(answer.asked()).containsExactly(Closure.LAMINAR);
  }

  @Test
  void anUnknownFigureInACaseIsAFaultOfTheCase() {
    ReferenceCase odd =
        new ReferenceCase(
            "odd", CASE.section(), List.of(new ExpectedFigure("colour", 1, 0, 0.1)), "made up");
    CaseRunner runner =
        new CaseRunner(new Answer(1, SolveStatus.CONVERGED, new ArrayList<>()), OPTIONS);
    assertThatThrownBy(() -> runner.run(odd, new CancelToken(), ProgressListener.NONE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("colour");
  }
}
