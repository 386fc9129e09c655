package hemline.viewer.model;

import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Does the newest of a stream of wishes in the background; one that still waits is dropped for it.
 *
 * @param <T> a wish
 */
public final class Newest<T> {
  private final Executor background;
  private final Consumer<T> work;
  private final AtomicReference<@Nullable T> waiting = new AtomicReference<>();

  /**
   * Nothing to do yet.
   *
   * @param background does one wish at a time
   * @param work does a wish there
   */
  public Newest(Executor background, Consumer<T> work) {
    this.background = background;
    this.work = work;
  }

  /** Asks for a wish; returns at once. */
  public void ask(T wish) {
    if (waiting.getAndSet(wish) == null) {
      background.execute(
          () -> {
            T newest = waiting.getAndSet(null);
            if (newest != null) {
              work.accept(newest);
            }
          });
    }
  }
}
