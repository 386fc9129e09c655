package hemline.viewer.model;

import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
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
import java.util.function.DoubleSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/** Compares a rig with its prediction in the background. Methods belong to the screen's thread. */
public final class RigDesk {
  private final PredictionStudy study;
  private final BackgroundWork work;
  private final ReadOnlyObjectWrapper<@Nullable Compared> shown = new ReadOnlyObjectWrapper<>();

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
    this.work = new BackgroundWork("comparison", screen, clock, false);
  }

  /** The comparison on show; null for none. */
  public ReadOnlyObjectProperty<@Nullable Compared> shown() {
    return shown.getReadOnlyProperty();
  }

  /** What goes on, or why there is no comparison; stopped, there is none. */
  public BackgroundWork work() {
    return work;
  }

  /** What became of a comparison: it, or why there is none. */
  private record Ended(@Nullable Compared found, String said) {}

  /**
   * Compares a rig with the prediction of a lip.
   *
   * @param matters share of the discharge from which on a difference matters
   */
  public void start(Rig rig, LipProfile lip, double matters, RunOptions options) {
    SealSection base = PredictionStudy.base(rig, lip);
    work.start(
        (token, progress, seconds) ->
            compared(rig, base, matters, options, token, progress, seconds),
        this::end,
        () -> {});
  }

  private Ended compared(
      Rig rig,
      SealSection base,
      double matters,
      RunOptions options,
      CancelToken token,
      ProgressListener progress,
      DoubleSupplier seconds) {
    try {
      List<Prediction> predictions =
          study.at(ComparisonStudy.points(rig), base, options, token, progress);
      if (predictions.stream().anyMatch(p -> p.status() == SolveStatus.CANCELLED)) {
        return new Ended(null, "Stopped before all points were predicted.");
      }
      Comparison comparison = ComparisonStudy.of(rig, predictions, matters);
      LipProfile lip = base.profile();
      Calibration learnt = CalibrationFit.of(rig, lip, predictions);
      return new Ended(new Compared(rig, lip, comparison, learnt, seconds.getAsDouble()), "");
    } catch (InputException e) {
      return new Ended(null, e.problems().get(0).toString());
    }
  }

  private void end(Ended ended) {
    work.tell(ended.said());
    if (ended.found() != null) {
      shown.set(ended.found());
    }
  }
}
