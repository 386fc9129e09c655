package hemline.solver.flow;

/** Asks running work to stop; may be called from any thread. */
public final class CancelToken {
  private volatile boolean cancelled;

  public void cancel() {
    cancelled = true;
  }

  public boolean isCancelled() {
    return cancelled;
  }
}
