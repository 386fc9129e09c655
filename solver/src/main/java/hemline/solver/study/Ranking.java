package hemline.solver.study;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import java.util.Comparator;
import java.util.List;

/**
 * Candidates in order of leak against a baseline lip.
 *
 * @param baseline name of the baseline
 * @param ground gaps solved, and how much of the seal lies over each
 * @param suction Pa
 * @param rows best (least leak) first
 * @param crossings gaps where two lips swap places, beyond the bands on both sides
 * @param possibleCrossings gaps where two lips may swap places, but one side or both are within the
 *     bands
 * @param notices what the reader must know
 */
public record Ranking(
    String baseline,
    GapDistribution ground,
    double suction,
    List<Row> rows,
    List<Crossing> crossings,
    List<Crossing> possibleCrossings,
    List<Notice> notices) {

  /**
   * One candidate.
   *
   * @param profile name
   * @param rank 1 for the least leak; lips that tie share the better rank
   * @param tiedWith names of lips whose band of the leak ratio to this one includes 1
   * @param placement what the evidence says of it beside the baseline
   * @param bestShare share of the ground over which this lip leaks least of all, by best values, 0
   *     to 1
   * @param relativeLeak leak over the baseline's leak, both averaged over gaps and speeds
   * @param perGap the same at each gap
   * @param results gap by gap in the order of {@link Ranking#gaps}, speed by speed
   */
  public record Row(
      String profile,
      int rank,
      List<String> tiedWith,
      Placement placement,
      double bestShare,
      Estimate relativeLeak,
      List<GapRatio> perGap,
      List<SectionResult> results) {
    public Row {
      tiedWith = List.copyOf(tiedWith);
      perGap = List.copyOf(perGap);
      results = List.copyOf(results);
    }
  }

  /** Leak over the baseline's at one gap, m. */
  public record GapRatio(double gap, Estimate relativeLeak) {}

  /**
   * Two lips that swap places.
   *
   * @param first the lip that leaks less at smaller gaps
   * @param second the lip that leaks less at wider gaps
   * @param gap m
   */
  public record Crossing(String first, String second, double gap) {}

  public Ranking {
    rows = List.copyOf(rows);
    crossings = List.copyOf(crossings);
    possibleCrossings = List.copyOf(possibleCrossings);
    notices = List.copyOf(notices);
  }

  /** Gaps solved, m, increasing. */
  public List<Double> gaps() {
    return ground.gaps();
  }

  /** Rows of one group, least leak first. */
  public List<Row> rows(Placement.Group group) {
    return rows.stream()
        .filter(row -> row.placement().group() == group)
        .sorted(Comparator.comparingDouble(row -> row.relativeLeak().value()))
        .toList();
  }
}
