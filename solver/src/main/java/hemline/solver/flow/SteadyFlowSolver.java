package hemline.solver.flow;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.AndersonAcceleration;
import java.util.Arrays;

/**
 * Iterates a flow problem until residuals and figure have settled, or says why they have not.
 *
 * <p>Laminar flows are solved by Newton's method. Turbulent ones, and laminar ones on which
 * Newton's method gets stuck, by the segregated iteration with Anderson acceleration, which also
 * settles flows whose plain iteration cycles. Where nothing settles, the mean over the last plain
 * iterations is the answer, marked unsteady.
 */
public final class SteadyFlowSolver {
  private static final int NEWTON_STEPS = 80;
  private static final int APPROACH_STEPS = 15;
  private static final int TRY_STEPS = 20;
  private static final int TRY_ITERATIONS = 300;
  private static final int ACCELERATION_DEPTH = 5;
  private static final int ACCELERATE_FROM = 40;

  /** History is dropped when the residual has grown by this factor over its best. */
  private static final double RUNAWAY = 20;

  private static final double SEGREGATED_GAIN = 0.2;
  private static final double NEWTON_GAIN = 0.8;

  /** Relaxation of the accelerated attempts, bold first, and of the plain one that is averaged. */
  private static final IterationSettings[] LADDER = {
    new IterationSettings(0.8, 0.5, 0.7, 2, 5e-2), new IterationSettings(0.7, 0.3, 0.6, 2, 5e-2)
  };

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
    public static final Limits DEFAULT = new Limits(600, 1000, 30, 5e-4, 1e-3, 5e-4);
  }

  /**
   * How a solve ended.
   *
   * @param status converged, unsteady, failed or cancelled
   * @param iterations spent
   * @param momentumResidual of the last state
   * @param massResidual largest cell defect after closing, over gap times velocity
   * @param figure mean of the monitored figure over the closing window
   * @param halfSpread half the spread of the figure over the closing window
   */
  public record Outcome(
      SolveStatus status,
      int iterations,
      double momentumResidual,
      double massResidual,
      double figure,
      double halfSpread) {

    /** The same with the iterations of an earlier attempt added. */
    Outcome after(int earlier) {
      return new Outcome(
          status, iterations + earlier, momentumResidual, massResidual, figure, halfSpread);
    }
  }

  private final FlowProblem problem;
  private final FlowState state;
  private final Limits limits;
  private final CancelToken cancel;
  private final FlowEquations equations;
  private final double[] figures;
  private int windowStart;
  private int spent;
  private int recorded;

  /**
   * Prepares a solve.
   *
   * @param problem what to solve
   * @param state start; becomes the answer
   * @param limits when to stop
   * @param cancel looked at in every iteration
   */
  public SteadyFlowSolver(FlowProblem problem, FlowState state, Limits limits, CancelToken cancel) {
    this.problem = problem;
    this.state = state;
    this.limits = limits;
    this.cancel = cancel;
    equations = new FlowEquations(problem, state);
    figures = new double[Math.max(NEWTON_STEPS, Math.max(limits.accelerated(), limits.plain()))];
  }

  /** Runs to an end. */
  public FlowSolution solve() {
    FlowState start = copy(state);
    SolveStatus status = SolveStatus.UNSTEADY;
    if (problem.closure() == Closure.LAMINAR) {
      status = newton(NEWTON_STEPS);
    }
    for (int rung = 0; open(status) && rung < LADDER.length; rung++) {
      if (status == SolveStatus.FAILED) {
        state.set(start);
      }
      status = accelerated(LADDER[rung], limits.accelerated());
    }
    if (open(status)) {
      if (status == SolveStatus.FAILED) {
        state.set(start);
      }
      status = averaged(LADDER[LADDER.length - 1]);
    }
    return solution(status);
  }

  /** The first of the attempts of {@link #solve} alone, on a modest budget. */
  FlowSolution attempt() {
    return solution(
        problem.closure() == Closure.LAMINAR
            ? newton(TRY_STEPS)
            : accelerated(LADDER[0], Math.min(TRY_ITERATIONS, limits.accelerated())));
  }

  /**
   * A few Newton steps towards the answer, whatever they reach.
   *
   * @return steps spent
   */
  int approach() {
    FlowState start = copy(state);
    if (newton(APPROACH_STEPS) == SolveStatus.FAILED) {
      state.set(start);
    }
    return spent;
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
    recorded = 0;
    if (cancel.isCancelled()) {
      return SolveStatus.CANCELLED;
    }
    NewtonIteration iteration = new NewtonIteration(equations, cancel);
    for (int i = 0; i < most; i++) {
      if (cancel.isCancelled()) {
        return SolveStatus.CANCELLED;
      }
      if (!iteration.step()) {
        return cancel.isCancelled() ? SolveStatus.CANCELLED : SolveStatus.FAILED;
      }
      problem.drive().adjust(state, NEWTON_GAIN);
      record();
      if (equations.momentumResidual < 0.01 * limits.momentum()
          && iteration.massResidual() < 0.01 * limits.momentum()
          && Math.abs(problem.drive().miss(state)) < limits.drive()
          && recorded > 2
          && spread(recorded - 2) <= limits.figureWindow()) {
        windowStart = recorded - 2;
        if (problem.spanwise()) {
          SpanwiseTransport.solve(equations, cancel);
        }
        return cancel.isCancelled() ? SolveStatus.CANCELLED : SolveStatus.CONVERGED;
      }
    }
    return SolveStatus.UNSTEADY;
  }

  /** Segregated iteration with Anderson acceleration. */
  private SolveStatus accelerated(IterationSettings settings, int most) {
    SegregatedIteration iteration = new SegregatedIteration(equations);
    StateVector vector =
        new StateVector(state, problem.spanwise(), problem.closure() != Closure.LAMINAR);
    AndersonAcceleration acceleration =
        new AndersonAcceleration(vector.size(), vector.judged(), ACCELERATION_DEPTH);
    double[] before = new double[vector.size()];
    double[] after = new double[vector.size()];
    double[] weight = weights();
    double best = Double.MAX_VALUE;
    recorded = 0;
    while (recorded < most) {
      if (cancel.isCancelled()) {
        return SolveStatus.CANCELLED;
      }
      vector.read(before);
      iteration.step(settings);
      problem.drive().adjust(state, SEGREGATED_GAIN);
      if (recorded >= ACCELERATE_FROM) {
        if (equations.momentumResidual > RUNAWAY * best) {
          acceleration.restart();
          best = equations.momentumResidual;
        }
        best = Math.min(best, equations.momentumResidual);
        vector.read(after);
        acceleration.accelerate(before, after, weight);
        vector.write(after);
      }
      if (!record()) {
        return SolveStatus.FAILED;
      }
      if (settled()) {
        return SolveStatus.CONVERGED;
      }
    }
    return SolveStatus.UNSTEADY;
  }

  /** Plain iteration; when it does not settle, the state becomes the mean of the second half. */
  private SolveStatus averaged(IterationSettings settings) {
    SegregatedIteration iteration = new SegregatedIteration(equations);
    MeanState mean = new MeanState(state);
    recorded = 0;
    while (recorded < limits.plain()) {
      if (cancel.isCancelled()) {
        return SolveStatus.CANCELLED;
      }
      iteration.step(settings);
      problem.drive().adjust(state, SEGREGATED_GAIN);
      if (!record()) {
        return SolveStatus.FAILED;
      }
      if (settled()) {
        return SolveStatus.CONVERGED;
      }
      if (2 * recorded > limits.plain()) {
        mean.add(state);
      }
    }
    mean.putInto(state);
    windowStart = limits.plain() / 2;
    return SolveStatus.UNSTEADY;
  }

  /** Notes the figure; false when the numbers have run away. */
  private boolean record() {
    double figure = problem.drive().monitor(state);
    figures[recorded++] = figure;
    spent++;
    return Double.isFinite(figure) && equations.momentumResidual < 1e8;
  }

  private boolean settled() {
    if (recorded < limits.window()
        || equations.momentumResidual > limits.momentum()
        || Math.abs(problem.drive().miss(state)) > limits.drive()) {
      return false;
    }
    windowStart = recorded - limits.window();
    return spread(windowStart) <= limits.figureWindow();
  }

  /** Relative spread of the figure since an iteration; a figure near zero has a least size. */
  private double spread(int from) {
    double low = Arrays.stream(figures, from, recorded).min().orElse(0);
    double high = Arrays.stream(figures, from, recorded).max().orElse(0);
    double size = Math.max(Math.abs(low), Math.abs(high));
    return (high - low) / Math.max(Math.max(size, problem.drive().least()), Double.MIN_NORMAL);
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
    double figure = 0;
    double half = 0;
    if (recorded > windowStart) {
      figure = Arrays.stream(figures, windowStart, recorded).average().orElse(0);
      half = 0.5 * spread(windowStart) * Math.abs(figure);
    }
    return equations.solution(
        new Outcome(
            status,
            spent,
            Math.min(Double.MAX_VALUE, equations.momentumResidual),
            mass,
            figure,
            half));
  }
}
