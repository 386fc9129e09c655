package hemline.viewer.project;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.page.RankingPage;
import hemline.viewer.page.SweepPage;

/** What a study says. */
public final class StudyPage {
  private StudyPage() {}

  /** The page: what the commands show of it, or how far a stopped study came. */
  public static Page of(KeptStudy study) {
    StudyQuestion question = study.question();
    Page page = new Page(question.title()).quiet(question.conditions());
    if (!study.complete()) {
      page.text(
          "Stopped before its end: %d of %s Go on to solve the rest."
              .formatted(
                  study.results().size(),
                  question.ranks()
                      ? study.asked() + " sections were solved, too few for a ranking."
                      : question.values().size() + " points were solved."),
          Tone.FINDING);
    }
    Swept swept = question.swept();
    SweepResult sweep = study.swept();
    if (study.ranking() != null) {
      return RankingPage.add(page, study.ranking());
    }
    if (swept != null && sweep != null) {
      return SweepPage.add(page, sweep, study.relative(), swept);
    }
    study.results().forEach(result -> page.plain(line(result)));
    page.toKnow(
        SweepPage.gathered(
            study.results(), p -> p.name() + " at " + Wording.length(p.conditions().gap())));
    return page.quiet(Cautions.CODES);
  }

  private static String line(SectionResult result) {
    Estimate leak = result.figures().get(Figure.LEAK_FLOW);
    return "%s, gap %s: %s"
        .formatted(
            result.name(),
            Wording.length(result.conditions().gap()),
            leak == null ? "no usable flow" : Digits.withBand(leak, 1000) + " L/s per m");
  }
}
