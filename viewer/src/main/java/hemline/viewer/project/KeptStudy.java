package hemline.viewer.project;

import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.Ranking;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A study with what was found, whole or stopped before its end.
 *
 * @param question what was asked
 * @param sweep a lip alone; null for other studies
 * @param relative a lip and its baseline; null for other studies
 * @param ranking whole standings; null for other studies and for standings that were stopped
 * @param sections answers of standings that were stopped: those solved by then; else empty
 * @param complete false when the study was stopped before its end
 * @param seconds wall time
 * @param when instant of the end, ISO 8601
 * @param engine {@link Engine#fingerprint} of the solver
 */
public record KeptStudy(
    StudyQuestion question,
    @Nullable SweepResult sweep,
    @Nullable RelativeSweep relative,
    @Nullable Ranking ranking,
    List<SectionResult> sections,
    boolean complete,
    double seconds,
    String when,
    String engine) {
  public KeptStudy {
    sections = List.copyOf(sections);
  }

  /**
   * A study stopped before its end: of a lip over a range the points that it has by then, without a
   * baseline; of standings the sections.
   *
   * @param solved answers, in any order
   */
  public static KeptStudy part(
      StudyQuestion question,
      List<SectionResult> solved,
      double seconds,
      String when,
      String engine) {
    Swept swept = question.swept();
    SweepResult sweep = null;
    if (swept != null) {
      String lip = question.lips().get(0).name();
      List<SectionResult> points = new ArrayList<>();
      for (double value : question.values()) {
        solved.stream()
            .filter(r -> r.name().equals(lip) && swept.of(r) == value)
            .findFirst()
            .ifPresent(points::add);
      }
      sweep = new SweepResult(points, null);
    }
    return new KeptStudy(
        question,
        sweep,
        null,
        null,
        swept == null ? solved : List.of(),
        false,
        seconds,
        when,
        engine);
  }

  /** All answers that the study has. */
  public List<SectionResult> results() {
    if (ranking != null) {
      return ranking.rows().stream().flatMap(row -> row.results().stream()).toList();
    }
    if (relative != null) {
      return relative.lip().points();
    }
    return sweep != null ? sweep.points() : sections;
  }

  /** Answers of a list that were not stopped. */
  public static List<SectionResult> solved(List<SectionResult> all) {
    return all.stream().filter(r -> r.status() != SolveStatus.CANCELLED).toList();
  }

  /** Number of sections that the whole study has. */
  public int asked() {
    int lips = question.lips().size();
    boolean extra = question.baseline() != null && !question.lips().contains(question.baseline());
    return (lips + (extra ? 1 : 0)) * question.values().size();
  }
}
