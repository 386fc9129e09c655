package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.scheme.TimeDifference;

/**
 * Follows a flow in time, step by step of equal length.
 *
 * <p>Backward differences of second order (see {@link TimeDifference}) of velocity and closure, the
 * spatial scheme and the boundaries of the steady solve. Each step repeats the segregated pass,
 * from values carried on along a straight line in time, until the momentum residual, time term
 * included, has fallen by a given factor. The drive is left alone: outlet pressure and inlet flow
 * keep their values unless the caller changes them between steps.
 */
public final class TimeMarch {
  private final FlowProblem problem;
  private final FlowState state;
  private final Settings settings;
  private final FlowEquations equations;
  private final SegregatedIteration iteration;
  private final TimeDifference time;

  /**
   * How to march.
   *
   * @param step s
   * @param passes most passes per step
   * @param reduction residual at which a step ends, over that of its first pass
   * @param floor residual at which a step ends in any case, over gap times reference pressure
   * @param pass relaxation of each pass
   */
  public record Settings(
      double step, int passes, double reduction, double floor, IterationSettings pass) {

    /** Relaxation that suits steps of a few cells: with the time term little of it is needed. */
    public static final IterationSettings PASS = new IterationSettings(0.95, 0.9, 0.9, 2, 5e-2);

    /** Residuals fall by a factor of 100 in every step. */
    public static Settings of(double step) {
      return new Settings(step, 30, 1e-2, 1e-7, PASS);
    }
  }

  /**
   * What a step took.
   *
   * @param time since the start, s
   * @param passes spent
   * @param first momentum residual of the first pass, over gap times reference pressure
   * @param residual of the last pass
   */
  public record Step(double time, int passes, double first, double residual) {}

  /**
   * Prepares a march.
   *
   * @param problem the flow
   * @param state start; holds the flow after each step
   * @param settings how to march
   */
  public TimeMarch(FlowProblem problem, FlowState state, Settings settings) {
    this.problem = problem;
    this.state = state;
    this.settings = settings;
    equations = new FlowEquations(problem, state, () -> {});
    iteration = new SegregatedIteration(equations);
    time = new TimeDifference(problem.geometry().mesh, settings.step());
    equations.momentum.inTime(time);
    equations.correction.prediction.inTime(time);
    equations.closure.inTime(time);
  }

  /** Goes on by one step. */
  public Step advance() {
    equations.gradients.update(state);
    time.begin(state);
    equations.correction.prediction.surplus(
        state, equations.gradients, time.lastSurplus, time.lastBoundarySurplus);
    if (time.steps() > 1) {
      carryOn();
    }
    double first = 0;
    int passes = 0;
    do {
      iteration.step(settings.pass());
      passes++;
      if (passes == 1) {
        first = equations.momentumResidual;
      }
    } while (passes < settings.passes()
        && equations.momentumResidual > Math.max(settings.reduction() * first, settings.floor()));
    return new Step(time.steps() * settings.step(), passes, first, equations.momentumResidual);
  }

  /** The figure the drive watches. */
  public double figure() {
    return problem.drive().monitor(state);
  }

  // φ = 2 φ' - φ''
  private void carryOn() {
    FlowState a = time.last;
    FlowState b = time.beforeLast;
    line(a.u, b.u, state.u);
    line(a.v, b.v, state.v);
    line(a.w, b.w, state.w);
    line(a.p, b.p, state.p);
    line(a.flux, b.flux, state.flux);
    line(a.boundaryFlux, b.boundaryFlux, state.boundaryFlux);
  }

  private static void line(double[] a, double[] b, double[] out) {
    for (int c = 0; c < out.length; c++) {
      out[c] = 2 * a[c] - b[c];
    }
  }
}
