package hemline.solver.study;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.List;

/** Solves one lip over a range of gaps or suctions; every point starts cold. */
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
    List<Question> questions = gaps.stream().map(g -> Question.of(base.withGap(g))).toList();
    List<Solved> solved = SolvePool.solve(questions, family, options, cancel, progress);
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
    List<Question> questions =
        suctions.stream().map(s -> Question.of(base.withSuction(s))).toList();
    List<Solved> solved = SolvePool.solve(questions, family, options, cancel, progress);
    return new SweepResult(results(solved), null);
  }

  private static List<SectionResult> results(List<Solved> solved) {
    return solved.stream().map(s -> s.answer().result()).toList();
  }
}
