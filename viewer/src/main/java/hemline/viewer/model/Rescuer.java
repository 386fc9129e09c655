package hemline.viewer.model;

import hemline.shared.problem.InputException;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.RescueStore.Open;
import hemline.viewer.project.RescueStore.Rescued;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Puts the lips of the bench by against a crash, on the writer's thread. */
final class Rescuer {
  private final Clock clock;
  private final Executor writer;
  private volatile RescueStore store;
  private volatile @Nullable List<Open> last;

  Rescuer(RescueStore store, Clock clock, Executor writer) {
    this.store = store;
    this.clock = clock;
    this.writer = writer;
  }

  /** Turns to another place; nothing stays at the one before. */
  void use(RescueStore other) {
    clear();
    store = other;
  }

  /**
   * Puts lips by in place of those that were.
   *
   * @param lips the one on the bench first
   * @param then runs on the writer's thread when they are on disk
   * @param fault hears, on that thread, that they cannot be written
   */
  void putBy(List<Open> lips, Runnable then, Consumer<InputException> fault) {
    RescueStore into = store;
    Instant when = clock.instant();
    last = lips;
    writer.execute(
        () -> {
          try {
            into.putBy(lips, when);
            then.run();
          } catch (InputException e) {
            last = null;
            fault.accept(e);
          }
        });
  }

  /** True when these are the lips that were put by last. */
  boolean holds(List<Open> lips) {
    return lips.equals(last);
  }

  /** Nothing is put by any more. */
  void clear() {
    last = null;
    writer.execute(store::clear);
  }

  /** Lips that other programs left; any thread may ask. */
  RescueStore.Left left() {
    return store.left();
  }

  /** Forgets lips that were left here, also when there is another place by then. */
  Runnable dropping(Rescued rescued) {
    RescueStore from = store;
    return () -> from.drop(rescued);
  }
}
