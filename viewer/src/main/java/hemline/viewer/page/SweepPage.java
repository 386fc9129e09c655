package hemline.viewer.page;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.SweepChart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A sweep: one line a point, what follows from it, and its chart. */
public final class SweepPage {
  private SweepPage() {}

  /**
   * The page.
   *
   * @param sweep one point at least
   * @param relative the same against a baseline; null where not asked for
   */
  public static Page of(SweepResult sweep, @Nullable RelativeSweep relative, Swept swept) {
    SectionResult first = sweep.points().get(0);
    Page page = new Page(first.name()).quiet(Wording.besides(swept, first));
    return add(page, sweep, relative, swept);
  }

  /** Adds all but title and conditions to a page. */
  public static Page add(
      Page page, SweepResult sweep, @Nullable RelativeSweep relative, Swept swept) {
    List<@Nullable Estimate> ratios = relative == null ? List.of() : relative.relativeLeak();
    List<String> places =
        sweep.points().stream().map(p -> Wording.value(swept, swept.of(p))).toList();
    page.table(table(sweep, places, ratios, swept));
    Estimate exponent = sweep.gapExponent();
    if (exponent != null) {
      page.text(
          "Gap exponent n = d ln q / d ln h = %s: a gap 10 %% wider leaks about %s %% more."
              .formatted(
                  Digits.withBand(exponent, 1),
                  Digits.plain(100 * (Math.pow(1.1, exponent.value()) - 1), 2)),
          Tone.FINDING);
    }
    if (relative != null) {
      String flat = relative.baseline().points().get(0).name();
      finding(page, "Clearly less leak than the " + flat, places, ratios, r -> r.high() < 1);
      finding(page, "Clearly more leak than the " + flat, places, ratios, r -> r.low() > 1);
      finding(
          page,
          "Not distinguishable from the " + flat,
          places,
          ratios,
          r -> r.high() >= 1 && r.low() <= 1);
    }
    page.plot(
        () -> relative == null ? SweepChart.of(sweep, swept) : SweepChart.of(relative, swept),
        "leak over the " + Wording.name(swept));
    page.toKnow(gathered(sweep.points(), p -> Wording.value(swept, swept.of(p))));
    return page.heading("Before you build").text(Cautions.SHORT, Tone.CAUTION);
  }

  private static PageTable table(
      SweepResult sweep, List<String> places, List<@Nullable Estimate> ratios, Swept swept) {
    List<String> head = new ArrayList<>(List.of(Wording.name(swept), "leak, L/s per m", "C_d"));
    head.add("flow");
    head.addAll(ratios.isEmpty() ? List.of("") : List.of("over flat", ""));
    PageTable table = PageTable.of(head);
    for (int k = 0; k < places.size(); k++) {
      SectionResult point = sweep.points().get(k);
      List<String> cells = new ArrayList<>(List.of(places.get(k)));
      cells.add(figure(point.figures().get(Figure.LEAK_FLOW), 1000));
      cells.add(figure(point.figures().get(Figure.DISCHARGE_COEFFICIENT), 1));
      cells.add(point.regime().key() + ", " + point.closure());
      if (!ratios.isEmpty()) {
        cells.add(figure(ratios.get(k), 1));
      }
      cells.add(Wording.ended(point.status()));
      table.row(cells, false).flow(point);
    }
    return table;
  }

  private static String figure(@Nullable Estimate estimate, double factor) {
    return estimate == null ? "-" : Digits.withBand(estimate, factor);
  }

  /** At which points a ratio is such; nothing where at none. */
  private static void finding(
      Page page,
      String what,
      List<String> places,
      List<@Nullable Estimate> ratios,
      Function<Estimate, Boolean> such) {
    List<String> at = new ArrayList<>();
    for (int k = 0; k < places.size(); k++) {
      Estimate ratio = ratios.get(k);
      if (ratio != null && such.apply(ratio)) {
        at.add(places.get(k));
      }
    }
    if (!at.isEmpty()) {
      String where = at.size() == places.size() ? "every point" : String.join(", ", at);
      page.text(what + " at " + where + ".", Tone.FINDING);
    }
  }

  /** Each warning once, with the points it belongs to. */
  public static List<String> gathered(
      List<SectionResult> points, Function<SectionResult, String> place) {
    Map<String, List<String>> places = new LinkedHashMap<>();
    for (SectionResult point : points) {
      for (Notice notice : point.notices()) {
        places
            .computeIfAbsent(NoticeWords.of(notice), t -> new ArrayList<>())
            .add(place.apply(point));
      }
    }
    List<String> gathered = new ArrayList<>();
    places.forEach(
        (text, at) ->
            gathered.add(
                at.size() == points.size() ? text : "At " + String.join(", ", at) + ": " + text));
    return gathered;
  }
}
