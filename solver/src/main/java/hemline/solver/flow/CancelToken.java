package hemline.solver.flow;

import java.util.concurrent.CancellationException;

/** Asks running work to stop; may be called from any thread. */
public final class CancelToken {
  private volatile boolean cancelled;

  public void cancel() {
    cancelled = true;
  }

  public boolean isCancelled() {
    return cancelled;
  }

  /**
   * Goes on unless work was asked to stop.
   *
   * @throws CancellationException once {@link #cancel} was called
   */
  public void check() {
    if (cancelled) {
      throw new CancellationException("stopped on request");
    }
  }
}
