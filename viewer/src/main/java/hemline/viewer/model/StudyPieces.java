package hemline.viewer.model;

import hemline.shared.result.SectionResult;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RankingStudy;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.SweepStudy;
import hemline.solver.study.Swept;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.StudyQuestion;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** What a study found, before it is known how long it took: one of the three. */
record StudyPieces(
    @Nullable SweepResult sweep,
    @Nullable RelativeSweep relative,
    @Nullable RankingAnswer ranking) {
  /** Solves what a question asks; each answer is told as it comes. */
  static StudyPieces solve(
      StudyQuestion q,
      int threads,
      SectionFamily family,
      Consumer<SectionResult> taker,
      CancelToken token,
      ProgressListener listener) {
    var options = q.options(threads);
    Swept swept = q.swept();
    if (swept == null) {
      if (q.baseline() == null) {
        throw new IllegalArgumentException("a ranking needs a baseline");
      }
      return new StudyPieces(
          null,
          null,
          new RankingStudy(family, taker)
              .rank(
                  q.lips(),
                  q.baseline(),
                  GapDistribution.even(q.values()),
                  q.base(),
                  options,
                  token,
                  listener));
    }
    SweepStudy sweep = new SweepStudy(family, taker);
    return q.baseline() == null
        ? new StudyPieces(
            sweep.over(swept, q.base(), q.values(), options, token, listener), null, null)
        : new StudyPieces(
            null,
            sweep.against(q.baseline(), swept, q.base(), q.values(), options, token, listener),
            null);
  }

  /** The study, whole or as far as it came. */
  KeptStudy study(StudyQuestion question, KeptStudy.Run run) {
    List<SectionResult> all = new ArrayList<>();
    if (ranking != null) {
      ranking.answers().forEach(answer -> all.add(answer.result()));
    }
    if (sweep != null) {
      all.addAll(sweep.points());
    }
    if (relative != null) {
      all.addAll(relative.lip().points());
      all.addAll(relative.baseline().points());
    }
    List<SectionResult> solved = KeptStudy.solved(all);
    return solved.size() < all.size()
        ? KeptStudy.part(question, solved, run)
        : new KeptStudy(
            question,
            sweep,
            relative,
            ranking == null ? null : ranking.ranking(),
            List.of(),
            true,
            run);
  }
}
