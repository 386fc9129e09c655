package hemline.viewer.model;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RankingStudy;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.StudyQuestion;
import hemline.viewer.project.StudyRoom;
import hemline.viewer.project.StudyStore;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.DoubleSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Runs studies in the background, one at a time, and keeps what they find.
 *
 * <p>All methods belong to the screen's thread. A question whose answer is kept is not solved
 * again; a study that is stopped, or broken off by a crash, keeps what it has by then, and goes on
 * from there when it is started again.
 */
public final class StudyDesk {
  private final SectionFamily family;
  private final Clock clock;
  private final Executor disk;
  private final Executor screen;
  private final BackgroundWork work;
  private StudyStore store;
  private final ReadOnlyObjectWrapper<List<KeptStudy>> kept =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable KeptStudy> shown = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable KeptStudy> forgotten =
      new ReadOnlyObjectWrapper<>();
  private @Nullable StudyQuestion asked;

  /** True when somebody chose to look at another study while one runs. */
  private boolean looked;

  /**
   * How a study ended.
   *
   * @param study what it has; null for nothing
   * @param said what is to be told
   */
  private record Ended(@Nullable KeptStudy study, String said) {}

  /**
   * A desk with the studies of a store.
   *
   * @param family solves sections
   * @param disk lists and removes kept studies, one task after the other
   * @param screen runs what must happen on the screen's thread
   */
  public StudyDesk(
      SectionFamily family, StudyStore store, Executor disk, Executor screen, Clock clock) {
    this.family = family;
    this.store = store;
    this.disk = disk;
    this.screen = screen;
    this.clock = clock;
    this.work = new BackgroundWork("study", screen, clock);
    list();
  }

  /** Reads the studies anew; files that are none are told. */
  private void list() {
    StudyStore from = store;
    disk.execute(
        () -> {
          StudyStore.Kept all = from.all();
          screen.execute(() -> list(from, all));
        });
  }

  private void list(StudyStore from, StudyStore.Kept all) {
    if (from != store) {
      return;
    }
    kept.set(all.studies());
    if (!all.refused().isEmpty()) {
      work.tell(all.refused().get(0).toString());
    }
  }

  /** Studies of the project, newest first. */
  public ReadOnlyObjectProperty<List<KeptStudy>> kept() {
    return kept.getReadOnlyProperty();
  }

  /** The study on show; null for none. */
  public ReadOnlyObjectProperty<@Nullable KeptStudy> shown() {
    return shown.getReadOnlyProperty();
  }

  /** The study that runs, or what became of it. */
  public BackgroundWork work() {
    return work;
  }

  /** Turns to the studies of another project. */
  public void use(StudyStore other) {
    work.drop();
    store = other;
    shown.set(null);
    forgotten.set(null);
    list();
  }

  public void show(KeptStudy study) {
    looked = true;
    shown.set(study);
  }

  /** Forgets a study; {@link #bringBack} undoes that. */
  public void remove(KeptStudy study) {
    StudyStore from = store;
    disk.execute(() -> from.remove(study));
    list();
    forgotten.set(study);
    if (study.equals(shown.get())) {
      shown.set(null);
    }
  }

  /** The study that was forgotten last; null for none. */
  public ReadOnlyObjectProperty<@Nullable KeptStudy> forgotten() {
    return forgotten.getReadOnlyProperty();
  }

  /** Keeps the study that was forgotten last again, and shows it. */
  public void bringBack() {
    KeptStudy study = forgotten.get();
    if (study != null) {
      StudyStore into = store;
      forgotten.set(null);
      disk.execute(() -> keep(study, into));
      list();
      shown.set(study);
    }
  }

  /** The question that is being answered; null for none. */
  public @Nullable StudyQuestion asked() {
    return work.running().get() ? asked : null;
  }

  /** True when the study was solved by the solver that runs now. */
  public boolean current(KeptStudy study) {
    return study.run().engine().equals(store.engine());
  }

  /**
   * Answers a question, from what is kept or by solving it.
   *
   * @param threads solves running at once
   * @return what is wrong with the question; empty when it is answered
   */
  public List<Problem> start(StudyQuestion question, int threads) {
    if (question.ranks() && question.baseline() != null) {
      List<Problem> problems =
          new ArrayList<>(
              RankingStudy.check(question.lips(), question.baseline(), question.values()));
      int lips = question.lips().size() + (question.lips().contains(question.baseline()) ? 0 : 1);
      problems.addAll(
          StudyRoom.ranking(
              "study",
              lips,
              question.values().size(),
              question.options(threads),
              Runtime.getRuntime().maxMemory()));
      if (!problems.isEmpty()) {
        return problems;
      }
    }
    work.stop();
    KeptStudy before = store.find(question);
    if (before != null && before.complete()) {
      shown.set(before);
      work.tell("Solved before with the same lips, conditions and solver; shown from the project.");
      return List.of();
    }
    StudyStore into = store;
    asked = question;
    looked = false;
    KeptStudy part = before != null ? before : KeptStudy.part(question, List.of(), run(0, into));
    work.start(
        (token, progress, seconds) ->
            solve(
                part,
                threads,
                token,
                progress,
                () -> part.run().seconds() + seconds.getAsDouble(),
                into),
        this::end,
        this::list);
    return List.of();
  }

  /** The orderly end: a running study is stopped, and what it has by then is kept. */
  public void close() {
    work.close();
  }

  /**
   * Solves the rest of a study.
   *
   * @param part what it has by now
   */
  private Ended solve(
      KeptStudy part,
      int threads,
      CancelToken token,
      ProgressListener progress,
      DoubleSupplier seconds,
      StudyStore into) {
    StudyQuestion question = part.question();
    List<SectionResult> had = new ArrayList<>(part.results());
    keep(part, into); // so that a crash leaves the question at least
    StudyPieces found =
        StudyPieces.solve(
            question,
            threads,
            into.sections(question).over(family, false),
            answer -> keepPart(question, had, answer, seconds, into),
            token,
            progress);
    KeptStudy study = found.study(question, run(seconds.getAsDouble(), into));
    if (study.results().isEmpty()) {
      into.remove(study);
      return new Ended(null, "Stopped before anything was solved.");
    }
    try {
      into.keep(study);
      return new Ended(study, "");
    } catch (InputException e) {
      return new Ended(study, e.problems().get(0).toString());
    }
  }

  /** Shows the points of the running study as they come. */
  private void follow(KeptStudy part) {
    KeptStudy now = shown.get();
    boolean own = now != null && now.question().equals(part.question());
    if (part.question().equals(asked()) && (own || !looked)) {
      shown.set(part);
    }
  }

  /** Keeps what there is so far with one more answer: that is what a crash leaves. */
  private void keepPart(
      StudyQuestion question,
      List<SectionResult> had,
      SectionResult answer,
      DoubleSupplier seconds,
      StudyStore into) {
    synchronized (had) {
      if (answer.status() != SolveStatus.CANCELLED && !had.contains(answer)) {
        had.add(answer);
        KeptStudy part = KeptStudy.part(question, had, run(seconds.getAsDouble(), into));
        keep(part, into);
        screen.execute(() -> follow(part));
      }
    }
  }

  private KeptStudy.Run run(double seconds, StudyStore into) {
    return new KeptStudy.Run(seconds, clock.instant().toString(), into.engine());
  }

  private static void keep(KeptStudy part, StudyStore into) {
    try {
      into.keep(part);
    } catch (InputException e) {
      // the end of the study tells that it cannot be kept
    }
  }

  private void end(Ended ended) {
    work.tell(ended.said());
    if (ended.study() != null) {
      shown.set(ended.study());
    }
  }
}
