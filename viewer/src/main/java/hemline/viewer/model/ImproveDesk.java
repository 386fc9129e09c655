package hemline.viewer.model;

import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.improve.Evaluation;
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.Improvement;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Searches for a better lip in the background. Evaluations are kept as they are solved, so a search
 * that is stopped goes on where it was. All methods belong to the screen's thread.
 */
public final class ImproveDesk {
  private static final double MINUTE = 60;

  private final SectionFamily family;
  private final Supplier<ResultStore<SectionResult>> kept;
  private final Executor screen;
  private final BackgroundWork work;
  private final ReadOnlyObjectWrapper<@Nullable State> state = new ReadOnlyObjectWrapper<>();

  /**
   * What is searched.
   *
   * @param options of the proof
   * @param minutes for the search at most; the proof comes on top
   */
  public record Question(ImproveStudy.Asked asked, RunOptions options, double minutes) {}

  /**
   * A search as far as it is.
   *
   * @param tried so far
   * @param found null while it runs and where it was stopped
   * @param seconds wall time; 0 while it runs
   */
  public record State(
      Question question, List<Evaluation> tried, @Nullable Improvement found, double seconds) {}

  /**
   * A desk without a search.
   *
   * @param kept evaluations solved before
   * @param screen runs what must happen on the screen's thread
   */
  public ImproveDesk(
      SectionFamily family,
      Supplier<ResultStore<SectionResult>> kept,
      Executor screen,
      Clock clock) {
    this.family = family;
    this.kept = kept;
    this.screen = screen;
    this.work = new BackgroundWork("search", screen, clock);
  }

  /** The search on show; null for none. */
  public ReadOnlyObjectProperty<@Nullable State> state() {
    return state.getReadOnlyProperty();
  }

  /** The search that runs, or why there is no answer. */
  public BackgroundWork work() {
    return work;
  }

  /** Searches, from what was tried before where the same was asked. */
  public void start(Question question) {
    state.set(new State(question, List.of(), null, 0));
    ImproveStudy study = new ImproveStudy(family, kept.get());
    work.start(
        (token, progress, seconds) -> {
          Improvement found =
              study.of(
                  question.asked(),
                  question.options(),
                  () -> seconds.getAsDouble() > MINUTE * question.minutes(),
                  tried -> screen.execute(() -> tell(question, tried)),
                  token,
                  progress);
          return new State(question, found.history(), found, seconds.getAsDouble());
        },
        this::end,
        () -> {});
  }

  private void tell(Question question, List<Evaluation> tried) {
    State now = state.get();
    if (work.running().get() && now != null && now.question() == question) {
      state.set(new State(question, tried, null, 0));
    }
  }

  private void end(State ended) {
    Improvement found = ended.found();
    if (found == null) {
      return;
    }
    boolean stopped = found.status() == SolveStatus.CANCELLED;
    boolean none = found.history().isEmpty();
    state.set(
        stopped || none
            ? new State(ended.question(), ended.tried(), null, ended.seconds())
            : ended);
    if (stopped) {
      work.tell(
          "Stopped after " + ended.tried().size() + " evaluations, which are kept; it can go on.");
    } else if (none) {
      String why = found.refusal();
      work.tell(
          "No lip was found that can be built within the limits"
              + (why.isEmpty() ? "" : ", most often because " + why)
              + "; widen them.");
    }
  }
}
