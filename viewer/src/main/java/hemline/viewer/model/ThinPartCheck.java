package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipResolver;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;

/**
 * Checks the newest of a stream of drawings in full, thin parts among it, in the background, some
 * times a second: more would take the processor from the flow that follows the hand.
 */
final class ThinPartCheck {
  /** Rest after each check, ms. */
  private static final long REST = 250;

  private final BiConsumer<LipDrawing, LipFindings> listener;
  private final Newest<LipDrawing> drawings;

  /**
   * Prepares a check.
   *
   * @param background a thread of its own, which also rests between checks
   * @param listener hears what was found of which drawing, on the background thread
   */
  ThinPartCheck(Executor background, BiConsumer<LipDrawing, LipFindings> listener) {
    this.listener = listener;
    drawings = new Newest<>(background, this::check);
  }

  /** Asks for a drawing; returns at once, and forgets what waits. */
  void ask(LipDrawing drawing) {
    drawings.ask(drawing);
  }

  private void check(LipDrawing drawing) {
    listener.accept(drawing, LipResolver.check(drawing));
    try {
      Thread.sleep(REST);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
