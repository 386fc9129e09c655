package hemline.solver.improve;

import hemline.shared.problem.Notice;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
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
import hemline.solver.study.GapDistribution;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RankingStudy;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * Searches for a lip that leaks less than another and proves what it found.
 *
 * <p>The search goes by the leak on the finest grid of coarse families under one flow model, summed
 * over the gaps, relative to that of the start: errors that all lips share cancel. The least of
 * many noisy values is too good on the average; so the best lips are solved anew on finer grids, at
 * all gaps and with the second flow model, and only these figures are told.
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
   * @param ground gaps, and how much of the seal lies over each
   * @param conditions suction, ground motion, fluid; its profile and gap are not used
   * @param evaluations at most, 2 or more
   * @param seed of the search
   */
  public record Asked(
      LipProfile start,
      LipSpace space,
      ShapeLimits limits,
      GapDistribution ground,
      SealSection conditions,
      int evaluations,
      long seed) {}

  /**
   * Searches and proves.
   *
   * @param options of the proof; its mesh is finer than coarse
   * @param spent true once the time for the search is up
   */
  public Improvement of(
      Asked asked,
      RunOptions options,
      BooleanSupplier spent,
      CancelToken cancel,
      ProgressListener progress) {
    List<SectionResult> start =
        coarse(asked, List.of(asked.start()), coarse(options, options.closure()), cancel);
    if (cancel.isCancelled() || start.isEmpty()) {
      return stopped(asked, List.of(), "");
    }
    RunOptions search = coarse(options, closure(start.get(0)));
    double base = leak(asked, coarse(asked, List.of(asked.start()), search, cancel));
    int[] done = {0};
    LipSearch run =
        new LipSearch(
            asked.space(),
            asked.limits(),
            lips -> {
              List<SectionResult> results = coarse(asked, lips, search, cancel);
              int gaps = asked.ground().gaps().size();
              List<LipSearch.Score> scores = new ArrayList<>();
              for (int i = 0; (i + 1) * gaps <= results.size(); i++) {
                List<SectionResult> own = results.subList(i * gaps, (i + 1) * gaps);
                scores.add(new LipSearch.Score(leak(asked, own) / base, doubt(own)));
              }
              done[0] += lips.size();
              progress.progress(SEARCH * done[0] / asked.evaluations(), "evaluation " + done[0]);
              return cancel.isCancelled() ? List.of() : scores;
            },
            asked.evaluations(),
            asked.seed(),
            spent);
    boolean ended = run.run();
    List<Improvement.Found> found = found(asked, run.history());
    if (!ended || found.isEmpty()) {
      return ended
          ? new Improvement(
              asked.start(),
              asked.space().lengths(),
              run.history(),
              run.refusal(),
              List.of(),
              null,
              null,
              SolveStatus.FAILED)
          : stopped(asked, run.history(), run.refusal());
    }
    return proven(asked, run, found, options, cancel, progress);
  }

  private Improvement proven(
      Asked asked,
      LipSearch run,
      List<Improvement.Found> found,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    LipProfile flat = PlainFlat.asWideAs(asked.start());
    List<LipProfile> lips =
        new ArrayList<>(found.stream().map(Improvement.Found::profile).toList());
    boolean apart = !flat.name().equals(asked.start().name());
    if (apart) {
      lips.add(flat);
    }
    ProgressListener first =
        (share, what) -> progress.progress(SEARCH + (1 - SEARCH) * 0.9 * share, "proof, " + what);
    RankingAnswer toStart = rank(asked, lips, asked.start(), options, cancel, first);
    if (apart) {
      lips.remove(flat);
      lips.add(asked.start());
    }
    RankingAnswer toFlat =
        cancel.isCancelled()
            ? toStart
            : rank(asked, lips, apart ? flat : asked.start(), options, cancel, (s, w) -> {});
    if (cancel.isCancelled()) {
      return stopped(asked, run.history(), run.refusal());
    }
    return new Improvement(
        asked.start(),
        asked.space().lengths(),
        run.history(),
        run.refusal(),
        found,
        toStart,
        toFlat,
        SolveStatus.CONVERGED);
  }

  private RankingAnswer rank(
      Asked asked,
      List<LipProfile> lips,
      LipProfile baseline,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    return new RankingStudy(family)
        .rank(lips, baseline, asked.ground(), asked.conditions(), options, cancel, progress);
  }

  private static Improvement stopped(Asked asked, List<Evaluation> history, String refusal) {
    return new Improvement(
        asked.start(),
        asked.space().lengths(),
        history,
        refusal,
        List.of(),
        null,
        null,
        SolveStatus.CANCELLED);
  }

  /** Sections of lips at all gaps on coarse grids, lip by lip; fewer when stopped. */
  private List<SectionResult> coarse(
      Asked asked, List<LipProfile> lips, RunOptions options, CancelToken cancel) {
    List<SealSection> sections = new ArrayList<>();
    for (LipProfile lip : lips) {
      for (double gap : asked.ground().gaps()) {
        sections.add(asked.conditions().withProfile(lip).withGap(gap));
      }
    }
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

  /** Leak over the gaps on the finest grids, m²/s; not a number where one has none. */
  private static double leak(Asked asked, List<SectionResult> results) {
    double sum = 0;
    for (int g = 0; g < results.size(); g++) {
      List<GridRun> grids = results.get(g).grids();
      Double q =
          grids.isEmpty() || results.get(g).status() == SolveStatus.FAILED
              ? null
              : grids.get(grids.size() - 1).figures().scalars().get(Figure.LEAK_FLOW);
      sum += asked.ground().weights().get(g) * (q == null || !(q > 0) ? Double.NaN : q);
    }
    return results.isEmpty() ? Double.NaN : sum;
  }

  private static String doubt(List<SectionResult> results) {
    for (SectionResult r : results) {
      if (r.status() == SolveStatus.FAILED) {
        return "no usable flow";
      }
      for (Notice notice : r.notices()) {
        if (DOUBTFUL.contains(notice.code())) {
          return notice.text();
        }
      }
    }
    return "";
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
    String first = String.format(Locale.ROOT, "improved %d", number + 1);
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
