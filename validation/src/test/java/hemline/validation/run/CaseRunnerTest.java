package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.validation.reference.CaseSetup;
import hemline.validation.reference.Evidence;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.FlowClass;
import hemline.validation.reference.KnownLimit;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class CaseRunnerTest {
  private static final ReferenceCase CASE = ReferenceCases.in("lips").get(0);

  /** Answers any duct with the given pressure drop, 1 % too high on the coarse grids. */
  private record Answer(double pressureDrop, SolveStatus status, List<Closure> asked)
      implements SectionFamily {

    @Override
    public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
      asked.add(request.closure());
      FlowField still =
          new FlowField(
              MeshBuilder.build(new GridLines(new double[] {0, 1}, new double[] {0, 1}), List.of()),
              new double[1],
              new double[1],
              new double[1],
              new double[1],
              new double[1],
              new FlowField.Flux(new double[0], new double[4]),
              new double[4]);
      List<GridSolution> solved = new ArrayList<>();
      for (int k = 0; k < request.grids(); k++) {
        Map<Figure, Double> scalars =
            Map.of(Figure.PRESSURE_DROP, pressureDrop * (k == 2 ? 1 : 1.01));
        RawFigures figures = new RawFigures(scalars, List.of(), List.of(), List.of());
        int cells = 100 * (k + 2) * (k + 2);
        solved.add(new GridSolution(new GridRun(cells, 1, status, 0, 0, figures, 0), still));
      }
      return new GridFamily(Closure.LAMINAR, solved);
    }
  }

  private static List<CheckRow> run(double pressureDrop, SolveStatus status) {
    return new CaseRunner(new Answer(pressureDrop, status, new ArrayList<>()))
        .run(CASE, new CancelToken(), ProgressListener.NONE)
        .rows();
  }

  @Test
  void everyExpectedFigureGetsARow() {
    double reference = CASE.expected().get(0).reference().value();
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
    double reference = CASE.expected().get(0).reference().value();
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
    new CaseRunner(answer).run(CASE, new CancelToken(), ProgressListener.NONE);
    assertThat(answer.asked()).containsExactly(Closure.LAMINAR);
  }

  @Test
  void errorAndUncertaintyAreThoseOfTheStandard() {
    double reference = CASE.expected().get(0).reference().value();
    CheckRow row = run(1.014 * reference, SolveStatus.CONVERGED).get(0);
    Estimate computed = row.computed();
    assertThat(row.comparisonError().orElseThrow()).isCloseTo(0.014 * reference, within(1e-9));
    double band = 0.5 * (computed.high() - computed.low());
    assertThat(row.validationUncertainty().orElseThrow())
        .isCloseTo(Math.hypot(band, row.expected().reference().uncertainty()), within(1e-12));
    assertThat(row.calibrates()).isTrue();
    assertThat(row.verdict()).isEqualTo(CheckRow.Verdict.PASS);
    assertThat(run(1.1 * reference, SolveStatus.CONVERGED).get(0).verdict())
        .isEqualTo(CheckRow.Verdict.FAIL);
  }

  @Test
  void aKnownLimitIsBoundedByItsMeasuredError() {
    ExpectedFigure first = CASE.expected().get(0);
    KnownLimit limit = new KnownLimit(0.05, "{value} on the grid, {error} too high");
    ReferenceCase limited = with(copy(first, Evidence.Grade.A, limit));
    assertThat(verdict(limited, 1.05, SolveStatus.CONVERGED))
        .isEqualTo(CheckRow.Verdict.KNOWN_LIMIT);
    assertThat(verdict(limited, 1.054, SolveStatus.CONVERGED))
        .isEqualTo(CheckRow.Verdict.KNOWN_LIMIT);
    assertThat(verdict(limited, 1.057, SolveStatus.CONVERGED)).isEqualTo(CheckRow.Verdict.FAIL);
    assertThat(verdict(limited, 0.96, SolveStatus.CONVERGED)).isEqualTo(CheckRow.Verdict.FAIL);
    assertThat(verdict(limited, 1.05, SolveStatus.UNSTEADY)).isEqualTo(CheckRow.Verdict.FAIL);
    assertThat(verdict(limited, 1.05, SolveStatus.FAILED)).isEqualTo(CheckRow.Verdict.FAIL);
    assertThat(verdict(limited, 1.01, SolveStatus.CONVERGED)).isEqualTo(CheckRow.Verdict.PASS);
    KnownLimit beating = new KnownLimit(0.05, "does not settle", true);
    ReferenceCase unsteady = with(copy(first, Evidence.Grade.A, beating));
    assertThat(verdict(unsteady, 1.05, SolveStatus.UNSTEADY))
        .isEqualTo(CheckRow.Verdict.KNOWN_LIMIT);
    assertThat(verdict(unsteady, 1.057, SolveStatus.UNSTEADY)).isEqualTo(CheckRow.Verdict.FAIL);
    assertThat(verdict(unsteady, 1.05, SolveStatus.FAILED)).isEqualTo(CheckRow.Verdict.FAIL);
    ReferenceCase oriented = with(copy(first, Evidence.Grade.C, null));
    assertThat(verdict(oriented, 2, SolveStatus.CONVERGED)).isEqualTo(CheckRow.Verdict.ORIENTATION);
  }

  private static CheckRow.Verdict verdict(ReferenceCase one, double factor, SolveStatus status) {
    double value = factor * one.expected().get(0).reference().value();
    CaseRunner runner = new CaseRunner(new Answer(value, status, new ArrayList<>()));
    return runner.run(one, new CancelToken(), ProgressListener.NONE).rows().get(0).verdict();
  }

  @Test
  void aSummaryCountsEachRowOnce() {
    double reference = CASE.expected().get(0).reference().value();
    CaseRunner runner =
        new CaseRunner(new Answer(reference, SolveStatus.CONVERGED, new ArrayList<>()));
    CaseResult result = runner.run(CASE, new CancelToken(), ProgressListener.NONE);
    CheckSummary summary = CheckSummary.of(List.of(result, result));
    assertThat(summary.rows()).isEqualTo(4);
    assertThat(summary.passed()).isEqualTo(2);
    assertThat(summary.failed()).isEqualTo(2);
    assertThat(summary.coverage())
        .containsExactly(new CheckSummary.Coverage(FlowClass.LAMINAR, 2, 2));
  }

  @Test
  void classesAreCountedApart() {
    double reference = CASE.expected().get(0).reference().value();
    CaseRunner runner =
        new CaseRunner(new Answer(reference, SolveStatus.CONVERGED, new ArrayList<>()));
    CaseRunner off =
        new CaseRunner(new Answer(1.2 * reference, SolveStatus.CONVERGED, new ArrayList<>()));
    CaseResult held = runner.run(CASE, new CancelToken(), ProgressListener.NONE);
    CaseResult missed =
        off.run(
            with(FlowClass.TURBULENT, CASE.expected().get(0)),
            new CancelToken(),
            ProgressListener.NONE);
    assertThat(CheckSummary.of(List.of(held, missed)).coverage())
        .containsExactly(
            new CheckSummary.Coverage(FlowClass.LAMINAR, 1, 1),
            new CheckSummary.Coverage(FlowClass.TURBULENT, 1, 0));
  }

  @Test
  void aRatioIsTakenGridByGrid() {
    CaseResult upper =
        new CaseRunner(new Answer(3, SolveStatus.CONVERGED, new ArrayList<>()))
            .run(CASE, new CancelToken(), ProgressListener.NONE);
    CaseResult lower =
        new CaseRunner(new Answer(2, SolveStatus.CONVERGED, new ArrayList<>()))
            .run(CASE, new CancelToken(), ProgressListener.NONE);
    CheckRow row = CaseRatio.of(CASE, upper, lower).rows().get(0);
    Estimate ratio = Objects.requireNonNull(row.computed());
    assertThat(ratio.value()).isCloseTo(1.5, within(1e-12));
    // both are 1 % too high on the coarse grids: the errors cancel
    assertThat(ratio.high() - ratio.low()).isLessThan(1e-9);
    Estimate alone = Objects.requireNonNull(upper.rows().get(0).computed());
    assertThat(alone.high() - alone.low()).isGreaterThan(1e-3);
    assertThat(row.calibrates()).isTrue();
    CaseResult off =
        new CaseRunner(new Answer(2, SolveStatus.UNSTEADY, new ArrayList<>()))
            .run(CASE, new CancelToken(), ProgressListener.NONE);
    assertThat(CaseRatio.of(CASE, upper, off).status()).isEqualTo(SolveStatus.UNSTEADY);
  }

  private static ReferenceCase with(ExpectedFigure expected) {
    return with(FlowClass.LAMINAR, expected);
  }

  private static ReferenceCase with(FlowClass flow, ExpectedFigure expected) {
    return new ReferenceCase(
        "odd/odd",
        new ReferenceCase.Purpose("odd", "Nothing.", "odd"),
        flow,
        CASE.setup(),
        "coarse",
        false,
        List.of(expected),
        List.of());
  }

  private static ExpectedFigure copy(
      ExpectedFigure e, Evidence.Grade grade, @Nullable KnownLimit limit) {
    return new ExpectedFigure(
        e.quantity(),
        e.reference(),
        e.tolerance(),
        new Evidence("made up", "made up", grade),
        limit);
  }

  @Test
  void anUnknownQuantityInACaseIsAFaultOfTheCase() {
    CaseRunner runner = new CaseRunner(new Answer(1, SolveStatus.CONVERGED, new ArrayList<>()));
    ReferenceCase odd =
        with(
            new ExpectedFigure(
                "colour",
                new ExpectedFigure.Reference(1, 0),
                new ExpectedFigure.Tolerance(0.1, 1, ExpectedFigure.Comparison.WITHIN, "made up"),
                new Evidence("made up", "made up", Evidence.Grade.A),
                null));
    assertThatThrownBy(() -> runner.run(odd, new CancelToken(), ProgressListener.NONE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("colour");
  }

  @Test
  void everyQuantityOfEveryCaseIsKnown() {
    for (ReferenceCase one : ReferenceCases.all()) {
      for (ExpectedFigure expected : one.expected()) {
        if (one.setup() instanceof CaseSetup.Computed computed) {
          assertThat(ComputedCases.of(computed.key())).isNotNull();
        } else if (one.setup() instanceof CaseSetup.Ratio ratio) {
          for (String part : List.of(ratio.of(), ratio.to())) {
            assertThat(ReferenceCases.named(part).expected().stream().map(ExpectedFigure::quantity))
                .as(one.name())
                .contains(expected.quantity());
          }
        } else {
          assertThat(Probes.parse(expected.quantity(), one.profiles()).unit()).isNotBlank();
        }
      }
    }
  }
}
