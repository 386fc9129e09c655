package hemline.solver.refine;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.result.Termination;
import hemline.shared.section.Drive;
import hemline.shared.section.Section;
import hemline.solver.flow.Closure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the reader of a section's answer must know. */
final class ResultNotices {
  /**
   * The incompressible assumption is questioned above this Mach number. Common practice, no source.
   */
  private static final double MACH_LIMIT = 0.3;

  /**
   * Two steady flows were found under the same lip from about this ground speed against the leak
   * on, over the jet reference velocity (one found at 0.39, two at 0.78; time-accurate runs, see
   * the notes of the developers).
   */
  private static final double AGAINST = 0.5;

  /**
   * Least bands above which the trend of the leak over the grids is no chance. Judged, no source.
   */
  private static final double TELLING = 2;

  private final Section section;
  private final double leastWidth;
  private final GridFamily family;
  private final List<GridFamily> others;
  private final FigureSeries series;
  private final boolean stopped;

  ResultNotices(
      Section section,
      double leastWidth,
      GridFamily family,
      List<GridFamily> others,
      FigureSeries series,
      boolean stopped) {
    this.section = section;
    this.leastWidth = leastWidth;
    this.family = family;
    this.others = others;
    this.series = series;
    this.stopped = stopped;
  }

  static Notice failed(GridFamily family) {
    return family.grids().isEmpty()
        ? NoticeKind.SOLVE_NO_GRID.of()
        : NoticeKind.SOLVE_NO_FLOW.of(family.grids().size());
  }

  List<Notice> list(Map<Figure, Estimate> figures, double gapReynolds) {
    List<Notice> notices = new ArrayList<>();
    @Nullable Estimate leak = figures.get(Figure.LEAK_FLOW);
    if (Regime.at(gapReynolds) == Regime.TRANSITIONAL) {
      notices.add(transition(gapReynolds));
    }
    lost(notices);
    models(notices);
    mach(notices);
    two(notices);
    against(notices);
    settled(notices, leak);
    grids(notices, leak);
    return notices;
  }

  /** Leak as mass flow over the incompressible one, for ambient air at the standard pressure. */
  static double expansibility(Section section) {
    return Expansibility.factor(section.askedDrop(), upstreamPressure(section));
  }

  private static double upstreamPressure(Section section) {
    return Air.STANDARD_PRESSURE + Math.max(0, -section.askedDrop());
  }

  /** The transition band, and how far the bands reach towards the answer of the other kind. */
  private Notice transition(double gapReynolds) {
    double reynolds = Math.abs(gapReynolds);
    boolean laminar = family.closure() == Closure.LAMINAR;
    double share =
        others.stream()
            .filter(other -> (other.closure() == Closure.LAMINAR) != laminar)
            .filter(other -> FigureSeries.of(other).finest() >= 0)
            .mapToDouble(
                other -> TransitionFade.weight(family.closure(), other.closure(), gapReynolds))
            .max()
            .orElse(0);
    if (share == 0) {
      return NoticeKind.REGIME_TRANSITION.of(
          reynolds, Regime.TRANSITION_FROM, Regime.TRANSITION_TO);
    }
    return share < 1
        ? NoticeKind.REGIME_REACHED.of(
            reynolds, Regime.TRANSITION_FROM, Regime.TRANSITION_TO, share)
        : NoticeKind.REGIME_SPANNED.of(reynolds, Regime.TRANSITION_FROM, Regime.TRANSITION_TO);
  }

  private void lost(List<Notice> notices) {
    if (family.lost() != null) {
      notices.add(NoticeKind.MODEL_LOST.of(List.of(family.lost().key(), family.closure().key())));
    }
  }

  private void two(List<Notice> notices) {
    GridRun other = family.other();
    if (other != null) {
      notices.add(
          NoticeKind.FLOW_TWO_FOUND.of(
              series.scalar(Figure.DISCHARGE_COEFFICIENT, series.finest()),
              other.figures().scalars().getOrDefault(Figure.DISCHARGE_COEFFICIENT, Double.NaN)));
    }
  }

  private void models(List<Notice> notices) {
    for (GridFamily other : others) {
      if (FigureSeries.of(other).finest() < 0) {
        notices.add(NoticeKind.MODEL_MISSING.of(other.closure().key()));
      }
    }
  }

  private void mach(List<Notice> notices) {
    if (!(section.drive() instanceof Drive.Suction)) {
      return;
    }
    double mach = Expansibility.jetMach(section.askedDrop(), upstreamPressure(section));
    if (mach > MACH_LIMIT) {
      notices.add(NoticeKind.JET_MACH.of(mach, 1 - expansibility(section)));
    }
  }

  private void against(List<Notice> notices) {
    if (!(section.drive() instanceof Drive.Suction)) {
      return;
    }
    double jet =
        Math.signum(section.askedDrop())
            * Math.sqrt(2 * Math.abs(section.askedDrop()) / section.fluid().density());
    double ratio = jet == 0 ? 0 : -section.ground().speed() / jet;
    if (ratio > AGAINST) {
      notices.add(NoticeKind.FLOW_TWO_BRANCHES.of(ratio));
    }
  }

  private void settled(List<Notice> notices, @Nullable Estimate leak) {
    GridRun finest = series.run(series.finest());
    Termination termination = finest.termination();
    if (finest.status() != SolveStatus.UNSTEADY) {
      if (termination.attempt() == Termination.Attempt.RELAXED
          || termination.attempt() == Termination.Attempt.AVERAGED) {
        notices.add(NoticeKind.FLOW_HARD.of(finest.iterations()));
      }
      return;
    }
    notices.add(
        NoticeKind.FLOW_UNSTEADY.of(
            termination.reason().key(),
            termination.cycle(),
            leak == null ? 0 : leak.iteration(),
            leak == null ? 0 : leak.value()));
  }

  private void grids(List<Notice> notices, @Nullable Estimate leak) {
    int usable = 0;
    for (int k = 0; k < series.places(); k++) {
      usable += series.usable(k) ? 1 : 0;
    }
    if (stopped) {
      notices.add(NoticeKind.SOLVE_STOPPED_PARTLY.of(usable, SectionFamily.GRIDS));
    } else if (usable < SectionFamily.GRIDS) {
      boolean withoutFinest =
          series.finest() < family.grids().size() - 1
              || family.grids().size() < SectionFamily.GRIDS;
      notices.add(
          (withoutFinest ? NoticeKind.GRIDS_WITHOUT_FINEST : NoticeKind.GRIDS_INCOMPLETE)
              .of(usable, SectionFamily.GRIDS));
    }
    if (leak == null || leak.numerical() <= TELLING * leastWidth * Math.abs(leak.value())) {
      return;
    }
    if (leak.trend() == Estimate.Trend.SLOW) {
      notices.add(NoticeKind.GRIDS_SLOW.of());
    }
    if (leak.trend() == Estimate.Trend.DIVERGING) {
      notices.add(NoticeKind.GRIDS_DIVERGING.of());
    }
  }
}
