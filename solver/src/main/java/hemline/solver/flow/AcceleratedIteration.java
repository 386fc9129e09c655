package hemline.solver.flow;

import hemline.solver.grid.Mesh;
import hemline.solver.linear.AndersonAcceleration;

/**
 * Segregated passes whose state is mixed with those before by Anderson acceleration, which also
 * settles flows whose plain iteration cycles.
 *
 * <p>The first passes are plain. A memory that brings nothing gives way to another, and the history
 * is dropped when the residual runs away.
 */
final class AcceleratedIteration {
  /** Momentum residual above which the flow is too far from linear for a long memory. */
  private static final double CURVED = 1e-2;

  /** Differences that acceleration uses there. */
  private static final int SHORT = 4;

  /** Passes without gain after which acceleration goes on with another memory. */
  private static final int IDLE = 25;

  /** History is dropped when the residual has grown by this factor over its best. */
  private static final double RUNAWAY = 20;

  private final FlowEquations equations;
  private final ConvergenceMonitor monitor;
  private final CancelToken cancel;
  private final IterationSettings settings;
  private final int depth;
  private final int plain;
  private final SegregatedIteration iteration;
  private final StateVector vector;
  private final AndersonAcceleration acceleration;
  private final double[] before;
  private final double[] after;
  private final double[] weight;
  private double best = Double.MAX_VALUE;
  private int turn;
  private int since;

  /**
   * Prepares passes from the present state of the equations.
   *
   * @param equations of the flow
   * @param monitor knows the passes of this attempt and whether they have brought anything
   * @param cancel looked at within a pass
   * @param settings relaxation of a pass
   * @param depth differences that acceleration keeps
   * @param plain passes before it begins
   */
  AcceleratedIteration(
      FlowEquations equations,
      ConvergenceMonitor monitor,
      CancelToken cancel,
      IterationSettings settings,
      int depth,
      int plain) {
    this.equations = equations;
    this.monitor = monitor;
    this.cancel = cancel;
    this.settings = settings;
    this.depth = depth;
    this.plain = plain;
    since = plain;
    FlowProblem problem = equations.problem;
    iteration = new SegregatedIteration(equations);
    vector = new StateVector(equations.state, problem.momentum().spanwise(), problem.closure());
    acceleration = new AndersonAcceleration(vector.size(), vector.judged(), depth);
    before = new double[vector.judged()];
    after = new double[vector.size()];
    weight = weights(problem);
  }

  /**
   * One pass.
   *
   * @param gain share of the miss of the operating point that is corrected
   */
  void step(double gain) {
    boolean accelerate = monitor.passes() >= plain;
    if (accelerate) {
      vector.readJudged(before);
    }
    iteration.step(settings);
    cancel.check();
    equations.problem.drive().adjust(equations.state, gain);
    if (accelerate) {
      accelerate();
    }
  }

  private void accelerate() {
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
    vector.read(after);
    acceleration.accelerate(before, after, weight, memory());
    vector.write(after);
  }

  /**
   * Differences that acceleration uses: fewer far from the answer, where a long memory misleads.
   */
  private int memory() {
    boolean curved = equations.momentumResidual > CURVED;
    return switch (turn % 3) {
      case 0 -> curved ? SHORT : depth;
      case 1 -> 1;
      default -> curved ? depth : SHORT;
    };
  }

  /** Makes velocities and pressures of cells of all sizes comparable. */
  private static double[] weights(FlowProblem problem) {
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
}
