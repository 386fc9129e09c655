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
 * @param ranking the whole ranking; null for other studies and for a ranking that was stopped
 * @param sections answers of a ranking that was stopped: those solved by then; else empty
 * @param complete false when the study was stopped before its end
 * @param run of the solver
 */
public record KeptStudy(
    StudyQuestion question,
    @Nullable SweepResult sweep,
    @Nullable RelativeSweep relative,
    @Nullable Ranking ranking,
    List<SectionResult> sections,
    boolean complete,
    Run run) {

  /**
   * A run of the solver.
   *
   * @param seconds wall time
   * @param when instant of the end, ISO 8601
   * @param engine {@link Engine#fingerprint} of the solver
   */
  public record Run(double seconds, String when, String engine) {}

  public KeptStudy {
    sections = List.copyOf(sections);
  }

  /**
   * A study stopped before its end: of a lip over a range the points that it has by then, without a
   * baseline; of a ranking the sections.
   *
   * @param solved answers, in any order
   */
  public static KeptStudy part(StudyQuestion question, List<SectionResult> solved, Run run) {
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
        question, sweep, null, null, swept == null ? solved : List.of(), false, run);
  }

  /** Points of the lip that was swept; null where there are none. */
  @Nullable SweepResult swept() {
    SweepResult points = relative != null ? relative.lip() : sweep;
    return points == null || points.points().isEmpty() ? null : points;
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

  /**
   * False for answers that cannot be those of the question: of other lips, at other values, under
   * other conditions, or of another number.
   */
  boolean answersItsQuestion() {
    int parts = (sweep != null ? 1 : 0) + (relative != null ? 1 : 0) + (ranking != null ? 1 : 0);
    boolean whole =
        question.ranks() ? ranking != null : (question.baseline() != null) == (relative != null);
    if (parts > 1 || (complete && (parts == 0 || !whole))) {
      return false;
    }
    if (relative != null) {
      List<SectionResult> base = relative.baseline().points();
      int points = relative.lip().points().size();
      if (relative.relativeLeak().size() != points || base.size() != points) {
        return false;
      }
      String flat = question.baseline() == null ? "" : question.baseline().name();
      if (!base.stream().allMatch(r -> r.name().equals(flat) && asked(r))) {
        return false;
      }
    }
    List<String> names = new ArrayList<>(question.lips().stream().map(l -> l.name()).toList());
    if (question.ranks() && question.baseline() != null) {
      names.add(question.baseline().name());
    }
    return results().stream().allMatch(r -> names.contains(r.name()) && asked(r));
  }

  /** True for an answer under the conditions of the question. */
  private boolean asked(SectionResult r) {
    Swept swept = question.swept();
    double varied = swept == null ? r.conditions().gap() : swept.of(r);
    boolean speeds =
        (swept == Swept.GROUND_SPEED
                || r.conditions().groundSpeed() == question.held().ground().speed())
            && r.conditions().spanwiseSpeed() == question.held().ground().spanwiseSpeed();
    return question.values().stream().anyMatch(v -> v == varied)
        && (swept == null || swept == Swept.GAP || r.conditions().gap() == question.held().gap())
        && (swept == Swept.SUCTION || r.conditions().suction() == question.held().suction())
        && speeds;
  }
}
