package hemline.solver.study;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Solves one lip over a range of gaps, suctions or ground speeds, most points from the flow of
 * another.
 *
 * <p>Which point starts from which depends on the swept values alone, see {@link WarmOrder}: any
 * order of the request and any number of threads give the same bits. A repeated value is solved
 * once.
 */
public final class SweepStudy {
  private final SectionFamily family;
  private final Consumer<SectionResult> taker;

  public SweepStudy(SectionFamily family) {
    this(family, answer -> {});
  }

  /**
   * A study that tells its answers one by one.
   *
   * @param taker is given each answer as soon as it is there, on the solving threads, in no order
   */
  public SweepStudy(SectionFamily family, Consumer<SectionResult> taker) {
    this.family = family;
    this.taker = taker;
  }

  /**
   * Answers over gaps, with the gap exponent.
   *
   * @param base everything but the gap
   * @param gaps m, positive; answered in this order
   */
  public SweepResult overGaps(
      SealSection base,
      List<Double> gaps,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    return over(Swept.GAP, base, gaps, options, cancel, progress);
  }

  /**
   * Answers over values of one condition, with the gap exponent when that is the gap.
   *
   * @param base everything but that condition
   * @param values SI; answered in this order
   */
  public SweepResult over(
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    return result(
        swept,
        values,
        sweep(values, v -> Question.of(swept.at(base, v)), options, cancel, progress));
  }

  /**
   * The sweep of a lip and that of a baseline under the same conditions, point by point.
   *
   * <p>The lip's answers are those of {@link #over}, bit for bit.
   *
   * @param base everything but the swept condition
   * @param values SI; answered in this order
   */
  public RelativeSweep against(
      LipProfile baseline,
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    List<Double> sorted = values.stream().distinct().sorted().toList();
    int n = sorted.size();
    List<Question> questions = new ArrayList<>();
    int[] parent = new int[2 * n];
    int[] order = WarmOrder.of(n);
    for (int lip = 0; lip < 2; lip++) {
      SealSection section = lip == 0 ? base : base.withProfile(baseline);
      for (int k = 0; k < n; k++) {
        questions.add(Question.of(swept.at(section, sorted.get(k))));
        parent[lip * n + k] = order[k] < 0 ? -1 : lip * n + order[k];
      }
    }
    List<Solved> solved =
        SolvePool.solve(questions, parent, family, options, cancel, progress, false, this::take);
    List<Solved> lip = values.stream().map(v -> solved.get(sorted.indexOf(v))).toList();
    List<Solved> flat = values.stream().map(v -> solved.get(n + sorted.indexOf(v))).toList();
    List<@Nullable Estimate> ratios = new ArrayList<>();
    for (int k = 0; k < lip.size(); k++) {
      ratios.add(LeakRatio.of(lip.get(k), flat.get(k)));
    }
    return new RelativeSweep(result(swept, values, lip), result(swept, values, flat), ratios);
  }

  private static SweepResult result(Swept swept, List<Double> values, List<Solved> solved) {
    return new SweepResult(
        results(solved), swept == Swept.GAP ? GapExponent.of(solved, values) : null);
  }

  private List<Solved> sweep(
      List<Double> values,
      Function<Double, Question> question,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    List<Double> sorted = values.stream().distinct().sorted().toList();
    List<Solved> solved =
        SolvePool.solve(
            sorted.stream().map(question).toList(),
            WarmOrder.of(sorted.size()),
            family,
            options,
            cancel,
            progress,
            false,
            this::take);
    return values.stream().map(value -> solved.get(sorted.indexOf(value))).toList();
  }

  private void take(int number, Solved solved) {
    taker.accept(solved.answer().result());
  }

  private static List<SectionResult> results(List<Solved> solved) {
    return solved.stream().map(s -> s.answer().result()).toList();
  }
}
