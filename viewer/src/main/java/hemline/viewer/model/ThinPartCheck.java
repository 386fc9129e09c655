package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipResolver;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/** Checks the newest of a stream of drawings in full, thin parts among it, in the background. */
final class ThinPartCheck {
  private final Executor background;
  private final BiConsumer<LipDrawing, LipFindings> listener;
  private final AtomicReference<@Nullable LipDrawing> waiting = new AtomicReference<>();

  /**
   * Prepares a check.
   *
   * @param background runs one check at a time
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
    }
  }
}
