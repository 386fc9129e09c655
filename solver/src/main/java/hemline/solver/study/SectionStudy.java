package hemline.solver.study;

import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.List;

/** Solves single sections. */
public final class SectionStudy {
  private final SectionFamily family;

  public SectionStudy(SectionFamily family) {
    this.family = family;
  }

  /**
   * Solves a section; a duct's own flow model counts where the options leave it open. Never throws
   * for a reason that lies in the section: the answer then has the status FAILED and says why.
   */
  public SectionAnswer run(
      Section section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    return solve(section, options, cancel, progress).answer();
  }

  /** Solves a section as {@link #run} does, so that its leak can be compared with others. */
  public ComparableAnswer solve(
      Section section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    return new ComparableAnswer(
        SolvePool.solve(
                List.of(Question.of(section)), family, options, cancel, progress, (i, solved) -> {})
            .get(0));
  }

  /** Solves a lip and the plain flat lip as wide as it, under the same conditions. */
  public RelativeAnswer relativeLeak(
      SealSection section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    SealSection flat = section.withProfile(PlainFlat.asWideAs(section.profile()));
    List<Solved> solved =
        SolvePool.solve(
            List.of(Question.of(section), Question.of(flat)),
            family,
            options,
            cancel,
            progress,
            (i, answer) -> {});
    return new RelativeAnswer(
        solved.get(0).answer(), solved.get(1).answer(), LeakRatio.of(solved.get(0), solved.get(1)));
  }
}
