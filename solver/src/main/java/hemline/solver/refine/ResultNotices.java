package hemline.solver.refine;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.Notice;
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
import java.util.Locale;
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

  static Notice cancelled() {
    return new Notice("solve.cancelled", "The solve was stopped before it had a usable answer.");
  }

  static Notice failed(GridFamily family) {
    String text =
        family.grids().isEmpty()
            ? "No grid could be solved."
            : "No usable flow was found on any of " + family.grids().size() + " grids.";
    return new Notice(
        "solve.failed", text + " Try another mesh level or closure, or check the profile.");
  }

  List<Notice> list(Map<Figure, Estimate> figures, double gapReynolds) {
    List<Notice> notices = new ArrayList<>();
    @Nullable Estimate leak = figures.get(Figure.LEAK_FLOW);
    if (Regime.at(gapReynolds) == Regime.TRANSITIONAL) {
      notices.add(
          notice(
              "regime.transition",
              "The gap Reynolds number of %.0f lies in the transition band, %.0f to %.0f: the flow"
                  + " may be laminar or turbulent%s.",
              Math.abs(gapReynolds),
              Regime.TRANSITION_FROM,
              Regime.TRANSITION_TO,
              spansTransition() ? ", and the bands span both" : ""));
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

  private boolean spansTransition() {
    boolean laminar = family.closure() == Closure.LAMINAR;
    return others.stream()
        .anyMatch(
            other ->
                (other.closure() == Closure.LAMINAR) != laminar
                    && FigureSeries.of(other).finest() >= 0);
  }

  private void lost(List<Notice> notices) {
    if (family.lost() != null) {
      notices.add(
          notice(
              "model.lost",
              "The flow model %s, which belongs to this flow, gave no usable flow on any grid: the"
                  + " figures are those of %s.",
              family.lost().key(),
              family.closure().key()));
    }
  }

  private void two(List<Notice> notices) {
    GridRun other = family.other();
    if (other != null) {
      notices.add(
          notice(
              "flow.two-found",
              "The finest grid holds two steady flows: one with a discharge coefficient of %.3f,"
                  + " found from the coarser grids, one with %.3f, found from rest. The figures are"
                  + " those of the first, their bands reach over both.",
              series.scalar(Figure.DISCHARGE_COEFFICIENT, series.finest()),
              other.figures().scalars().getOrDefault(Figure.DISCHARGE_COEFFICIENT, Double.NaN)));
    }
  }

  private void models(List<Notice> notices) {
    for (GridFamily other : others) {
      if (FigureSeries.of(other).finest() < 0) {
        notices.add(
            notice(
                "model.missing",
                "The comparison solve with the flow model %s gave no usable flow: the model spread"
                    + " leaves it out.",
                other.closure().key()));
      }
    }
  }

  private void mach(List<Notice> notices) {
    if (!(section.drive() instanceof Drive.Suction)) {
      return;
    }
    double mach = Expansibility.jetMach(section.askedDrop(), upstreamPressure(section));
    if (mach > MACH_LIMIT) {
      notices.add(
          notice(
              "jet.mach",
              "The jet reaches Mach %.2f, beyond the incompressible assumption: expansion of the"
                  + " air cuts the leak by about %.1f %%, which is not in the figures.",
              mach,
              100 * (1 - expansibility(section))));
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
      notices.add(
          notice(
              "flow.two-branches",
              "The ground moves against the leak at %.2f of the jet reference velocity: a lip can"
                  + " then have two steady flows, with leaks up to 42 %% apart where both were"
                  + " found; the figures and their bands belong to one of them.",
              ratio));
    }
  }

  private void settled(List<Notice> notices, @Nullable Estimate leak) {
    GridRun finest = series.run(series.finest());
    Termination termination = finest.termination();
    if (finest.status() != SolveStatus.UNSTEADY) {
      if (termination.attempt() == Termination.Attempt.RELAXED
          || termination.attempt() == Termination.Attempt.AVERAGED) {
        notices.add(
            notice(
                "flow.hard",
                "The flow on the finest grid settled only when more of each last pass was kept,"
                    + " after %d passes: watch it when conditions change.",
                finest.iterations()));
      }
      return;
    }
    double percent =
        leak == null || leak.value() == 0 ? 0 : 100 * leak.iteration() / Math.abs(leak.value());
    notices.add(
        notice(
            "flow.unsteady",
            "No steady flow was found on the finest grid, the iteration %s: figures are means over"
                + " the last passes, in which the leak moved by ±%.1f %%.",
            termination.words(),
            percent));
  }

  private void grids(List<Notice> notices, @Nullable Estimate leak) {
    int usable = 0;
    for (int k = 0; k < series.places(); k++) {
      usable += series.usable(k) ? 1 : 0;
    }
    if (stopped) {
      notices.add(
          notice(
              "solve.cancelled",
              "The solve was stopped: figures come from %d of %d grids.",
              usable,
              SectionFamily.GRIDS));
    } else if (usable < SectionFamily.GRIDS) {
      notices.add(
          notice(
              "grids.incomplete",
              "Only %d of %d grids gave a usable flow%s: the bands are wider for it.",
              usable,
              SectionFamily.GRIDS,
              series.finest() < family.grids().size() - 1
                      || family.grids().size() < SectionFamily.GRIDS
                  ? ", and the finest is not among them"
                  : ""));
    }
    if (leak == null || leak.numerical() <= TELLING * leastWidth * Math.abs(leak.value())) {
      return;
    }
    if (leak.trend() == Estimate.Trend.SLOW) {
      notices.add(
          new Notice(
              "grids.slow",
              "The leak flow settles slowly as the grid is refined, at an order below a half: its"
                  + " band is about three times the scatter. A finer mesh may help."));
    }
    if (leak.trend() == Estimate.Trend.DIVERGING) {
      notices.add(
          new Notice(
              "grids.diverging",
              "The leak flow does not settle as the grid is refined: its band is about three times"
                  + " the scatter. A finer mesh may help."));
    }
  }

  private static Notice notice(String code, String text, Object... values) {
    return new Notice(code, String.format(Locale.ROOT, text, values));
  }
}
