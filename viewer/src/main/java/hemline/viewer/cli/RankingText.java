package hemline.viewer.cli;

import hemline.shared.result.SolveStatus;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import hemline.viewer.format.Wording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A ranking for people: the table, ties, gaps where lips swap places, and the cautions. */
final class RankingText {
  private static final int MOST_GAPS = 8;
  private static final String UNSETTLED = "~";

  private RankingText() {}

  /** Lines of text. */
  static List<String> lines(Ranking ranking, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add("Leak against " + ranking.baseline());
    lines.add(Wording.conditions(ranking));
    lines.add("");
    boolean perGap = ranking.gaps().size() > 1;
    lines.addAll(table(ranking, perGap).lines("  "));
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
    if (ranking.gaps().size() > MOST_GAPS) {
      lines.add("The first " + MOST_GAPS + " gaps are shown; the files hold all of them.");
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

  private static TextTable table(Ranking ranking, boolean perGap) {
    int gaps = perGap ? Math.min(MOST_GAPS, ranking.gaps().size()) : 0;
    Lean[] columns = new Lean[4 + gaps];
    Arrays.fill(columns, Lean.LEFT);
    columns[0] = Lean.RIGHT;
    TextTable table = new TextTable(columns);
    List<String> head = new ArrayList<>(List.of("rank", "lip", "relative leak", "band"));
    for (int g = 0; g < gaps; g++) {
      head.add(Wording.millimetres(ranking.gaps().get(g)));
    }
    table.row(head.toArray(String[]::new));
    for (Ranking.Row row : ranking.rows()) {
      List<String> cells = new ArrayList<>();
      cells.add((row.tiedWith().isEmpty() ? "" : "= ") + row.rank());
      cells.add(row.profile());
      boolean exact = Digits.exact(row.relativeLeak(), 1);
      cells.add(Digits.value(row.relativeLeak(), 1));
      cells.add(exact ? "" : Digits.range(row.relativeLeak(), 1));
      for (int g = 0; g < gaps; g++) {
        cells.add(atGap(row, ranking.gaps().get(g)));
      }
      table.row(cells.toArray(String[]::new));
    }
    return table;
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
        ties.add("  " + row.profile() + " with " + String.join(", ", below));
      }
    }
    if (!ties.isEmpty()) {
      lines.add("");
      lines.add("Tied");
      lines.addAll(ties);
    }
  }

  private static void crossings(Ranking ranking, List<String> lines) {
    if (ranking.crossings().isEmpty()) {
      return;
    }
    lines.add("");
    lines.add("Swap places");
    for (Ranking.Crossing crossing : ranking.crossings()) {
      lines.add(
          "  "
              + crossing.first()
              + " and "
              + crossing.second()
              + " at about "
              + Digits.plain(1000 * crossing.gap(), 2)
              + " mm");
    }
  }
}
