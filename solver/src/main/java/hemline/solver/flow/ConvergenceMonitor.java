package hemline.solver.flow;

import hemline.shared.result.Termination;

/**
 * ConvergenceMonitor of one attempt, pass by pass: the monitored figure and the momentum residual,
 * and what they tell about its end.
 */
final class ConvergenceMonitor {
  /** Passes over which an attempt must have gained something. */
  private static final int PATIENCE = 300;

  /** Least gain: the best residual of the last passes over the best before. */
  private static final double GAIN = 0.85;

  /** The same over the few passes after which acceleration goes on with another memory. */
  private static final double IDLE_GAIN = 0.9;

  private static final int LEAST_CYCLES = 4;

  /** Largest relative scatter of the lengths of cycles. */
  private static final double CYCLE_SCATTER = 0.2;

  private final double[] figures;
  private final double[] residuals;
  private final double least;
  private int passes;

  ConvergenceMonitor(int most) {
    this(most, 0);
  }

  /**
   * A monitor of a figure that may be zero.
   *
   * @param most passes
   * @param least size of the figure below which its changes are judged against this size
   */
  ConvergenceMonitor(int most, double least) {
    this.least = least;
    figures = new double[most];
    residuals = new double[most];
  }

  /** Begins anew. */
  void restart() {
    passes = 0;
  }

  /** Notes a pass; false when the numbers have run away. */
  boolean note(double figure, double residual) {
    figures[passes] = figure;
    residuals[passes++] = residual;
    return Double.isFinite(figure) && residual < 1e8;
  }

  int passes() {
    return passes;
  }

  /** Residual that the first pass met, 0 before it. */
  double firstResidual() {
    return passes > 0 ? residuals[0] : 0;
  }

  /** Relative spread of the figure since a pass; a figure near zero has its least size. */
  double spread(int from) {
    double low = Double.MAX_VALUE;
    double high = -Double.MAX_VALUE;
    for (int i = from; i < passes; i++) {
      low = Math.min(low, figures[i]);
      high = Math.max(high, figures[i]);
    }
    double size = Math.max(Math.max(Math.abs(low), Math.abs(high)), least);
    return passes > from ? (high - low) / Math.max(size, Double.MIN_NORMAL) : 0;
  }

  /** Mean of the figure since a pass. */
  double mean(int from) {
    double sum = 0;
    for (int i = from; i < passes; i++) {
      sum += figures[i];
    }
    return passes > from ? sum / (passes - from) : 0;
  }

  /** True when the residual has reached a plateau: many passes without gain. */
  boolean stalled() {
    int recent = passes - PATIENCE;
    return recent >= PATIENCE / 3 && best(recent, passes) > GAIN * best(0, recent);
  }

  /**
   * True when the last passes have brought nothing against those before.
   *
   * @param from first pass looked at
   * @param window number of last passes; as many are looked at before
   */
  boolean idle(int from, int window) {
    int recent = passes - window;
    return recent >= from + window && best(recent, passes) > IDLE_GAIN * best(from, recent);
  }

  private double best(int from, int to) {
    double best = Double.MAX_VALUE;
    for (int i = from; i < to; i++) {
      best = Math.min(best, residuals[i]);
    }
    return best;
  }

  /**
   * Why the figure did not settle.
   *
   * @param from first pass looked at
   * @param still relative spread at which it counts as standing still
   * @param attempt to name in the answer
   */
  Termination unsettled(int from, double still, Termination.Attempt attempt) {
    if (spread(from) <= still) {
      return new Termination(attempt, Termination.Reason.STALLED, 0);
    }
    int cycle = cycle(from);
    return new Termination(
        attempt, cycle > 0 ? Termination.Reason.CYCLING : Termination.Reason.WANDERING, cycle);
  }

  /**
   * Passes per cycle of the figure since a pass, from its upward crossings of the mean; 0 when
   * cycles are too few or too uneven. A crossing counts only after the figure has been below the
   * mean by a tenth of its swing, so that ripples do not.
   */
  private int cycle(int from) {
    double mean = mean(from);
    double dip = mean - 0.1 * spread(from) * Math.abs(mean);
    boolean armed = false;
    int last = -1;
    int count = 0;
    double sum = 0;
    double squares = 0;
    for (int i = from; i < passes; i++) {
      armed |= figures[i] < dip;
      if (armed && figures[i] > mean) {
        if (last >= 0) {
          double length = i - last;
          count++;
          sum += length;
          squares += length * length;
        }
        last = i;
        armed = false;
      }
    }
    if (count < LEAST_CYCLES) {
      return 0;
    }
    double length = sum / count;
    double scatter = Math.sqrt(Math.max(0, squares / count - length * length));
    return scatter <= CYCLE_SCATTER * length ? (int) Math.round(length) : 0;
  }
}
