package hemline.solver.study;

import hemline.shared.problem.Notice;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What the reader of a ranking must know. What many sections share is told once, with the number of
 * sections and their gaps; each section's own notices say more.
 */
final class RankingNotices {
  /** What is said of all sections that carry a notice of this code. */
  private record Shared(String code, String text) {}

  private static final List<Shared> SHARED =
      List.of(
          new Shared(
              "regime.transition",
              "the gap Reynolds number lies in the transition band, where a flow may be laminar or"
                  + " turbulent"),
          new Shared(
              "grids.diverging",
              "the leak does not settle as the grid is refined, which widens the bands; a finer"
                  + " mesh may help"),
          new Shared(
              "grids.slow",
              "the leak settles slowly as the grid is refined, which widens the bands; a finer mesh"
                  + " may help"),
          new Shared(
              "grids.detail",
              "detail of an outline that no cell could show is left out of the grids"),
          new Shared(
              "grids.incomplete", "not all three grids gave a usable flow, which widens the bands"),
          new Shared("model.missing", "a comparison flow model gave no usable flow"),
          new Shared("jet.mach", "the jet is fast enough for the air's expansion to count"));

  private final String baseline;
  private final List<Notice> missing = new ArrayList<>();
  private final List<Notice> swaps = new ArrayList<>();
  private final Map<SolveStatus, Map<String, List<String>>> unfinished =
      new EnumMap<>(SolveStatus.class);
  private final Map<String, List<Double>> sharedGaps = new LinkedHashMap<>();
  private int sections;

  /**
   * Starts with nothing to say.
   *
   * @param baseline name of the baseline
   */
  RankingNotices(String baseline) {
    this.baseline = baseline;
  }

  /** Takes in the results of one lip. */
  void results(String lip, List<SectionResult> results) {
    for (SectionResult result : results) {
      sections++;
      if (result.status() == SolveStatus.CANCELLED || result.status() == SolveStatus.UNSTEADY) {
        unfinished
            .computeIfAbsent(result.status(), status -> new TreeMap<>())
            .computeIfAbsent(lip, name -> new ArrayList<>())
            .add(NumberText.millimetres(result.conditions().gap()));
      }
      result.notices().stream()
          .map(Notice::code)
          .distinct()
          .forEach(
              code ->
                  sharedGaps
                      .computeIfAbsent(code, c -> new ArrayList<>())
                      .add(result.conditions().gap()));
    }
  }

  /**
   * Tells of gaps at which a lip cannot be compared.
   *
   * @param leftOut true when the lip has no place at all
   * @param gaps m; may be empty
   */
  void missing(String lip, boolean leftOut, List<Double> gaps) {
    if (leftOut) {
      missing.add(
          new Notice(
              "ranking.left-out",
              lip
                  + " has no place: at no gap is there a usable leak of it and of the baseline "
                  + baseline
                  + " to compare."));
    } else if (!gaps.isEmpty()) {
      missing.add(
          new Notice(
              "ranking.gaps-missing",
              lip
                  + " is judged without the gap "
                  + gaps.stream().map(NumberText::millimetres).collect(Collectors.joining(", "))
                  + ", where it cannot be compared with the baseline."));
    }
  }

  /** Tells how many pairs may swap places without being clear on both sides. */
  void possibleCrossings(List<Ranking.Crossing> possible) {
    if (possible.isEmpty()) {
      return;
    }
    Ranking.Crossing only = possible.get(0);
    swaps.add(
        new Notice(
            "ranking.crossings",
            possible.size() == 1
                ? only.first()
                    + " and "
                    + only.second()
                    + " may swap places near "
                    + NumberText.significant(1e3 * only.gap(), 2)
                    + " mm, but not beyond the bands on both sides."
                : possible.size()
                    + " more swaps of places are possible, but not beyond the bands on both"
                    + " sides."));
  }

  /** All notices: what is left out, unfinished flows, swaps, then what many sections share. */
  List<Notice> list() {
    List<Notice> all = new ArrayList<>(missing);
    status(SolveStatus.CANCELLED, "ranking.cancelled", "The study was stopped before ", all);
    status(SolveStatus.UNSTEADY, "ranking.unsteady", "No steady flow was found for ", all);
    all.addAll(swaps);
    for (Shared kind : SHARED) {
      List<Double> gaps = sharedGaps.get(kind.code());
      if (gaps != null) {
        all.add(new Notice(kind.code(), "In " + where(gaps) + " " + kind.text() + "."));
      }
    }
    return all;
  }

  private void status(SolveStatus status, String code, String lead, List<Notice> all) {
    Map<String, List<String>> byLip = unfinished.get(status);
    if (byLip != null) {
      all.add(
          new Notice(
              code,
              lead
                  + byLip.entrySet().stream()
                      .map(e -> e.getKey() + " at " + String.join(", ", e.getValue()))
                      .collect(Collectors.joining("; "))
                  + (status == SolveStatus.CANCELLED ? " was solved." : ".")));
    }
  }

  private String where(List<Double> gaps) {
    TreeSet<Double> different = new TreeSet<>(gaps);
    String first = NumberText.millimetres(different.first());
    return (gaps.size() == sections
            ? "all " + sections + " sections"
            : gaps.size() + " of " + sections + " sections")
        + (different.size() == 1
            ? " (gap " + first + ")"
            : " (gaps " + first + " to " + NumberText.millimetres(different.last()) + ")");
  }
}
