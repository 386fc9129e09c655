package hemline.viewer.model;

import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.refine.SectionFamily;
import hemline.solver.rig.CalibrationFit;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.ComparisonStudy;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.PredictionStudy;
import hemline.solver.study.RunOptions;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/** Compares a rig with its prediction in the background. Methods belong to the screen's thread. */
public final class RigDesk {
  private final PredictionStudy study;
  private final Executor screen;
  private final Clock clock;
  private final Executor background = SolveThreads.solve("hemline-rig");
  private final ReadOnlyObjectWrapper<@Nullable Compared> shown = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
  private final ReadOnlyStringWrapper state = new ReadOnlyStringWrapper("");
  private @Nullable CancelToken cancel;

  /**
   * A comparison with what it was made of.
   *
   * @param learnt calibration that it teaches; null for none
   * @param seconds wall time
   */
  public record Compared(
      Rig rig,
      LipProfile lip,
      Comparison comparison,
      @Nullable Calibration learnt,
      double seconds) {}

  /**
   * A desk without a comparison.
   *
   * @param screen runs what must happen on the screen's thread
   */
  public RigDesk(SectionFamily family, Executor screen, Clock clock) {
    this.study = new PredictionStudy(family);
    this.screen = screen;
    this.clock = clock;
  }

  /** The comparison on show; null for none. */
  public ReadOnlyObjectProperty<@Nullable Compared> shown() {
    return shown.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty running() {
    return running.getReadOnlyProperty();
  }

  /** Share of the points that is predicted, 0 to 1. */
  public ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  /** What goes on, or why there is no comparison. */
  public ReadOnlyStringProperty state() {
    return state.getReadOnlyProperty();
  }

  /**
   * Compares a rig with the prediction of a lip.
   *
   * @param matters share of the discharge from which on a difference matters
   */
  public void start(Rig rig, LipProfile lip, double matters, RunOptions options) {
    stop();
    CancelToken token = new CancelToken();
    cancel = token;
    running.set(true);
    progress.set(0);
    state.set("Starting \u2026");
    long start = clock.millis();
    SealSection base = PredictionStudy.base(rig, lip);
    background.execute(() -> solve(rig, base, matters, options, token, start));
  }

  /** Stops; there is no comparison then. */
  public void stop() {
    if (cancel != null) {
      cancel.cancel();
    }
  }

  private void solve(
      Rig rig,
      SealSection base,
      double matters,
      RunOptions options,
      CancelToken token,
      long start) {
    try {
      List<Prediction> predictions =
          study.at(
              ComparisonStudy.points(rig),
              base,
              options,
              token,
              (done, what) -> screen.execute(() -> tell(token, done, what)));
      if (predictions.stream().anyMatch(p -> p.status() == SolveStatus.CANCELLED)) {
        screen.execute(() -> end(token, null, "Stopped before all points were predicted."));
        return;
      }
      Comparison comparison = ComparisonStudy.of(rig, predictions, matters);
      Calibration learnt = CalibrationFit.of(rig, base.profile(), predictions);
      double seconds = 1e-3 * (clock.millis() - start);
      Compared found = new Compared(rig, base.profile(), comparison, learnt, seconds);
      screen.execute(() -> end(token, found, ""));
    } catch (InputException e) {
      screen.execute(() -> end(token, null, e.problems().get(0).toString()));
    } catch (RuntimeException e) {
      String reason = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      screen.execute(() -> end(token, null, "The comparison broke off: " + reason + "."));
    }
  }

  private void tell(CancelToken token, double done, String what) {
    if (token == cancel && running.get()) {
      progress.set(Math.max(progress.get(), done));
      state.set(token.isCancelled() ? "Stopping \u2026" : what);
    }
  }

  private void end(CancelToken token, @Nullable Compared found, String said) {
    if (token != cancel) {
      return;
    }
    cancel = null;
    running.set(false);
    state.set(said);
    if (found != null) {
      shown.set(found);
    }
  }
}
