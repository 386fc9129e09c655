package hemline.solver.study;

import hemline.solver.flow.ProgressListener;

/** Adds the progress of tasks by weight and reports it, never falling, one call at a time. */
public final class ProgressSum {
  private final double[] weight;
  private final double[] done;
  private final ProgressListener listener;
  private double reported;

  /**
   * Starts at nothing done.
   *
   * @param work effort of each task, positive; not modified
   * @param listener hears the sum
   */
  public ProgressSum(double[] work, ProgressListener listener) {
    double sum = 0;
    for (double w : work) {
      sum += w;
    }
    weight = new double[work.length];
    for (int i = 0; i < work.length; i++) {
      weight[i] = work[i] / sum;
    }
    done = new double[work.length];
    this.listener = listener;
  }

  /** Listener for one task. */
  public ProgressListener of(int task) {
    return (share, what) -> report(task, share, what);
  }

  private synchronized void report(int task, double share, String what) {
    done[task] = Math.max(done[task], Math.min(1, share));
    double sum = 0;
    boolean all = true;
    for (int i = 0; i < done.length; i++) {
      sum += weight[i] * done[i];
      all &= done[i] >= 1;
    }
    reported = all ? 1 : Math.max(reported, Math.min(1, sum));
    listener.progress(reported, what);
  }
}
