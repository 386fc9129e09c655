package hemline.solver.refine;

import hemline.shared.fluid.FluidState;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSetup;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SectionSetup;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.SolvedSection;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import hemline.solver.measure.SectionMeter;
import java.util.List;
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
  public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
    FlowSetup setup = FlowSetup.of(request.section());
    Closure chosen = request.closure() == Closure.AUTO ? choose(setup) : request.closure();
    if (cancel.isCancelled()) {
      return new GridFamily(chosen, List.of());
    }
    Grids grids = new Grids(setup, design(setup, request.level()), cancel);
    GridFamily family = grids.solve(request, chosen, progress);
    // where the choice is left open and its flow is lost, the second opinion's
    boolean lost =
        request.closure() == Closure.AUTO
            && !cancel.isCancelled()
            && !family.grids().isEmpty()
            && family.finestUsable() == null;
    return lost ? grids.solve(request, chosen.second(), progress).after(chosen) : family;
  }

  /** The grids of one section. */
  private record Grids(FlowSetup setup, GridDesign design, CancelToken cancel) {

    GridFamily solve(SolveRequest request, Closure used, ProgressListener progress) {
      List<FlowSolution> flows =
          SequencedSolver.solve(
              g -> setup.problem(design.lines(MULTIPLIERS[g]), used, cancel),
              request.grids(),
              setup.startPressure(),
              setup.startFlow(),
              problem -> start(problem, request.before()),
              setup instanceof SectionSetup ? StoppingLimits.LEAK : StoppingLimits.FIELD,
              cancel,
              progress);
      double rho = request.section().fluid().density();
      List<GridSolution> grids =
          flows.stream()
              .map(
                  f ->
                      new GridSolution(
                          SectionMeter.measure(setup, f),
                          f.field(rho, setup.referencePressure(f)),
                          f))
              .toList();
      if (!(setup instanceof SectionSetup lip)) {
        return new GridFamily(used, grids);
      }
      boolean offers = !flows.isEmpty() && flows.get(0).outcome().status() == SolveStatus.CONVERGED;
      GridFamily family =
          new GridFamily(
              used,
              grids,
              offers ? new SolvedSection(lip, flows.get(0).problem(), flows.get(0).state()) : null);
      return used == Closure.LAMINAR || !Branches.disagree(family.runs())
          ? family
          : besideFromRest(family);
    }

    private @Nullable FlowState start(FlowProblem problem, List<SolvedSection> before) {
      if (setup instanceof SectionSetup lip) {
        for (SolvedSection solved : before) {
          if (solved.starts(problem.closure())) {
            return solved.startOf(lip, problem);
          }
        }
      }
      return null;
    }

    /** Looks for another flow on the finest grid, from fluid at rest. */
    private GridFamily besideFromRest(GridFamily family) {
      List<FlowSolution> again =
          SequencedSolver.solve(
              g -> setup.problem(design.lines(MULTIPLIERS[GRIDS - 1]), family.closure(), cancel),
              1,
              setup.startPressure(),
              setup.startFlow(),
              StoppingLimits.LEAK,
              cancel,
              ProgressListener.NONE);
      return family.beside(
          again.isEmpty()
              ? null
              : Branches.other(family.runs(), SectionMeter.measure(setup, again.get(0))));
    }
  }

  /**
   * The coarsest grid of a section with a flow of zeros, to be filled with one that was kept.
   *
   * @param closure flow model, never {@link Closure#AUTO}
   */
  public static SolvedSection unfilled(SealSection section, MeshLevel level, Closure closure) {
    SectionSetup setup = new SectionSetup(section);
    FlowProblem problem = setup.problem(design(setup, level).lines(MULTIPLIERS[0]), closure);
    Mesh mesh = problem.geometry().mesh;
    return new SolvedSection(
        setup, problem, new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces));
  }

  /** The mesh of a section at a place of its family, coarsest 0. */
  public static Mesh mesh(Section section, MeshLevel level, int place) {
    FlowSetup setup = FlowSetup.of(section);
    GridLines lines = design(setup, level).lines(MULTIPLIERS[place]);
    return setup.problem(lines, Closure.LAMINAR).geometry().mesh;
  }

  /** The grid lines of a section, for all its grids. */
  public static GridDesign design(FlowSetup setup, MeshLevel level) {
    Section section = setup.drawn();
    if (section instanceof SealSection lip) {
      return GridDesign.of(setup.domain(), lip.gap(), gapReynolds(lip), level);
    }
    return ((DuctSection) section).walls().cavity() == null
        ? GridDesign.ofDuct(setup.domain(), section.gap(), level)
        : GridDesign.ofCavity(setup.domain(), section.gap(), level);
  }

  /** The flow model that {@link Closure#AUTO} stands for in a section. */
  public static Closure choose(FlowSetup setup) {
    Section section = setup.drawn();
    if (section instanceof SealSection lip) {
      return byReynolds(gapReynolds(lip), true);
    }
    DuctSection duct = (DuctSection) section;
    DuctSection.Wall ceiling = duct.walls().upper();
    double wall =
        Math.max(speed(duct.ground()), Math.hypot(ceiling.speed(), ceiling.spanwiseSpeed()));
    double flow = Math.max(Math.abs(setup.startFlow()), 0.5 * wall * duct.gap());
    return byReynolds(flow / duct.fluid().kinematicViscosity(), !duct.obstacles().isEmpty());
  }

  /** Gap Reynolds number to expect. */
  private static double gapReynolds(SealSection section) {
    FluidState fluid = section.fluid();
    double drive = Math.abs(section.suction()) / fluid.density();
    double jet = TYPICAL_DISCHARGE * Math.sqrt(2 * drive);
    return Math.max(jet, 0.5 * speed(section.ground()))
        * section.gap()
        / fluid.kinematicViscosity();
  }

  private static double speed(GroundMotion ground) {
    return Math.hypot(ground.speed(), ground.spanwiseSpeed());
  }

  private static Closure byReynolds(double gapReynolds, boolean edges) {
    return gapReynolds < LAMINAR_BELOW ? Closure.LAMINAR : Closure.turbulent(edges);
  }
}
