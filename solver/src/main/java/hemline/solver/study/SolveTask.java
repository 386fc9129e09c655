package hemline.solver.study;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.refine.Estimates;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.LeakSeries;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.solver.refine.TransitionFade;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Solves one question with the flow model asked and, where other models are plausible, with those
 * too.
 *
 * <p>Others are, when the choice was left open or a model spread is asked: the second turbulence
 * model for a turbulent flow, and laminar and turbulent for each other where {@link TransitionFade}
 * counts them. They are solved on the coarsest grid and compared there, which costs about a fifth
 * of the section; where a model spread is asked the second turbulence model is solved on all grids.
 */
final class SolveTask {
  /** Share of progress of the first solve where others may follow. */
  private static final double FIRST_SHARE = 0.8;

  private final Question question;
  private final SectionFamily family;
  private final RunOptions options;
  private final CancelToken cancel;
  private final ProgressListener progress;
  private final List<SolvedSection> before;
  private final List<SolvedSection> solved = new ArrayList<>();

  /**
   * Prepares a solve.
   *
   * @param before flows of a similar section to start from; empty to start cold
   */
  SolveTask(
      Question question,
      SectionFamily family,
      RunOptions options,
      List<SolvedSection> before,
      CancelToken cancel,
      ProgressListener progress) {
    this.question = question;
    this.family = family;
    this.options = options;
    this.before = before;
    this.cancel = cancel;
    this.progress = progress;
  }

  /** Never throws for a reason that lies in the section: that becomes a failed answer. */
  Solved run() {
    if (cancel.isCancelled()) {
      return without(SolveStatus.CANCELLED, NoticeKind.SOLVE_NOT_BEGUN.of());
    }
    try {
      Solved solved = solve();
      progress.progress(1, question.label());
      return solved;
    } catch (RuntimeException e) {
      if (cancel.isCancelled()) {
        return without(SolveStatus.CANCELLED, NoticeKind.SOLVE_STOPPED.of());
      }
      progress.progress(1, question.label());
      String reason = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      return without(SolveStatus.FAILED, NoticeKind.SOLVE_BROKEN.of(reason));
    }
  }

  /** What similar sections may start from after {@link #run}; empty when nothing converged. */
  List<SolvedSection> starts() {
    return List.copyOf(solved);
  }

  private Solved without(SolveStatus status, Notice reason) {
    Closure closure = question.closure(options);
    SectionResult result = Estimates.without(question.section(), closure, status, reason);
    return new Solved(new SectionAnswer(result, null), closure, 0, Map.of());
  }

  private Solved solve() {
    Closure asked = question.closure(options);
    boolean mayCompare = asked == Closure.AUTO || options.modelSpread();
    double firstShare = mayCompare ? FIRST_SHARE : 1;
    GridFamily main = family(SectionFamily.GRIDS, asked, before, part(0, firstShare));
    GridSolution finest = main.finestUsable();
    List<GridFamily> others = new ArrayList<>();
    if (finest != null && mayCompare) {
      List<Closure> closures = others(main.closure(), reynolds(main));
      double share = (1 - firstShare) / Math.max(1, closures.size());
      for (int i = 0; i < closures.size(); i++) {
        others.add(compare(closures.get(i), main, part(firstShare + i * share, share)));
      }
    }
    boolean stopped =
        stopped(main, SectionFamily.GRIDS)
            || others.stream().anyMatch(other -> stopped(other, grids(other.closure())));
    SectionResult result =
        Estimates.result(
            question.section(), options.level(), main, others, question.notices(), stopped);
    @Nullable FlowField field = finest == null || !finest.hasField() ? null : finest.field();
    return new Solved(
        new SectionAnswer(result, field),
        main.closure(),
        reynolds(main),
        stopped ? Map.of() : leaks(main, others));
  }

  /**
   * Solves with another model, a laminar one from the turbulent flow: from rest it takes ten times
   * as long and settles less often. One that breaks off costs the spread, not the answer.
   */
  private GridFamily compare(Closure closure, GridFamily main, ProgressListener part) {
    SolvedSection start = main.start();
    List<SolvedSection> from =
        start != null && main.closure() != Closure.LAMINAR ? List.of(start.toCompare()) : before;
    try {
      return family(grids(closure), closure, from, part);
    } catch (RuntimeException e) {
      return new GridFamily(closure, List.of());
    }
  }

  private int grids(Closure other) {
    return options.modelSpread() && other != Closure.LAMINAR ? SectionFamily.GRIDS : 1;
  }

  private GridFamily family(
      int grids, Closure closure, List<SolvedSection> from, ProgressListener part) {
    GridFamily result =
        family.solve(
            new SolveRequest(question.section(), options.level(), grids, closure, from),
            cancel,
            part);
    if (result.start() != null) {
      solved.add(result.start());
    }
    return result;
  }

  private List<Closure> others(Closure used, double gapReynolds) {
    List<Closure> others = new ArrayList<>();
    Closure second = used == Closure.LAMINAR ? question.turbulent() : used.second();
    boolean all = options.modelSpread() && Regime.at(gapReynolds) != Regime.LAMINAR;
    for (Closure other : List.of(second, Closure.LAMINAR)) {
      boolean asked = all && used == Closure.LAMINAR;
      if (other != used && (asked || TransitionFade.counts(used, other, gapReynolds))) {
        others.add(other);
      }
    }
    return others;
  }

  private double reynolds(GridFamily main) {
    double viscosity = question.section().fluid().kinematicViscosity();
    double leak = LeakSeries.of(main.runs(), viscosity).finest();
    return Double.isFinite(leak) ? leak / viscosity : 0;
  }

  private Map<Closure, LeakSeries> leaks(GridFamily main, List<GridFamily> others) {
    Map<Closure, LeakSeries> leaks = new EnumMap<>(Closure.class);
    LeakSeries leak = LeakSeries.of(main, question.section(), options.level());
    if (leak.usable()) {
      leaks.put(main.closure(), leak);
      for (GridFamily other : others) {
        LeakSeries series = LeakSeries.of(other, question.section(), options.level());
        if (series.usable()) {
          leaks.putIfAbsent(other.closure(), series);
        }
      }
    }
    return leaks;
  }

  private boolean stopped(GridFamily solved, int grids) {
    return solved.cancelled() || cancel.isCancelled() && solved.grids().size() < grids;
  }

  private ProgressListener part(double from, double share) {
    return (done, what) ->
        progress.progress(from + share * Math.max(0, Math.min(1, done)), question.label());
  }
}
