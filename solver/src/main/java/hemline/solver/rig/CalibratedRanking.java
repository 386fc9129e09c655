package hemline.solver.rig;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.SectionAnswer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A ranking with the calibrations of its lips. Ratios are multiplied by the calibrated over the
 * predicted leak of both lips, and the bands of the calibrations count beside theirs. Pairs without
 * a calibration keep their order; where one has one, the lips are apart only if the sum of their
 * bands leaves them apart.
 */
public final class CalibratedRanking {
  private final RankingAnswer answer;
  private final Map<String, Calibration> used = new HashMap<>();

  private CalibratedRanking(
      RankingAnswer answer, List<LipProfile> lips, Calibrations calibrations) {
    this.answer = answer;
    for (LipProfile lip : lips) {
      Calibration c = calibrations.of(lip);
      if (c != null) {
        used.put(lip.name(), c);
      }
    }
  }

  /**
   * The ranking with calibrations.
   *
   * @param lips all that were ranked, the baseline too
   */
  public static RankingAnswer of(
      RankingAnswer answer, List<LipProfile> lips, Calibrations calibrations) {
    CalibratedRanking all = new CalibratedRanking(answer, lips, calibrations);
    if (all.used.isEmpty()) {
      return answer;
    }
    Map<String, LipProfile> byName = new HashMap<>();
    lips.forEach(lip -> byName.put(lip.name(), lip));
    List<SectionAnswer> answers = new ArrayList<>();
    for (SectionAnswer one : answer.answers()) {
      LipProfile lip = byName.get(one.result().name());
      answers.add(
          lip == null
              ? one
              : new SectionAnswer(calibrations.applied(one.result(), lip), one.field()));
    }
    return new RankingAnswer(all.ranking(calibrations, byName), answers);
  }

  private Ranking ranking(Calibrations calibrations, Map<String, LipProfile> byName) {
    Ranking r = answer.ranking();
    Ranking.@Nullable Row baseline =
        r.rows().stream()
            .filter(row -> row.profile().equals(r.baseline()))
            .findFirst()
            .orElse(null);
    List<Ranking.Row> rows = new ArrayList<>();
    for (Ranking.Row row : r.rows()) {
      LipProfile lip = byName.get(row.profile());
      List<Ranking.GapRatio> gaps = new ArrayList<>();
      double weighted = 0;
      double weight = 0;
      double spread = 0;
      for (int g = 0; g < row.perGap().size(); g++) {
        Ranking.GapRatio ratio = row.perGap().get(g);
        double[] times = times(row, baseline, ratio.gap());
        gaps.add(new Ranking.GapRatio(ratio.gap(), scaled(ratio.relativeLeak(), times)));
        double share = share(r, ratio.gap()) * ratio.relativeLeak().value();
        weighted += share * times[0];
        spread += share * times[1];
        weight += share;
      }
      double[] mean =
          weight > 0
              ? new double[] {weighted / weight, spread / weight}
              : times(row, baseline, Double.NaN);
      Estimate score = scaled(row.relativeLeak(), mean);
      rows.add(
          new Ranking.Row(
              row.profile(),
              row.rank(),
              row.tiedWith(),
              Placement.of(score),
              row.bestShare(),
              score,
              gaps,
              row.results().stream()
                  .map(one -> lip == null ? one : calibrations.applied(one, lip))
                  .toList()));
    }
    List<Notice> notices = new ArrayList<>(r.notices());
    used.forEach((lip, c) -> notices.add(c.notice(NoticeKind.CALIBRATION_RANKED).about(lip)));
    return new Ranking(
        r.baseline(), r.ground(), r.suction(), ordered(rows), List.of(), List.of(), notices);
  }

  private static double share(Ranking r, double gap) {
    int g = r.gaps().indexOf(gap);
    return g < 0 ? 0 : r.ground().weights().get(g);
  }

  /** Factor of a ratio at a gap and half-width of it, from both calibrations. */
  private double[] times(Ranking.Row row, Ranking.@Nullable Row baseline, double gap) {
    double[] lip = calibrated(row, gap);
    double[] flat =
        baseline == null || baseline.profile().equals(row.profile())
            ? lip
            : calibrated(baseline, gap);
    if (flat == lip) {
      return new double[] {1, 0};
    }
    double times = lip[0] / flat[0];
    return new double[] {times, times * Math.hypot(lip[1], flat[1])};
  }

  /** Calibrated over predicted leak at a gap, and its relative half-width. */
  private double[] calibrated(Ranking.Row row, double gap) {
    Calibration c = used.get(row.profile());
    if (c == null) {
      return new double[] {1, 0};
    }
    for (SectionResult r : row.results()) {
      Estimate d = r.figures().get(Figure.DISCHARGE_COEFFICIENT);
      if ((r.conditions().gap() == gap || Double.isNaN(gap)) && d != null && d.value() > 0) {
        Estimate now = c.of(d, true);
        return new double[] {now.value() / d.value(), now.model() / now.value()};
      }
    }
    return new double[] {c.line().factor(), 0};
  }

  private static Estimate scaled(Estimate ratio, double[] times) {
    return ratio.times(times[0]).with(ratio.value() * times[1]);
  }

  /** Ranks and ties anew: one more than the number of lips that are clearly better. */
  private List<Ranking.Row> ordered(List<Ranking.Row> rows) {
    List<Ranking.Row> sorted = new ArrayList<>(rows);
    sorted.sort(Comparator.comparingDouble(row -> row.relativeLeak().value()));
    List<Ranking.Row> ranked = new ArrayList<>();
    for (Ranking.Row row : sorted) {
      int rank = 1;
      List<String> tied = new ArrayList<>();
      for (Ranking.Row other : sorted) {
        if (other == row) {
          continue;
        }
        if (apart(row, other)) {
          rank += other.relativeLeak().value() < row.relativeLeak().value() ? 1 : 0;
        } else {
          tied.add(other.profile());
        }
      }
      ranked.add(
          new Ranking.Row(
              row.profile(),
              rank,
              tied,
              row.placement(),
              row.bestShare(),
              row.relativeLeak(),
              row.perGap(),
              row.results()));
    }
    ranked.sort(Comparator.comparingInt(Ranking.Row::rank));
    return ranked;
  }

  private boolean apart(Ranking.Row a, Ranking.Row b) {
    if (!used.containsKey(a.profile()) && !used.containsKey(b.profile())) {
      return !a.tiedWith().contains(b.profile());
    }
    return a.relativeLeak().low() > b.relativeLeak().high()
        || b.relativeLeak().low() > a.relativeLeak().high();
  }
}
