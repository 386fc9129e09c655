package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.shared.result.Termination;
import hemline.shared.result.Termination.Attempt;
import hemline.shared.result.Termination.Reason;
import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.AndersonAcceleration;

/**
 * Iterates a flow problem until residuals and figure have settled, or says why they have not.
 *
 * <p>Laminar flows are solved by Newton's method. Turbulent ones, and laminar ones on which
 * Newton's method gets stuck, by the segregated iteration with Anderson acceleration, which also
 * settles flows whose plain iteration cycles. An attempt ends early when many passes have brought
 * nothing. Where nothing settles, the mean over the last plain iterations is the answer, marked
 * unsteady. The work is bounded: no grid takes more passes than {@link Limits#most}.
 */
public final class SteadyFlowSolver {
  private static final int NEWTON_STEPS = 80;
  private static final int APPROACH_STEPS = 15;

  /**
   * Inertia of Newton's first step, as a share of the diagonal: from any start, and from a near
   * one.
   */
  private static final double FIRST_INERTIA = 0.1;

  private static final double NEAR_INERTIA = 0.01;
  private static final int APPROACH_PASSES = 80;
  private static final IterationSettings APPROACH = new IterationSettings(0.5, 0.2, 0.5, 2, 5e-2);
  private static final int TRY_STEPS = 20;
  private static final int TRY_ITERATIONS = 300;

  /** Plain passes, the second half averaged, where a flow to compare with does not settle. */
  private static final int COMPARE_PASSES = 200;

  private static final int ACCELERATE_FROM = 40;

  /** Momentum residual above which the flow is too far from linear for a long memory. */
  private static final double CURVED = 1e-2;

  /** Differences that acceleration uses there. */
  private static final int SHORT = 4;

  /** Passes without gain after which acceleration goes on with another memory. */
  private static final int IDLE = 25;

  /** History is dropped when the residual has grown by this factor over its best. */
  private static final double RUNAWAY = 20;

  /** Closing passes of an attempt without an answer that tell why. */
  private static final int PLATEAU = 200;

  /** Momentum residual above which a state may be worth less than the start. */
  private static final double LOST = 0.1;

  private static final double SEGREGATED_GAIN = 0.2;
  private static final double NEWTON_GAIN = 0.8;

  /** Relaxation of the accelerated attempts, bold first, and of the plain one that is averaged. */
  private static final Rung[] LADDER = {
    new Rung(new IterationSettings(0.85, 0.5, 0.9, 6, 1e-1), 12),
    new Rung(new IterationSettings(0.7, 0.3, 0.6, 2, 1e-1), 12)
  };

  /**
   * How one accelerated attempt iterates.
   *
   * @param settings relaxation of a pass
   * @param depth differences that acceleration keeps
   */
  private record Rung(IterationSettings settings, int depth) {}

  /** Velocity factor on grids up to a number of cells when the start is near the answer. */
  private static final double NEAR_VELOCITY = 0.85;

  private static final int NEAR_CELLS = 7000;

  /**
   * When to stop.
   *
   * @param accelerated most iterations of each accelerated attempt
   * @param plain iterations of the attempt without acceleration; the second half is averaged
   * @param window iterations over which the figure must stand still
   * @param figureWindow largest relative spread of the figure in the window
   * @param momentum largest momentum residual, over gap times reference pressure
   * @param drive largest relative miss of the operating point
   */
  public record Limits(
      int accelerated, int plain, int window, double figureWindow, double momentum, double drive) {
    public static final Limits DEFAULT = new Limits(1000, 1000, 30, 5e-4, 1e-3, 5e-4);

    /** Most passes of a whole solve, all attempts together. */
    public int most() {
      return NEWTON_STEPS + (LADDER.length + 1) * accelerated + plain;
    }
  }

