package hemline.viewer.model;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import java.time.Clock;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Work behind the window, one piece at a time: what is started later stops what runs, whose end is
 * then not heard of any more. All methods belong to the screen's thread.
 */
public final class BackgroundWork {
  /** Time that stopped work gets to write down what it has, s. */
  private static final long LONGEST_END = 3;

  private final String what;
  private final Executor screen;
  private final Clock clock;
  private final boolean foretold;
  private final ExecutorService background;
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
  private final ReadOnlyStringWrapper state = new ReadOnlyStringWrapper("");
  private @Nullable CancelToken cancel;

  /** Work that can be stopped. */
  interface Piece<T> {
    /**
     * Does the work in the background.
     *
     * @param seconds since it was started
     */
    T run(CancelToken token, ProgressListener progress, DoubleSupplier seconds);
  }

  /**
   * Nothing to do yet.
   *
   * @param what is done, such as "study"
   * @param screen runs what must happen on the screen's thread
   */
  BackgroundWork(String what, Executor screen, Clock clock) {
    this(what, screen, clock, true);
  }

  /**
   * Work whose end is foretold or not.
   *
   * @param foretold true to tell how long it may take
   */
  BackgroundWork(String what, Executor screen, Clock clock, boolean foretold) {
    this.foretold = foretold;
    this.what = what;
    this.screen = screen;
    this.clock = clock;
    background = SolveThreads.solve("hemline-" + what);
  }

  public ReadOnlyBooleanProperty running() {
    return running.getReadOnlyProperty();
  }

  /** Share of the running work that is done, 0 to 1. */
  public ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  /** What goes on and how long it may take, or what became of it. */
  public ReadOnlyStringProperty state() {
    return state.getReadOnlyProperty();
  }

  void tell(String sentence) {
    state.set(sentence);
  }

  /**
   * Starts work.
   *
   * @param taker gets what it found, on the screen's thread, unless other work was started since
   * @param last runs on the screen's thread when it has ended in any way
   */
  <T> void start(Piece<T> piece, Consumer<T> taker, Runnable last) {
    stop();
    CancelToken token = new CancelToken();
    cancel = token;
    running.set(true);
    progress.set(0);
    state.set("Starting \u2026");
    long start = clock.millis();
    DoubleSupplier seconds = () -> 1e-3 * (clock.millis() - start);
    background.execute(
        () -> {
          Runnable end = ended(piece, token, seconds, taker);
          screen.execute(
              () -> {
                if (token == cancel) {
                  cancel = null;
                  running.set(false);
                  state.set("");
                  end.run();
                }
                last.run();
              });
        });
  }

  private <T> Runnable ended(
      Piece<T> piece, CancelToken token, DoubleSupplier seconds, Consumer<T> taker) {
    try {
      T found =
          piece.run(
              token,
              (done, step) -> screen.execute(() -> tell(token, done, step, seconds)),
              seconds);
      return () -> taker.accept(found);
    } catch (RuntimeException e) {
      String reason = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      return () -> state.set("The " + what + " broke off: " + reason + ".");
    }
  }

  private void tell(CancelToken token, double done, String step, DoubleSupplier seconds) {
    if (token == cancel && running.get()) {
      progress.set(Math.max(progress.get(), done));
      String left = foretold ? TimeLeft.words(progress.get(), seconds.getAsDouble()) : "";
      state.set(
          token.isCancelled()
              ? "Stopping \u2026"
              : left.isEmpty() ? step : left + " \u00b7 " + step);
    }
  }

  /** Stops what runs; its end is still heard of. */
  public void stop() {
    if (cancel != null) {
      cancel.cancel();
    }
  }

  /** Stops what runs and hears of its end no more. */
  void drop() {
    stop();
    cancel = null;
    running.set(false);
    state.set("");
  }

  /** The orderly end: what runs is stopped and writes down what it has by then. */
  void close() {
    stop();
    background.shutdown();
    try {
      background.awaitTermination(LONGEST_END, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
