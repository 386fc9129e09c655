package hemline.viewer.cli;

import hemline.shared.result.SolveStatus;
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

/** A ranking for people: the table, ties, gaps where lips swap places, and the cautions. */
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
    List<String> marks = new ArrayList<>();
    if (ranking.rows().stream().anyMatch(row -> !row.tiedWith().isEmpty())) {
      marks.add("= tied: the band of the leak ratio of the two holds 1.");
    }
    if (anyUnsettled(ranking)) {
      marks.add(UNSETTLED + " mean of an unsteady flow.");
    }
    if (!marks.isEmpty()) {
      lines.add("");
      lines.add(String.join("  ", marks));
    }
    ties(ranking, lines);
    crossings(ranking, lines);
    lines.addAll(ResultText.notices(ranking.notices()));
    lines.add("");
    lines.addAll(Cautions.SHORT);
    lines.add("");
    lines.add(ranking.rows().size() + " lips, " + Digits.plain(seconds, 2) + " s.");
    return lines;
  }

  /** Places and gaps in one table where it fits the line, else one below the other. */
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
   * One line a lip.
   *
   * @param whole true for rank and mean over all gaps beside the name
   * @param from first gap shown
   * @param to one after the last gap shown
   */
  private static List<String> table(Ranking ranking, boolean whole, int from, int to) {
    Lean[] columns = new Lean[(whole ? 4 : 1) + to - from];
    Arrays.fill(columns, Lean.LEFT);
    columns[0] = whole ? Lean.RIGHT : Lean.LEFT;
    TextTable table = new TextTable(columns);
    List<String> head =
        new ArrayList<>(whole ? List.of("rank", "lip", "leak", "band") : List.of("leak at gap"));
    for (int g = from; g < to; g++) {
      head.add(Wording.millimetres(ranking.gaps().get(g)));
    }
    table.row(head.toArray(String[]::new));
    for (Ranking.Row row : ranking.rows()) {
      List<String> cells = new ArrayList<>();
      if (whole) {
        cells.add((row.tiedWith().isEmpty() ? "" : "= ") + row.rank());
      }
      cells.add(shortened(row.profile()));
      if (whole) {
        boolean exact = Digits.exact(row.relativeLeak(), 1);
        cells.add(Digits.value(row.relativeLeak(), 1));
        cells.add(exact ? "" : Digits.range(row.relativeLeak(), 1));
      }
      for (double gap : ranking.gaps().subList(from, to)) {
        cells.add(atGap(row, gap));
      }
      table.row(cells.toArray(String[]::new));
    }
    return table.lines(INDENT);
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

  private static void ties(Ranking ranking, List<String> lines) {
    List<String> ties = new ArrayList<>();
    List<String> above = new ArrayList<>();
    for (Ranking.Row row : ranking.rows()) {
      // each pair once: with the lips below
      List<String> below = row.tiedWith().stream().filter(name -> !above.contains(name)).toList();
      above.add(row.profile());
      if (!below.isEmpty()) {
        ties.addAll(wrapped(row.profile() + " with " + String.join(", ", below)));
      }
    }
    if (!ties.isEmpty()) {
      lines.add("");
      lines.add("Tied");
      lines.addAll(ties);
    }
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
