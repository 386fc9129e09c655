package hemline.solver.refine;

import hemline.shared.fluid.FluidState;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.DuctSetup;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SectionSetup;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.SolvedSection;
import hemline.solver.flow.SteadyFlowSolver;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import hemline.solver.measure.SectionMeter;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The flow solver behind every study: three similar grids, coarsest first. */
public final class FamilySolver implements SectionFamily {
  /** Cells per design interval on the three grids: cell counts 4 : 9 : 16. */
  private static final int[] MULTIPLIERS = {2, 3, 4};

  /** Discharge coefficient to guess the gap Reynolds number by. */
  private static final double TYPICAL_DISCHARGE = 0.7;

  /** AUTO is laminar below this gap Reynolds number. Common practice, no source. */
  private static final double LAMINAR_BELOW = 1000;

  @Override
  public GridFamily solve(
      SealSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      CancelToken cancel,
      ProgressListener progress) {
    return solve(section, level, grids, closure, List.of(), cancel, progress);
  }

  @Override
  public GridFamily solve(
      SealSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      List<SolvedSection> before,
      CancelToken cancel,
      ProgressListener progress) {
    Closure chosen = closure == Closure.AUTO ? choose(section) : closure;
    SectionSetup setup = new SectionSetup(section);
    if (cancel.isCancelled()) {
      return new GridFamily(chosen, List.of());
    }
    GridDesign design = design(section, setup, level);
    return rescued(
        closure,
        chosen,
        cancel,
        used -> solve(section, setup, design, grids, used, before, cancel, progress));
  }

  /** Where the choice of a flow model is left open and its flow is lost, the second opinion's. */
  private static GridFamily rescued(
      Closure asked, Closure used, CancelToken cancel, Function<Closure, GridFamily> solve) {
    GridFamily family = solve.apply(used);
    boolean lost =
        asked == Closure.AUTO
            && !cancel.isCancelled()
            && !family.grids().isEmpty()
            && family.finestUsable() == null;
    return lost ? solve.apply(used.second()).after(used) : family;
  }

  private static GridFamily solve(
      SealSection section,
      SectionSetup setup,
      GridDesign design,
      int grids,
      Closure used,
      List<SolvedSection> before,
      CancelToken cancel,
      ProgressListener progress) {
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> setup.problem(design.lines(MULTIPLIERS[g]), used, cancel),
            grids,
            -section.suction() / section.fluid().density(),
            0,
            problem -> start(setup, problem, before),
            SteadyFlowSolver.Limits.DEFAULT,
            cancel,
            progress);
    double rho = section.fluid().density();
    GridFamily family =
        new GridFamily(
            used,
            flows.stream()
                .map(
                    f ->
                        new GridSolution(
                            SectionMeter.measure(section, setup, f), f.field(rho, 0), f))
                .toList(),
            flows.isEmpty() || flows.get(0).outcome().status() != SolveStatus.CONVERGED
                ? null
                : new SolvedSection(setup, flows.get(0).problem(), flows.get(0).state()));
    if (used == Closure.LAMINAR || !Branches.disagree(family.runs())) {
      return family;
    }
    int finest = MULTIPLIERS[GRIDS - 1];
    List<FlowSolution> again =
        SequencedSolver.solve(
            g -> setup.problem(design.lines(finest), used, cancel),
            1,
            -section.suction() / rho,
            0,
            SteadyFlowSolver.Limits.DEFAULT,
            cancel,
            ProgressListener.NONE);
    return family.beside(
        again.isEmpty()
            ? null
            : Branches.other(family.runs(), SectionMeter.measure(section, setup, again.get(0))));
  }

  /**
   * The coarsest grid of a section with a flow of zeros, to be filled with one that was kept.
   *
   * @param closure flow model, never {@link Closure#AUTO}
   */
  public static SolvedSection unfilled(SealSection section, MeshLevel level, Closure closure) {
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = design(section, setup, level);
    FlowProblem problem = setup.problem(design.lines(MULTIPLIERS[0]), closure);
    Mesh mesh = problem.geometry().mesh;
    return new SolvedSection(
        setup, problem, new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces));
  }

  private static @Nullable FlowState start(
      SectionSetup setup, FlowProblem problem, List<SolvedSection> before) {
    for (SolvedSection solved : before) {
      if (solved.starts(problem.closure())) {
        return solved.startOf(setup, problem);
      }
    }
    return null;
  }

  @Override
  public GridFamily solve(
      DuctSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      CancelToken cancel,
      ProgressListener progress) {
    DuctSetup setup = new DuctSetup(section);
    Closure chosen = closure == Closure.AUTO ? choose(section, setup) : closure;
    if (cancel.isCancelled()) {
      return new GridFamily(chosen, List.of());
    }
    GridDesign design =
        section.cavity() == null
            ? GridDesign.ofDuct(setup.domain(), section.referenceGap(), level)
            : GridDesign.ofCavity(setup.domain(), section.referenceGap(), level);
    return rescued(
        closure,
        chosen,
        cancel,
        used -> solve(section, setup, design, grids, used, cancel, progress));
  }

  private static GridFamily solve(
      DuctSection section,
      DuctSetup setup,
      GridDesign design,
      int grids,
      Closure used,
      CancelToken cancel,
      ProgressListener progress) {
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> setup.problem(design.lines(MULTIPLIERS[g]), used, cancel),
            grids,
            0,
            setup.startFlow(),
            SteadyFlowSolver.Limits.DEFAULT,
            cancel,
            progress);
    double rho = section.fluid().density();
    return new GridFamily(
        used,
        flows.stream()
            .map(
                f ->
                    new GridSolution(
                        SectionMeter.measure(section, setup, f),
                        f.field(rho, setup.referencePressure(f)),
                        f))
            .toList());
  }

  /** The grid lines of a section, for all its grids. */
  public static GridDesign design(SealSection section, SectionSetup setup, MeshLevel level) {
    return GridDesign.of(setup.domain(), section.gap(), gapReynolds(section), level);
  }

  /** The flow model that {@link Closure#AUTO} stands for in a section. */
  public static Closure choose(SealSection section) {
    return byReynolds(gapReynolds(section), true);
  }

  /** Gap Reynolds number to expect. */
  private static double gapReynolds(SealSection section) {
    FluidState fluid = section.fluid();
    double drive = Math.abs(section.suction()) / fluid.density();
    double jet = TYPICAL_DISCHARGE * Math.sqrt(2 * drive);
    double speed =
        Math.max(jet, 0.5 * Math.hypot(section.ground().speed(), section.ground().spanwiseSpeed()));
    return speed * section.gap() / fluid.kinematicViscosity();
  }

  private static Closure choose(DuctSection duct, DuctSetup setup) {
    double wall =
        Math.max(
            Math.hypot(duct.ground().speed(), duct.ground().spanwiseSpeed()),
            Math.hypot(duct.ceiling().speed(), duct.ceiling().spanwiseSpeed()));
    double flow = Math.max(Math.abs(setup.startFlow()), 0.5 * wall * duct.referenceGap());
    return byReynolds(flow / duct.fluid().kinematicViscosity(), !duct.obstacles().isEmpty());
  }

  private static Closure byReynolds(double gapReynolds, boolean edges) {
    return gapReynolds < LAMINAR_BELOW ? Closure.LAMINAR : Closure.turbulent(edges);
  }
}