  /**
   * How a solve ended.
   *
   * @param status converged, unsteady or failed
   * @param iterations spent
   * @param linearIterations spent within them: cycles of the pressure multigrid, Krylov steps
   * @param momentumResidual of the last state
   * @param massResidual largest cell defect after closing, over gap times velocity
   * @param figure mean of the monitored figure over the closing window
   * @param halfSpread half the spread of the figure over the closing window
   * @param termination last attempt and why it stopped
   */
  public record Outcome(
      SolveStatus status,
      int iterations,
      int linearIterations,
      double momentumResidual,
      double massResidual,
      double figure,
      double halfSpread,
      Termination termination) {

    /** What was spent. */
    Effort effort() {
      return new Effort(iterations, linearIterations);
    }

    /** The same with the work of earlier attempts added. */
    Outcome after(Effort earlier) {
      Effort all = earlier.plus(effort());
      return new Outcome(
          status,
          all.iterations(),
          all.linearIterations(),
          momentumResidual,
          massResidual,
          figure,
          halfSpread,
          termination);
    }
  }

  private final FlowProblem problem;
  private final FlowState state;
  private final Limits limits;
  private final CancelToken cancel;
  private final FlowEquations equations;
  private final ConvergenceMonitor monitor;
  private Termination termination = new Termination(Attempt.NEWTON, Reason.CANCELLED, 0);
  private int windowStart;
  private int spent;

  /** Of the first of Newton's steps. */
  private double inertia = FIRST_INERTIA;

  /**
   * Prepares a solve.
   *
   * @param problem what to solve
   * @param state start; becomes the answer
   * @param limits when to stop
   * @param cancel stops at once, here and later, by a {@link
   *     java.util.concurrent.CancellationException}; the state is of no use then
   */
  public SteadyFlowSolver(FlowProblem problem, FlowState state, Limits limits, CancelToken cancel) {
    this.problem = problem;
    this.state = state;
    this.limits = limits;
    this.cancel = cancel;
    equations = new FlowEquations(problem, state, cancel::check);
    monitor =
        new ConvergenceMonitor(
            Math.max(NEWTON_STEPS, Math.max(limits.accelerated(), limits.plain())),
            problem.drive().least());
  }

  /** Runs to an end from a start that may be anything. */
  public FlowSolution solve() {
    return solve(LADDER);
  }

  /** Runs to an end from a start near the answer, such as the flow on a coarser grid. */
  FlowSolution refine() {
    inertia = NEAR_INERTIA;
    return solve(new Rung[] {near(), LADDER[0], LADDER[1]});
  }

  /**
   * Little relaxation, and the less the finer the grid: the distance that the flow advances in one
   * pass then stays the same, while its cells shrink.
   */
  private Rung near() {
    double finer = Math.max(1, problem.geometry().mesh.cells / (double) NEAR_CELLS);
    double velocity = 1 - (1 - NEAR_VELOCITY) / Math.sqrt(finer);
    return new Rung(new IterationSettings(velocity, 1, 0.95, 6, 1e-1), 12);
  }

  private FlowSolution solve(Rung[] ladder) {
    FlowState start = copy(state);
    SolveStatus status = SolveStatus.UNSTEADY;
    if (problem.closure() == Closure.LAMINAR) {
      status = newton(NEWTON_STEPS);
    }
    for (int i = 0; open(status) && i < ladder.length; i++) {
      if (lost(status)) {
        state.set(start);
        if (i > 0) {
          // what ran away did so in slivers at a wall, most likely
          equations.momentum.narrowOffsets();
        }
      }
      Attempt attempt = i == 0 ? Attempt.ACCELERATED : Attempt.RELAXED;
      status = accelerated(ladder[i], attempt, limits.accelerated());
    }
    if (open(status)) {
      if (lost(status)) {
        state.set(start);
      }
      status = averaged(LADDER[LADDER.length - 1].settings(), limits.plain());
    }
    return solution(status);
  }

  /** The first of the attempts of {@link #solve} alone, on a modest budget. */
  FlowSolution attempt() {
    return solution(
        problem.closure() == Closure.LAMINAR
            ? newton(TRY_STEPS)
            : accelerated(
                LADDER[0], Attempt.ACCELERATED, Math.min(TRY_ITERATIONS, limits.accelerated())));
  }

