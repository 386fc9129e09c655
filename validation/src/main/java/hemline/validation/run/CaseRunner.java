package hemline.validation.run;

import hemline.shared.fluid.FluidState;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.Estimates;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.validation.reference.CaseSetup;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ProfileReference;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Solves reference cases and lays the computed quantities beside their references. */
public final class CaseRunner {
  /** Grids of a lip on which a second closure is solved: a spread needs no more; of a duct one. */
  private static final int GRIDS_TO_COMPARE = 2;

  private final SectionFamily family;

  /**
   * Prepares to run cases.
   *
   * @param family solves the sections
   */
  public CaseRunner(SectionFamily family) {
    this.family = family;
  }

  /** Solves one case, no ratio: a row for each expected quantity, in their order. */
  public CaseResult run(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    if (one.setup() instanceof CaseSetup.Computed computed) {
      return computed(one, ComputedCases.of(computed.key()), cancel, progress);
    }
    CaseSetup.Solved setup = (CaseSetup.Solved) one.setup();
    Section section = setup.section();
    MeshLevel level = level(one.mesh());
    Closure asked = closure(setup.closures().get(0));
    GridFamily solved =
        family.solve(
            SolveRequest.cold(section, level, SectionFamily.GRIDS, asked), cancel, progress);
    int grids = section instanceof SealSection ? GRIDS_TO_COMPARE : 1;
    List<SolveRequest> compared = new ArrayList<>();
    if (section instanceof DuctSection
        && asked == Closure.AUTO
        && solved.closure() != Closure.LAMINAR) {
      compared.add(SolveRequest.cold(section, level, grids, solved.closure().second()));
    }
    for (String other : setup.closures().subList(1, setup.closures().size())) {
      compared.add(SolveRequest.cold(section, level, grids, closure(other)));
    }
    List<GridFamily> others = new ArrayList<>();
    for (SolveRequest other : compared) {
      others.add(family.solve(other, cancel, progress));
    }
    boolean stopped =
        solved.cancelled() || cancel.isCancelled() && solved.grids().size() < SectionFamily.GRIDS;
    SectionResult result = Estimates.result(section, level, solved, others, List.of(), stopped);
    return section(one, section, solved, others, result);
  }

  private static CaseResult section(
      ReferenceCase one,
      Section section,
      GridFamily solved,
      List<GridFamily> others,
      SectionResult result) {
    List<CheckRow> rows = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      Probe probe = Probes.parse(expected.quantity(), one.profiles());
      rows.add(
          new CheckRow(
              one.name(),
              result.status(),
              ModelBand.of(
                  GridMeter.measure(
                      expected.quantity(),
                      probe,
                      expected.tolerance().scale(),
                      solved.grids(),
                      figure(expected.quantity(), result)),
                  expected,
                  probe,
                  solved.closure(),
                  others),
              expected));
    }
    GridSolution finest = solved.finestUsable();
    List<ProfileCurve> curves = new ArrayList<>();
    if (finest != null) {
      for (ProfileReference profile : one.profiles()) {
        curves.add(ProfileCurve.of(finest.field(), profile));
      }
    }
    return new CaseResult(
        one,
        result.status(),
        result.closure(),
        reynolds(section, result),
        groundRatio(section, result),
        rows,
        curves);
  }

  private static @Nullable Estimate figure(String quantity, SectionResult result) {
    for (Figure figure : Figure.values()) {
      if (figure.key().equals(quantity)) {
        return result.figures().get(figure);
      }
    }
    return null;
  }

  private static CaseResult computed(
      ReferenceCase one, ComputedCase set, CancelToken cancel, ProgressListener progress) {
    ComputedCase.Outcome outcome = set.solve(one, cancel, progress);
    progress.progress(1, one.name());
    List<CheckRow> rows = new ArrayList<>();
    for (int k = 0; k < one.expected().size(); k++) {
      rows.add(
          new CheckRow(
              one.name(), outcome.status(), outcome.quantities().get(k), one.expected().get(k)));
    }
    return new CaseResult(
        one,
        outcome.status(),
        outcome.closure(),
        outcome.gapReynolds(),
        outcome.groundRatio(),
        rows,
        outcome.profiles());
  }

  /** Leak flow over viscosity; in a cavity half its largest wall speed times the gap instead. */
  private static OptionalDouble reynolds(Section section, SectionResult result) {
    Estimate leak = result.figures().get(Figure.LEAK_FLOW);
    FluidState fluid = section.fluid();
    return leak == null || leak.value() == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.abs(leak.value()) / fluid.kinematicViscosity());
  }

  private static OptionalDouble groundRatio(Section section, SectionResult result) {
    Estimate leak = result.figures().get(Figure.LEAK_FLOW);
    return leak == null || leak.value() == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(section.ground().speed() * section.gap() / leak.value());
  }

  private static MeshLevel level(String key) {
    for (MeshLevel level : MeshLevel.values()) {
      if (level.key().equals(key)) {
        return level;
      }
    }
    throw new IllegalArgumentException("a mesh is coarse, medium or fine, got " + key);
  }

  private static Closure closure(String key) {
    for (Closure closure : Closure.values()) {
      if (closure.key().equals(key)) {
        return closure;
      }
    }
    throw new IllegalArgumentException("a closure is auto, laminar, sst or sa, got " + key);
  }
}
