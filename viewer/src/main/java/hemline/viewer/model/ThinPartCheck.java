package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipResolver;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Checks the newest of a stream of drawings in full, thin parts among it, in the background, some
 * times a second: more would take the processor from the flow that follows the hand.
 */
final class ThinPartCheck {
  /** Rest after each check, ms. */
  private static final long REST = 250;

  private final Executor background;
  private final BiConsumer<LipDrawing, LipFindings> listener;
  private final AtomicReference<@Nullable LipDrawing> waiting = new AtomicReference<>();

  /**
   * Prepares a check.
   *
   * @param background a thread of its own, which also rests between checks
   * @param listener hears what was found of which drawing, on the background thread
   */
  ThinPartCheck(Executor background, BiConsumer<LipDrawing, LipFindings> listener) {
    this.background = background;
    this.listener = listener;
  }

  /** Asks for a drawing; returns at once, and forgets what waits. */
  void ask(LipDrawing drawing) {
    if (waiting.getAndSet(drawing) == null) {
      background.execute(this::check);
    }
  }

  private void check() {
    LipDrawing newest = waiting.getAndSet(null);
    if (newest != null) {
      listener.accept(newest, LipResolver.check(newest));
      try {
        Thread.sleep(REST);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
