package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.SolveOutcome;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ProfileReference;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * A flow whose boundary is given in code, on a family of grids.
 *
 * <p>It measures what {@link Probes} know, quantities of its own, and {@code order of …} one of its
 * own: the order with which it falls between the two finest grids.
 *
 * @param sizes of the grids as cells per some length, coarsest first
 * @param problems problem on a grid of a size; density is 1
 * @param inletFlow start value of the prescribed inlet flow
 * @param own quantities of its own by name
 * @param gapReynolds see {@link CaseResult}
 * @param groundRatio see {@link CaseResult}
 * @param limits when the solver stops
 * @param second the same problem under the second turbulence model; null where the flow is laminar
 */
record FlowCase(
    int[] sizes,
    IntFunction<FlowProblem> problems,
    double inletFlow,
    Map<String, Own> own,
    OptionalDouble gapReynolds,
    OptionalDouble groundRatio,
    StoppingLimits limits,
    @Nullable IntFunction<FlowProblem> second)
    implements ComputedCase {
  private static final String ORDER = "order of ";
  private static final StoppingLimits STRICT = new StoppingLimits(3000, 300, 30, 1e-5, 1e-5, 1e-6);

  /** For layers and eddies, which go on growing long after the leak stands still. */
  static final StoppingLimits GROWING = new StoppingLimits(3000, 1000, 30, 2e-5, 3e-5, 5e-4);

  /** A laminar flow. */
  FlowCase(
      int[] sizes,
      IntFunction<FlowProblem> problems,
      double inletFlow,
      Map<String, Own> own,
      OptionalDouble gapReynolds,
      OptionalDouble groundRatio) {
    this(sizes, problems, inletFlow, own, gapReynolds, groundRatio, STRICT, null);
  }

  /**
   * A quantity of the case's own.
   *
   * @param unit SI
   * @param distance true for an error against the exact flow
   * @param value measured on one grid
   */
  record Own(String unit, boolean distance, ToDoubleFunction<FlowSolution> value) implements Probe {
    @Override
    public double of(GridSolution grid) {
      FlowSolution flow = grid.flow();
      return flow == null ? Double.NaN : value.applyAsDouble(flow);
    }
  }

  @Override
  public Outcome solve(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> problems.apply(sizes[g]), sizes.length, 0, inletFlow, limits, cancel, progress);
    List<GridSolution> grids = flows.stream().map(FlowCase::grid).toList();
    SolveStatus status =
        flows.size() < sizes.length
            ? cancel.isCancelled() ? SolveStatus.CANCELLED : SolveStatus.FAILED
            : grids.get(grids.size() - 1).run().status();
    List<GridFamily> others =
        second == null || cancel.isCancelled() ? List.of() : List.of(second(second, cancel));
    List<@Nullable Measured> quantities = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      quantities.add(measure(expected, one, grids, others));
    }
    List<ProfileCurve> curves = new ArrayList<>();
    if (!grids.isEmpty()) {
      for (ProfileReference profile : one.profiles()) {
        curves.add(ProfileCurve.of(grids.get(grids.size() - 1).field(), profile));
      }
    }
    String closure = flows.isEmpty() ? "" : flows.get(0).problem().closure().key();
    return new Outcome(status, closure, gapReynolds, groundRatio, quantities, curves);
  }

  /** The coarsest grid under the second turbulence model. */
  private GridFamily second(IntFunction<FlowProblem> problems, CancelToken cancel) {
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> problems.apply(sizes[g]), 1, 0, inletFlow, limits, cancel, ProgressListener.NONE);
    return new GridFamily(
        flows.get(0).problem().closure(), flows.stream().map(FlowCase::grid).toList());
  }

  private @Nullable Measured measure(
      ExpectedFigure expected,
      ReferenceCase one,
      List<GridSolution> grids,
      List<GridFamily> others) {
    String name = expected.quantity();
    if (name.startsWith(ORDER)) {
      Own falling = own.get(name.substring(ORDER.length()));
      if (falling == null) {
        throw new IllegalArgumentException(one.name() + " has no quantity for " + name);
      }
      Measured errors = GridMeter.measure(name, falling, 1, grids, null);
      return errors == null || errors.grids().size() < sizes.length
          ? null
          : new Measured(
              name,
              "1",
              Estimate.exact(GridMeter.order(errors.grids(), sizes)),
              errors.grids(),
              false);
    }
    Probe probe = own.containsKey(name) ? own.get(name) : Probes.parse(name, one.profiles());
    Measured found = GridMeter.measure(name, probe, expected.tolerance().scale(), grids, null);
    return grids.isEmpty()
        ? found
        : ModelBand.of(found, expected, probe, closure(grids.get(0)), others);
  }

  private static Closure closure(GridSolution grid) {
    FlowSolution flow = grid.flow();
    return flow == null ? Closure.LAMINAR : flow.problem().closure();
  }

  /** A flow without figures as one grid of a family. */
  static GridSolution grid(FlowSolution flow) {
    SolveOutcome outcome = flow.outcome();
    GridRun run =
        new GridRun(
            flow.problem().geometry().mesh.cells,
            outcome.iterations(),
            outcome.status(),
            outcome.massResidual(),
            outcome.momentumResidual(),
            new RawFigures(Map.of(), List.of(), List.of(), List.of()),
            0);
    return new GridSolution(run, flow.field(1, 0), flow);
  }
}