  /**
   * Runs to an end, on a modest budget, from the flow of the same section under another flow model:
   * accelerated passes also where the flow is laminar, because Newton's method goes astray from so
   * far, and the mean of plain ones where nothing settles.
   */
  FlowSolution compare() {
    SolveStatus status =
        accelerated(LADDER[0], Attempt.ACCELERATED, Math.min(TRY_ITERATIONS, limits.accelerated()));
    if (status == SolveStatus.UNSTEADY) {
      status = averaged(LADDER[0].settings(), Math.min(COMPARE_PASSES, limits.plain()));
    }
    return solution(status);
  }

  /**
   * A few steps towards the answer, whatever they reach: of Newton's method in laminar flow, else
   * much relaxed passes.
   *
   * @return what was spent
   */
  Effort approach() {
    FlowState start = copy(state);
    SolveStatus status =
        problem.closure() == Closure.LAMINAR ? newton(APPROACH_STEPS) : passes(APPROACH_PASSES);
    if (status == SolveStatus.FAILED) {
      state.set(start);
    }
    return new Effort(spent, equations.linearIterations());
  }

  private SolveStatus passes(int most) {
    SegregatedIteration iteration = new SegregatedIteration(equations);
    monitor.restart();
    while (monitor.passes() < most) {
      cancel.check();
      iteration.step(APPROACH);
      problem.drive().adjust(state, SEGREGATED_GAIN);
      if (!note()) {
        return ended(Attempt.RELAXED, Reason.DIVERGED);
      }
    }
    return unsettled(Attempt.RELAXED, 0);
  }

  /** True when the state of an attempt is no start for the next. */
  private boolean lost(SolveStatus status) {
    return status == SolveStatus.FAILED
        || !(equations.momentumResidual < Math.max(LOST, monitor.firstResidual()));
  }

  private static boolean open(SolveStatus status) {
    return status == SolveStatus.UNSTEADY || status == SolveStatus.FAILED;
  }

  private FlowState copy(FlowState s) {
    FlowState c = new FlowState(s.u.length, s.flux.length, s.boundaryFlux.length);
    c.set(s);
    return c;
  }

  /** Newton steps until the residual is a hundredth of what is asked. */
  private SolveStatus newton(int most) {
    monitor.restart();
    NewtonIteration iteration = new NewtonIteration(equations, inertia);
    for (int i = 0; i < most; i++) {
      cancel.check();
      if (!iteration.step()) {
        return ended(Attempt.NEWTON, Reason.DIVERGED);
      }
      problem.drive().adjust(state, NEWTON_GAIN);
      note();
      if (equations.momentumResidual < 0.01 * limits.momentum()
          && iteration.massResidual() < 0.01 * limits.momentum()
          && Math.abs(problem.drive().miss(state)) < limits.drive()
          && monitor.passes() > 2
          && monitor.spread(monitor.passes() - 2) <= limits.figureWindow()) {
        windowStart = monitor.passes() - 2;
        if (problem.spanwise()) {
          SpanwiseTransport.solve(equations);
        }
        return ended(Attempt.NEWTON, Reason.SETTLED);
      }
    }
    return unsettled(Attempt.NEWTON, 0);
  }

  /** Segregated iteration with Anderson acceleration. */
  private SolveStatus accelerated(Rung rung, Attempt attempt, int most) {
    SegregatedIteration iteration = new SegregatedIteration(equations);
    StateVector vector = new StateVector(state, problem.spanwise(), problem.closure());
    AndersonAcceleration acceleration =
        new AndersonAcceleration(vector.size(), vector.judged(), rung.depth());
    double[] before = new double[vector.judged()];
    double[] after = new double[vector.size()];
    double[] weight = weights();
    double best = Double.MAX_VALUE;
    int turn = 0;
    int since = ACCELERATE_FROM;
    monitor.restart();
    while (monitor.passes() < most && !monitor.stalled()) {
      cancel.check();
      boolean accelerate = monitor.passes() >= ACCELERATE_FROM;
      if (accelerate) {
        vector.readJudged(before);
      }
      iteration.step(rung.settings());
      cancel.check();
      problem.drive().adjust(state, SEGREGATED_GAIN);
      if (accelerate) {
        if (equations.momentumResidual > RUNAWAY * best) {
          acceleration.restart();
          best = equations.momentumResidual;
        }
        best = Math.min(best, equations.momentumResidual);
        if (monitor.idle(since, IDLE)) {
          turn++;
          since = monitor.passes();
          acceleration.restart();
        }
        int used = memory(turn, equations.momentumResidual > CURVED, rung.depth());
        vector.read(after);
        acceleration.accelerate(before, after, weight, used);
        vector.write(after);
      }
      if (!note()) {
        return ended(attempt, Reason.DIVERGED);
      }
      if (settled()) {
        return ended(attempt, Reason.SETTLED);
      }
    }
    return unsettled(attempt, Math.max(0, monitor.passes() - PLATEAU));
  }

