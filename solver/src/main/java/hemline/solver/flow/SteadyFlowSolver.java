package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.shared.result.Termination;
import hemline.shared.result.Termination.Attempt;
import hemline.shared.result.Termination.Reason;
import hemline.solver.field.FlowState;

/**
 * Iterates a flow problem until residuals and figure have settled, or says why they have not.
 *
 * <p>Laminar flows are solved by Newton's method. Turbulent ones, and laminar ones on which
 * Newton's method gets stuck, by the segregated iteration with Anderson acceleration, which also
 * settles flows whose plain iteration cycles. An attempt ends early when many passes have brought
 * nothing. Where nothing settles, the mean over the last plain iterations is the answer, marked
 * unsteady. The work is bounded: each attempt has its most passes in {@link StoppingLimits}.
 */
public final class SteadyFlowSolver {
  private static final int NEWTON_STEPS = 80;

  /** Newton steps without gain, after as many, that end the attempt: each costs many passes. */
  private static final int NEWTON_IDLE = 15;

  private static final int APPROACH_STEPS = 15;

  /**
   * Inertia of Newton's first step, as a share of the diagonal: from any start, and from a near
   * one.
   */
  private static final double FIRST_INERTIA = 0.1;

  private static final double NEAR_INERTIA = 0.01;
  private static final int APPROACH_PASSES = 80;

  /** Most passes that lead to Newton's method. */
  private static final int LEAD_PASSES = 150;

  /** Momentum residual at which it takes over, and below which it may when passes are at an end. */
  private static final double LED = 1e-2;

  private static final double NEIGHBOURHOOD = 0.5;
  private static final IterationSettings APPROACH = new IterationSettings(0.5, 0.2, 0.5, 2, 5e-2);
  private static final int TRY_STEPS = 20;
  private static final int TRY_ITERATIONS = 300;

  /** Plain passes, the second half averaged, where a flow to compare with does not settle. */
  private static final int COMPARE_PASSES = 200;

  /** Closing passes of an attempt without an answer that tell why. */
  private static final int PLATEAU = 200;

  /** Momentum residual above which a state may be worth less than the start. */
  private static final double LOST = 0.1;

  private static final double SEGREGATED_GAIN = 0.2;
  private static final double NEWTON_GAIN = 0.8;

  /** Plain passes before acceleration: from any start, and from a near one. */
  private static final int FAR = 40;

  private static final int NEAR = 20;

  /** Relaxation of the accelerated attempts, bold first, and of the plain one that is averaged. */
  private static final Rung[] LADDER = {
    new Rung(new IterationSettings(0.85, 0.5, 0.9, 6, 1e-1), 12, FAR),
    new Rung(new IterationSettings(0.7, 0.3, 0.6, 2, 1e-1), 12, FAR)
  };

  /**
   * How one accelerated attempt iterates.
   *
   * @param settings relaxation of a pass
   * @param depth differences that acceleration keeps
   * @param plain passes before it
   */
  private record Rung(IterationSettings settings, int depth, int plain) {}

  /** Velocity factor on grids up to a number of cells when the start is near the answer. */
  private static final double NEAR_VELOCITY = 0.85;

  private static final int NEAR_CELLS = 7000;

  private final FlowProblem problem;
  private final FlowState state;
  private final StoppingLimits limits;
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
  public SteadyFlowSolver(
      FlowProblem problem, FlowState state, StoppingLimits limits, CancelToken cancel) {
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

  /**
   * Leads laminar flow from a start from which Newton's method goes astray to the neighbourhood of
   * the answer, by accelerated passes, each of which costs a twentieth of a Newton step.
   *
   * @return false when they did not come there; the state is the start again then
   */
  boolean lead() {
    FlowState start = copy(state);
    AcceleratedIteration iteration = iteration(LADDER[0]);
    monitor.restart();
    int most = Math.min(LEAD_PASSES, limits.accelerated());
    boolean finite = true;
    while (finite && monitor.passes() < most && equations.momentumResidual > LED) {
      cancel.check();
      iteration.step(SEGREGATED_GAIN);
      finite = note();
    }
    boolean near = finite && equations.momentumResidual < NEIGHBOURHOOD;
    if (near) {
      inertia = NEAR_INERTIA;
    } else {
      state.set(start);
    }
    return near;
  }

  private AcceleratedIteration iteration(Rung rung) {
    return new AcceleratedIteration(
        equations, monitor, cancel, rung.settings(), rung.depth(), rung.plain());
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
    return new Rung(new IterationSettings(velocity, 1, 0.95, 6, 1e-1), 12, NEAR);
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
   * @return true when they settled
   */
  boolean approach() {
    FlowState start = copy(state);
    SolveStatus status =
        problem.closure() == Closure.LAMINAR ? newton(APPROACH_STEPS) : passes(APPROACH_PASSES);
    if (status == SolveStatus.FAILED) {
      state.set(start);
    }
    return status == SolveStatus.CONVERGED;
  }

  /** What was spent so far. */
  Effort effort() {
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

  /** Newton steps until the residual is as small as asked, or they bring nothing. */
  private SolveStatus newton(int most) {
    monitor.restart();
    NewtonIteration iteration = new NewtonIteration(equations, inertia);
    while (monitor.passes() < most && !monitor.idle(0, NEWTON_IDLE)) {
      cancel.check();
      iteration.look();
      if (equations.momentumResidual < limits.newton()
          && iteration.massResidual() < limits.newton()
          && Math.abs(problem.drive().miss(state)) < limits.drive()
          && monitor.passes() > 2
          && monitor.spread(monitor.passes() - 2) <= limits.figureWindow()) {
        windowStart = monitor.passes() - 2;
        if (problem.momentum().spanwise()) {
          SpanwiseTransport.solve(equations);
        }
        return ended(Attempt.NEWTON, Reason.SETTLED);
      }
      if (!iteration.step()) {
        return ended(Attempt.NEWTON, Reason.DIVERGED);
      }
      problem.drive().adjust(state, NEWTON_GAIN);
      note();
    }
    return unsettled(Attempt.NEWTON, 0);
  }

  /** Segregated iteration with Anderson acceleration. */
  private SolveStatus accelerated(Rung rung, Attempt attempt, int most) {
    AcceleratedIteration iteration = iteration(rung);
    monitor.restart();
    while (monitor.passes() < most && !monitor.stalled()) {
      cancel.check();
      iteration.step(SEGREGATED_GAIN);
      if (!note()) {
        return ended(attempt, Reason.DIVERGED);
      }
      if (settled()) {
        return ended(attempt, Reason.SETTLED);
      }
    }
    return unsettled(attempt, Math.max(0, monitor.passes() - PLATEAU));
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

  private FlowSolution solution(SolveStatus status) {
    FlowProblem.Scales scales = problem.scales();
    double mass = Double.MAX_VALUE;
    if (status != SolveStatus.FAILED) {
      mass = equations.finish() / (scales.length() * scales.velocity());
    }
    double figure = monitor.mean(windowStart);
    return equations.solution(
        new SolveOutcome(
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
