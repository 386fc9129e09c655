package hemline.solver.study;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the reader of a ranking must know. What many sections share is told once, with the number of
 * sections and their gaps; each section's own notices say more.
 */
final class RankingNotices {
  /** What is told of many sections, where they carry notices of its code. */
  private static final List<NoticeKind> SHARED =
      List.of(
          NoticeKind.MANY_TRANSITION,
          NoticeKind.MANY_DIVERGING,
          NoticeKind.MANY_SLOW,
          NoticeKind.MANY_DETAIL,
          NoticeKind.MANY_INCOMPLETE,
          NoticeKind.MANY_MISSING,
          NoticeKind.MANY_MACH);

  private final String baseline;
  private final List<Notice> missing = new ArrayList<>();
  private final List<Notice> swaps = new ArrayList<>();
  private final Map<NoticeKind, Map<String, List<Double>>> unfinished =
      new EnumMap<>(NoticeKind.class);
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
      boolean cancelled = result.status() == SolveStatus.CANCELLED;
      if (cancelled || result.status() == SolveStatus.UNSTEADY) {
        unfinished
            .computeIfAbsent(
                cancelled ? NoticeKind.RANKING_CANCELLED : NoticeKind.RANKING_UNSTEADY,
                kind -> new TreeMap<>())
            .computeIfAbsent(lip, name -> new ArrayList<>())
            .add(result.conditions().gap());
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
      missing.add(NoticeKind.RANKING_LEFT_OUT.of(List.of(lip, baseline)));
    } else if (!gaps.isEmpty()) {
      missing.add(pairs(NoticeKind.RANKING_GAPS_MISSING, Map.of(lip, gaps)));
    }
  }

  /** Tells how many pairs may swap places without being clear on both sides. */
  void possibleCrossings(List<Ranking.Crossing> possible) {
    if (possible.size() == 1) {
      Ranking.Crossing only = possible.get(0);
      swaps.add(NoticeKind.RANKING_SWAP.of(List.of(only.first(), only.second()), only.gap()));
    } else if (!possible.isEmpty()) {
      swaps.add(NoticeKind.RANKING_SWAPS.of(possible.size()));
    }
  }

  /** All notices: what is left out, unfinished flows, swaps, then what many sections share. */
  List<Notice> list() {
    List<Notice> all = new ArrayList<>(missing);
    unfinished.forEach((kind, byLip) -> all.add(pairs(kind, byLip)));
    all.addAll(swaps);
    for (NoticeKind kind : SHARED) {
      List<Double> gaps = sharedGaps.get(kind.code());
      if (gaps != null) {
        all.add(kind.of(gaps.size(), sections, Collections.min(gaps), Collections.max(gaps)));
      }
    }
    return all;
  }

  private static Notice pairs(NoticeKind kind, Map<String, List<Double>> gapsByLip) {
    List<String> lips = new ArrayList<>();
    List<Double> gaps = new ArrayList<>();
    gapsByLip.forEach(
        (lip, own) -> {
          lips.addAll(Collections.nCopies(own.size(), lip));
          gaps.addAll(own);
        });
    return new Notice(kind, "", lips, gaps);
  }
}
