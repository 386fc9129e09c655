package hemline.viewer.page;

import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.Placement.Group;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.GapChart;
import hemline.viewer.picture.RankingChart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A ranking: the groups, gaps where lips swap places, charts, and the cautions. */
public final class RankingPage {
  private static final int LONGEST_NAME = 40;
  private static final String UNSETTLED = "~";

  private RankingPage() {}

  public static Page of(Ranking ranking) {
    Page page = new Page("Leak against " + ranking.baseline() + " = 1");
    return add(page.quiet(Wording.conditions(ranking)), ranking);
  }

  /** Adds all but title and conditions to a page. */
  public static Page add(Page page, Ranking ranking) {
    page.table(table(ranking));
    boolean settled =
        ranking.rows().stream()
            .flatMap(row -> row.results().stream())
            .allMatch(result -> result.status() == SolveStatus.CONVERGED);
    page.quiet(settled ? "" : UNSETTLED + " mean of an unsteady flow.");
    page.texts(Wording.deciders(ranking.rows()), Tone.FINDING);
    if (!ranking.crossings().isEmpty()) {
      page.heading("Swap places").texts(swaps(ranking.crossings()), Tone.FINDING);
    }
    page.details();
    if (!ranking.possibleCrossings().isEmpty()) {
      page.heading("May swap places, within the bands");
      page.texts(swaps(ranking.possibleCrossings()), Tone.PLAIN);
    }
    if (!ranking.rows().isEmpty()) {
      page.plot(() -> RankingChart.of(ranking), "leak of each lip over that of the baseline");
      if (ranking.gaps().size() > 1) {
        page.plot(() -> GapChart.of(ranking), "relative leak over the gap, lip by lip");
      }
    }
    page.everywhere().notices(ranking.notices());
    return page.heading("Before you build").text(Cautions.SHORT, Tone.CAUTION);
  }

  /** One line a lip, group by group: ratio over all gaps, then gap by gap. */
  private static PageTable table(Ranking ranking) {
    List<Double> gaps = ranking.gaps().size() > 1 ? ranking.gaps() : List.of();
    List<String> head = new ArrayList<>(List.of("lip", "leak", "band", "leaks less"));
    if (!gaps.isEmpty()) {
      head.add("best over");
    }
    gaps.forEach(gap -> head.add(Wording.length(gap)));
    PageTable table = PageTable.of(head).folds();
    for (Group group : Group.values()) {
      List<Ranking.Row> rows = ranking.rows(group);
      if (!rows.isEmpty()) {
        table.group(Wording.group(group, ranking.baseline()));
        rows.forEach(row -> table.row(cells(ranking, row, gaps), false).flow(middle(row)));
      }
    }
    return table;
  }

  /** The section at the middle gap; null for a lip without sections. */
  private static @Nullable SectionResult middle(Ranking.Row row) {
    List<SectionResult> results = row.results();
    return results.isEmpty() ? null : results.get((results.size() - 1) / 2);
  }

  private static List<String> cells(Ranking ranking, Ranking.Row row, List<Double> gaps) {
    List<String> cells = new ArrayList<>();
    cells.add(shortened(row.profile()));
    cells.add(Digits.value(row.relativeLeak(), 1));
    cells.add(Digits.exact(row.relativeLeak(), 1) ? "" : Digits.range(row.relativeLeak(), 1));
    cells.add(
        row.profile().equals(ranking.baseline())
            ? "baseline"
            : Wording.probability(row.placement().probabilityLess()));
    if (!gaps.isEmpty()) {
      cells.add(Digits.plain(100 * row.bestShare(), 2) + " %");
    }
    gaps.forEach(gap -> cells.add(atGap(row, gap)));
    return cells;
  }

  private static String shortened(String name) {
    return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "\u2026";
  }

  private static String atGap(Ranking.Row row, double gap) {
    boolean settled =
        row.results().stream()
            .filter(result -> result.conditions().gap() == gap)
            .allMatch(result -> result.status() == SolveStatus.CONVERGED);
    return row.perGap().stream()
        .filter(ratio -> ratio.gap() == gap)
        .map(ratio -> Digits.fixed(ratio.relativeLeak().value(), 3) + (settled ? "" : UNSETTLED))
        .findFirst()
        .orElse("-");
  }

  /** Swaps of one lip together: it leaks less than the others from these gaps on. */
  private static List<String> swaps(List<Ranking.Crossing> crossings) {
    Map<String, List<String>> byWinner = new LinkedHashMap<>();
    for (Ranking.Crossing c : crossings) {
      String at = c.first() + " from about " + LengthUnit.text(c.gap(), 2);
      byWinner.computeIfAbsent(c.second(), name -> new ArrayList<>()).add(at);
    }
    return byWinner.entrySet().stream()
        .map(e -> e.getKey() + " leaks less than " + String.join(", ", e.getValue()) + ".")
        .toList();
  }
}
