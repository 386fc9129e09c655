package hemline.solver.study;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.List;
import java.util.function.Function;

/**
 * Solves one lip over a range of gaps or suctions, most points from the flow of another.
 *
 * <p>Which point starts from which depends on the swept values alone, see {@link WarmOrder}: any
 * order of the request and any number of threads give the same bits. A repeated value is solved
 * once.
 */
public final class SweepStudy {
  private final SectionFamily family;

  public SweepStudy(SectionFamily family) {
    this.family = family;
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
    List<Solved> solved =
        sweep(gaps, gap -> Question.of(base.withGap(gap)), options, cancel, progress);
    return new SweepResult(results(solved), GapExponent.of(solved, gaps));
  }

  /**
   * Answers over suctions.
   *
   * @param base everything but the suction
   * @param suctions Pa; answered in this order
   */
  public SweepResult overSuctions(
      SealSection base,
      List<Double> suctions,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    List<Solved> solved =
        sweep(suctions, s -> Question.of(base.withSuction(s)), options, cancel, progress);
    return new SweepResult(results(solved), null);
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
            progress);
    return values.stream().map(value -> solved.get(sorted.indexOf(value))).toList();
  }

  private static List<SectionResult> results(List<Solved> solved) {
    return solved.stream().map(s -> s.answer().result()).toList();
  }
}