  /**
   * Differences that acceleration uses.
   *
   * @param turn how often passes have brought nothing
   * @param curved true far from the answer, where a long memory misleads
   * @param depth most
   */
  private static int memory(int turn, boolean curved, int depth) {
    return switch (turn % 3) {
      case 0 -> curved ? SHORT : depth;
      case 1 -> 1;
      default -> curved ? depth : SHORT;
    };
  }

  /** Plain iteration; when it does not settle, the state becomes the mean of the second half. */
  private SolveStatus averaged(IterationSettings settings, int most) {
    SegregatedIteration iteration = new SegregatedIteration(equations);
    MeanState mean = new MeanState(state);
    monitor.restart();
    while (monitor.passes() < most) {
      cancel.check();
      iteration.step(settings);
      problem.drive().adjust(state, SEGREGATED_GAIN);
      if (!note()) {
        return ended(Attempt.AVERAGED, Reason.DIVERGED);
      }
      if (settled()) {
        return ended(Attempt.AVERAGED, Reason.SETTLED);
      }
      if (2 * monitor.passes() > most) {
        mean.add(state);
      }
    }
    mean.putInto(state);
    windowStart = most / 2;
    return unsettled(Attempt.AVERAGED, windowStart);
  }

  private SolveStatus unsettled(Attempt attempt, int from) {
    termination = monitor.unsettled(from, limits.figureWindow(), attempt);
    return SolveStatus.UNSTEADY;
  }

  private SolveStatus ended(Attempt attempt, Reason reason) {
    termination = new Termination(attempt, reason, 0);
    return switch (reason) {
      case SETTLED -> SolveStatus.CONVERGED;
      case DIVERGED -> SolveStatus.FAILED;
      default -> SolveStatus.UNSTEADY;
    };
  }

  /** Notes the figure; false when the numbers have run away. */
  private boolean note() {
    spent++;
    return monitor.note(problem.drive().monitor(state), equations.momentumResidual);
  }

  private boolean settled() {
    if (monitor.passes() < limits.window()
        || equations.momentumResidual > limits.momentum()
        || Math.abs(problem.drive().miss(state)) > limits.drive()) {
      return false;
    }
    windowStart = monitor.passes() - limits.window();
    return monitor.spread(windowStart) <= limits.figureWindow();
  }

  private double[] weights() {
    Mesh mesh = problem.geometry().mesh;
    double[] weight = new double[3 * mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      double size = Math.sqrt(mesh.volume[c]);
      weight[c] = size / problem.scales().velocity();
      weight[mesh.cells + c] = weight[c];
      weight[2 * mesh.cells + c] = size / problem.scales().pressure();
    }
    return weight;
  }

  private FlowSolution solution(SolveStatus status) {
    FlowProblem.Scales scales = problem.scales();
    double mass = Double.MAX_VALUE;
    if (status != SolveStatus.FAILED) {
      mass = equations.finish() / (scales.length() * scales.velocity());
    }
    double figure = monitor.mean(windowStart);
    return equations.solution(
        new Outcome(
            status,
            spent,
            equations.linearIterations(),
            Math.min(Double.MAX_VALUE, equations.momentumResidual),
            mass,
            figure,
            0.5 * monitor.spread(windowStart) * Math.abs(figure),
            termination));
  }
}
