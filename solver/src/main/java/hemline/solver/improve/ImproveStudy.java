package hemline.solver.improve;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Searches for a lip that leaks less than another and proves what it found.
 *
 * <p>The search goes by the figure of the goal on the finest grids of coarse families under one
 * flow model, relative to that of the start: errors that all lips share cancel. The least of many
 * noisy values is too good on the average; so the best lips are solved anew on finer grids with the
 * second flow model ({@link ImproveProof}), and only these figures are told.
 */
public final class ImproveStudy {
  /** Notices of a flow that is not to be built upon. */
  private static final Set<String> DOUBTFUL =
      Set.of("flow.unsteady", "flow.two-found", "grids.incomplete", "model.lost");

  /** Lips that are proven. */
  private static final int PROVEN = 3;

  /** Found lips differ by at least this share of a range in one length. */
  private static final double APART = 0.05;

  /** Share of progress of the search. */
  private static final double SEARCH = 0.7;

  private final SectionFamily family;
  private final ResultStore<SectionResult> store;

  /**
   * A study.
   *
   * @param store keeps the evaluations, so that a search broken off goes on where it was
   */
  public ImproveStudy(SectionFamily family, ResultStore<SectionResult> store) {
    this.family = family;
    this.store = store;
  }

  /**
   * What is asked.
   *
   * @param start the lip to be better than
   * @param space lips to look among
   * @param limits what can be built
   * @param goal what is made least
   * @param evaluations at most, 2 or more
   * @param seed of the search
   */
  public record Asked(
      LipProfile start,
      LipSpace space,
      ShapeLimits limits,
      Goal goal,
      int evaluations,
      long seed) {}

  /**
   * Searches and proves.
   *
   * @param options of the proof; its mesh is finer than coarse
   * @param spent true once the time for the search is up
   * @param taker is given all evaluations so far whenever there are more, on the calling thread
   */
  public Improvement of(
      Asked asked,
      RunOptions options,
      BooleanSupplier spent,
      Consumer<List<Evaluation>> taker,
      CancelToken cancel,
      ProgressListener progress) {
    List<SectionResult> start =
        coarse(asked, List.of(asked.start()), coarse(options, options.closure()), cancel);
    if (cancel.isCancelled() || start.isEmpty()) {
      return Improvement.without(asked, List.of(), "", SolveStatus.CANCELLED);
    }
    RunOptions search = coarse(options, closure(start.get(0)));
    double base =
        asked.goal().value(asked.start(), coarse(asked, List.of(asked.start()), search, cancel));
    LipSearch run =
        new LipSearch(
            asked.space(),
            asked.limits(),
            lips -> scores(asked, lips, base, search, cancel),
            asked.evaluations(),
            asked.seed(),
            spent);
    boolean ended =
        run.run(
            history -> {
              progress.progress(
                  SEARCH * history.size() / asked.evaluations(), "evaluation " + history.size());
              taker.accept(history);
            });
    List<Improvement.Found> found = found(asked, run.history());
    if (!ended || found.isEmpty()) {
      SolveStatus status = ended ? SolveStatus.FAILED : SolveStatus.CANCELLED;
      return Improvement.without(asked, run.history(), run.refusal(), status);
    }
    return new ImproveProof(
            family,
            options,
            cancel,
            (share, what) -> progress.progress(SEARCH + (1 - SEARCH) * share, "proof, " + what))
        .of(Improvement.without(asked, run.history(), run.refusal(), SolveStatus.CONVERGED), found);
  }

  private List<LipSearch.Score> scores(
      Asked asked, List<LipProfile> lips, double base, RunOptions search, CancelToken cancel) {
    List<SectionResult> results = coarse(asked, lips, search, cancel);
    List<LipSearch.Score> scores = new ArrayList<>();
    int each = results.size() / lips.size();
    for (int i = 0; i < lips.size() && each > 0; i++) {
      List<SectionResult> own = results.subList(i * each, (i + 1) * each);
      scores.add(new LipSearch.Score(asked.goal().value(lips.get(i), own) / base, doubt(own)));
    }
    return cancel.isCancelled() ? List.of() : scores;
  }

  /** Sections of lips on coarse grids, lip by lip; empty when stopped. */
  private List<SectionResult> coarse(
      Asked asked, List<LipProfile> lips, RunOptions options, CancelToken cancel) {
    List<SealSection> sections = new ArrayList<>();
    lips.forEach(lip -> sections.addAll(asked.goal().sections(lip)));
    BatchAnswer answer =
        new BatchStudy(new PoolRunner(family), store)
            .run(sections, options, cancel, (share, what) -> {});
    return answer.complete() ? answer.results() : List.of();
  }

  private static RunOptions coarse(RunOptions proof, Closure closure) {
    return new RunOptions(MeshLevel.COARSE, closure, false, proof.threads());
  }

  private static Closure closure(SectionResult result) {
    for (Closure closure : Closure.values()) {
      if (closure.key().equals(result.closure())) {
        return closure;
      }
    }
    return Closure.AUTO;
  }

  private static @Nullable Notice doubt(List<SectionResult> results) {
    for (SectionResult r : results) {
      if (r.status() == SolveStatus.FAILED) {
        return NoticeKind.SEARCH_NO_FLOW.of();
      }
      if (r.finest() != r.grids().get(r.grids().size() - 1)) {
        return NoticeKind.SEARCH_NOT_FINEST.of();
      }
      for (Notice notice : r.notices()) {
        if (DOUBTFUL.contains(notice.code())) {
          return notice;
        }
      }
    }
    return null;
  }

  /** The best lips, each apart from the ones before it. */
  private static List<Improvement.Found> found(Asked asked, List<Evaluation> history) {
    List<Evaluation> sorted = new ArrayList<>(history);
    sorted.removeIf(e -> !Double.isFinite(e.score()));
    sorted.sort(Comparator.comparingDouble(Evaluation::penalised));
    List<Improvement.Found> found = new ArrayList<>();
    for (Evaluation e : sorted) {
      boolean fresh =
          found.stream().allMatch(f -> apart(asked.space().lengths(), f.evaluation(), e));
      if (found.size() < PROVEN && fresh) {
        LipDrawing d = e.drawing();
        LipDrawing named =
            new LipDrawing(
                name(asked.start().name(), found.size()),
                d.family(),
                "Found by a search from "
                    + asked.start().name()
                    + ", evaluation "
                    + e.number()
                    + ".",
                d.invented(),
                "",
                d.body(),
                d.mountEdge(),
                d.detached());
        LipProfile profile = asked.limits().judge(named).profile();
        if (profile != null) {
          found.add(new Improvement.Found(named, profile, e));
        }
      }
    }
    return found;
  }

  /** A name that is not the start's. */
  private static String name(String start, int number) {
    String first = "improved " + (number + 1);
    return start.startsWith("improved") ? start + ", " + first : first;
  }

  private static boolean apart(List<NamedLength> lengths, Evaluation a, Evaluation b) {
    for (int i = 0; i < lengths.size(); i++) {
      double off =
          lengths.get(i).share(a.lengths().get(i)) - lengths.get(i).share(b.lengths().get(i));
      if (Math.abs(off) >= APART) {
        return true;
      }
    }
    return false;
  }
}
