package hemline.viewer.cli;

import hemline.shared.result.SolveStatus;
import hemline.solver.study.Placement.Group;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import hemline.viewer.format.Wording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A ranking for people: the groups, gaps where lips swap places, and the cautions. */
final class RankingText {
  private static final int MOST_GAPS = 8;
  private static final int LONGEST_NAME = 40;
  private static final String INDENT = "  ";
  private static final String UNSETTLED = "~";

  private RankingText() {}

  /** Lines of text. */
  static List<String> lines(Ranking ranking, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add("Leak against " + ranking.baseline() + " = 1");
    lines.add(Wording.conditions(ranking));
    lines.add("");
    lines.addAll(tables(ranking));
    if (anyUnsettled(ranking)) {
      lines.add("");
      lines.add(UNSETTLED + " mean of an unsteady flow.");
    }
    crossings(ranking, lines);
    lines.addAll(ResultText.notices(ranking.notices()));
    lines.add("");
    lines.addAll(Cautions.SHORT);
    lines.add("");
    lines.add(ranking.rows().size() + " lips, " + Digits.plain(seconds, 2) + " s.");
    return lines;
  }

  /** Groups and gaps in one table where it fits the line, else one below the other. */
  private static List<String> tables(Ranking ranking) {
    int gaps = ranking.gaps().size() > 1 ? ranking.gaps().size() : 0;
    List<String> together = table(ranking, true, 0, gaps);
    if (gaps == 0 || width(together) <= ResultText.WIDTH) {
      return together;
    }
    List<String> lines = new ArrayList<>(table(ranking, true, 0, 0));
    for (int from = 0; from < gaps; from += MOST_GAPS) {
      lines.add("");
      lines.addAll(table(ranking, false, from, Math.min(gaps, from + MOST_GAPS)));
    }
    return lines;
  }

  private static int width(List<String> lines) {
    return lines.stream().mapToInt(String::length).max().orElse(0);
  }

  /**
   * One line a lip, group by group.
   *
   * @param whole true for the ratio over all gaps and the headings of the groups beside the names
   * @param from first gap shown
   * @param to one after the last gap shown
   */
  private static List<String> table(Ranking ranking, boolean whole, int from, int to) {
    boolean best = whole && ranking.gaps().size() > 1;
    Lean[] columns = new Lean[(whole ? 4 : 1) + (best ? 1 : 0) + to - from];
    Arrays.fill(columns, Lean.LEFT);
    TextTable table = new TextTable(columns);
    List<String> head =
        new ArrayList<>(
            whole ? List.of("lip", "leak", "band", "leaks less") : List.of("leak at gap"));
    if (best) {
      head.add("best over");
    }
    for (int g = from; g < to; g++) {
      head.add(Wording.millimetres(ranking.gaps().get(g)));
    }
    table.row(head.toArray(String[]::new));
    for (Group group : Group.values()) {
      ranking.rows(group).forEach(row -> table.row(cells(ranking, row, whole, best, from, to)));
    }
    List<String> lines = table.lines(INDENT);
    return whole ? withHeadings(ranking, lines) : lines;
  }

  private static String[] cells(
      Ranking ranking, Ranking.Row row, boolean whole, boolean best, int from, int to) {
    List<String> cells = new ArrayList<>();
    cells.add(shortened(row.profile()));
    if (whole) {
      boolean exact = Digits.exact(row.relativeLeak(), 1);
      cells.add(Digits.value(row.relativeLeak(), 1));
      cells.add(exact ? "" : Digits.range(row.relativeLeak(), 1));
      cells.add(
          row.profile().equals(ranking.baseline())
              ? "baseline"
              : Wording.probability(row.placement().probabilityLess()));
    }
    if (best) {
      cells.add(Digits.plain(100 * row.bestShare(), 2) + " %");
    }
    for (double gap : ranking.gaps().subList(from, to)) {
      cells.add(atGap(row, gap));
    }
    return cells.toArray(String[]::new);
  }

  /** The lines of the table with a heading before each group, and what would decide after it. */
  private static List<String> withHeadings(Ranking ranking, List<String> table) {
    List<String> lines = new ArrayList<>();
    lines.add(table.get(0));
    int next = 1;
    for (Group group : Group.values()) {
      List<Ranking.Row> rows = ranking.rows(group);
      if (!rows.isEmpty()) {
        lines.add(Wording.group(group, ranking.baseline()));
        lines.addAll(table.subList(next, next + rows.size()));
        next += rows.size();
        for (String cure : Wording.deciders(rows)) {
          lines.addAll(wrapped(cure));
        }
      }
    }
    return lines;
  }

  private static String shortened(String name) {
    return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "\u2026";
  }

  private static String atGap(Ranking.Row row, double gap) {
    for (Ranking.GapRatio ratio : row.perGap()) {
      if (ratio.gap() == gap) {
        return Digits.fixed(ratio.relativeLeak().value(), 3) + (settled(row, gap) ? "" : UNSETTLED);
      }
    }
    return "-";
  }

  private static boolean settled(Ranking.Row row, double gap) {
    return row.results().stream()
        .filter(result -> result.gap() == gap)
        .allMatch(result -> result.status() == SolveStatus.CONVERGED);
  }

  private static boolean anyUnsettled(Ranking ranking) {
    return ranking.rows().stream()
        .flatMap(row -> row.results().stream())
        .anyMatch(result -> result.status() != SolveStatus.CONVERGED);
  }

  /** Swaps of one lip together: it leaks less than the others from these gaps on. */
  private static void crossings(Ranking ranking, List<String> lines) {
    if (ranking.crossings().isEmpty()) {
      return;
    }
    Map<String, List<String>> byWinner = new LinkedHashMap<>();
    for (Ranking.Crossing crossing : ranking.crossings()) {
      byWinner
          .computeIfAbsent(crossing.second(), name -> new ArrayList<>())
          .add(crossing.first() + " from about " + Digits.plain(1000 * crossing.gap(), 2) + " mm");
    }
    lines.add("");
    lines.add("Swap places");
    byWinner.forEach(
        (name, others) ->
            lines.addAll(wrapped(name + " leaks less than " + String.join(", ", others))));
  }

  private static List<String> wrapped(String text) {
    return TextTable.wrapped(text, INDENT, INDENT + INDENT, ResultText.WIDTH);
  }
}
