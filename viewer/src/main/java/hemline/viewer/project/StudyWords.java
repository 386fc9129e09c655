package hemline.viewer.project;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.solver.study.Swept;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What a study says, in sentences. */
public final class StudyWords {
  private StudyWords() {}

  /** Findings: exponent, least leak, ties, swaps; or how far a stopped study came. */
  public static List<String> findings(KeptStudy study) {
    List<String> lines = new ArrayList<>();
    if (!study.complete()) {
      lines.add(
          "Stopped before its end: "
              + study.results().size()
              + " of "
              + (study.question().standings()
                  ? study.asked() + " sections were solved, too few for standings."
                  : study.question().values().size() + " points were solved.")
              + " Go on to solve the rest.");
    }
    if (study.ranking() != null) {
      standings(study.ranking(), lines);
    }
    Estimate exponent =
        study.relative() != null
            ? study.relative().lip().gapExponent()
            : study.sweep() != null ? study.sweep().gapExponent() : null;
    if (exponent != null) {
      lines.add(
          "Gap exponent n = "
              + Digits.withBand(exponent, 1)
              + ": a gap 10 % wider leaks about "
              + Digits.plain(100 * (Math.pow(1.1, exponent.value()) - 1), 2)
              + " % more.");
    }
    if (study.relative() != null) {
      relative(study, lines);
    }
    return lines;
  }

  private static void relative(KeptStudy study, List<String> lines) {
    Swept swept = study.question().swept();
    if (swept == null || study.relative() == null) {
      return;
    }
    List<String> less = new ArrayList<>();
    List<String> more = new ArrayList<>();
    List<String> tie = new ArrayList<>();
    for (int k = 0; k < study.relative().relativeLeak().size(); k++) {
      Estimate ratio = study.relative().relativeLeak().get(k);
      String at = Wording.value(swept, swept.of(study.results().get(k)));
      if (ratio != null) {
        (ratio.high() < 1 ? less : ratio.low() > 1 ? more : tie).add(at);
      }
    }
    String flat = study.relative().baseline().points().get(0).name();
    add(lines, "Clearly less leak than the " + flat, less, study);
    add(lines, "Clearly more leak than the " + flat, more, study);
    add(lines, "No difference that the bands allow to call one", tie, study);
  }

  private static void add(List<String> lines, String what, List<String> at, KeptStudy study) {
    if (!at.isEmpty()) {
      boolean all = at.size() == study.results().size();
      lines.add(what + (all ? " at every point." : " at " + String.join(", ", at) + "."));
    }
  }

  private static void standings(Ranking ranking, List<String> lines) {
    for (Placement.Group group : Placement.Group.values()) {
      List<Ranking.Row> rows = ranking.rows(group);
      if (!rows.isEmpty()) {
        lines.add(
            Wording.group(group, ranking.baseline())
                + ": "
                + rows.stream()
                    .map(row -> row.profile() + " " + Digits.withBand(row.relativeLeak(), 1))
                    .collect(Collectors.joining(", "))
                + ".");
        lines.addAll(Wording.deciders(rows));
      }
    }
    for (Ranking.Crossing crossing : ranking.crossings()) {
      lines.add(swap(crossing, "From about ", " leaks less than "));
    }
    for (Ranking.Crossing crossing : ranking.possibleCrossings()) {
      lines.add(swap(crossing, "Perhaps, within the bands, from about ", " leaks less than "));
    }
  }

  private static String swap(Ranking.Crossing crossing, String from, String than) {
    return from
        + Digits.plain(1000 * crossing.gap(), 2)
        + " mm on, "
        + crossing.second()
        + than
        + crossing.first()
        + ".";
  }

  /** Warnings, each once, with the places it belongs to. */
  public static List<String> cautions(KeptStudy study) {
    if (study.ranking() != null) {
      return study.ranking().notices().stream().map(Notice::text).toList();
    }
    Map<String, List<String>> places = new LinkedHashMap<>();
    Swept swept = study.question().swept();
    for (SectionResult point : study.results()) {
      String place =
          swept == null
              ? point.name() + " at " + Wording.millimetres(point.gap())
              : Wording.value(swept, swept.of(point));
      for (Notice notice : point.notices()) {
        places.computeIfAbsent(notice.text(), text -> new ArrayList<>()).add(place);
      }
      if (point.status() == SolveStatus.FAILED) {
        places.computeIfAbsent("No usable flow was found.", t -> new ArrayList<>()).add(place);
      }
    }
    List<String> lines = new ArrayList<>();
    places.forEach(
        (text, at) ->
            lines.add(
                at.size() == study.results().size()
                    ? text
                    : "At " + String.join(", ", at) + ": " + text));
    return lines;
  }
}
