package hemline.viewer.model;

import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.ComparableAnswer;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionStudy;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The solve of a section on three grids in the background, one at a time. All methods belong to the
 * screen's thread.
 */
final class FullSolve {
  private final SectionFamily family;
  private final Executor screen;
  private final Executor background = SolveThreads.solve("hemline-bench");
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
  private @Nullable CancelToken cancel;

  FullSolve(SectionFamily family, Executor screen) {
    this.family = family;
    this.screen = screen;
  }

  ReadOnlyBooleanProperty running() {
    return running.getReadOnlyProperty();
  }

  /** Share that is done, 0 to 1. */
  ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  /**
   * Solves a section; a solve that runs is stopped.
   *
   * @param taker gets the answer on the screen's thread, unless the solve was stopped
   */
  void start(SealSection section, RunOptions how, Consumer<ComparableAnswer> taker) {
    stop();
    CancelToken token = new CancelToken();
    cancel = token;
    running.set(true);
    progress.set(0);
    background.execute(
        () -> {
          if (token.isCancelled()) {
            return;
          }
          ComparableAnswer answer =
              new SectionStudy(family)
                  .solve(section, how, token, (done, what) -> tell(token, done));
          screen.execute(() -> solved(token, answer, taker));
        });
  }

  void stop() {
    if (cancel != null) {
      cancel.cancel();
      cancel = null;
    }
    running.set(false);
  }

  private void tell(CancelToken token, double done) {
    screen.execute(
        () -> {
          if (token == cancel) {
            progress.set(done);
          }
        });
  }

  private void solved(
      CancelToken token, ComparableAnswer answer, Consumer<ComparableAnswer> taker) {
    if (token == cancel) {
      cancel = null;
      running.set(false);
      taker.accept(answer);
    }
  }
}
