package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import java.util.List;
import org.junit.jupiter.api.Test;

final class RankingNoticesTest {
  private static SectionResult result(double gap, SolveStatus status, Notice... notices) {
    return new SectionResult(
        "lip",
        new SectionConditions(gap, 600, 0, 0),
        status,
        Regime.TRANSITIONAL,
        "sst",
        SectionFigures.NONE,
        List.of(notices),
        List.of());
  }

  @Test
  void whatManySectionsShareIsToldOnce() {
    RankingNotices notices = new RankingNotices("flat");
    Notice band = NoticeKind.REGIME_TRANSITION.of(1000, 500, 3000);
    Notice spanned = NoticeKind.REGIME_SPANNED.of(1000, 500, 3000);
    Notice fast = NoticeKind.JET_MACH.of(0.35, 0.04);
    Notice thin = NoticeKind.LIP_THIN.of("", 1, 0, 0, 8e-4);
    for (String lip : List.of("flat", "teeth")) {
      notices.results(
          lip,
          List.of(
              result(1e-3, SolveStatus.CONVERGED, band, fast),
              result(2e-3, SolveStatus.CONVERGED, spanned, fast),
              result(4e-3, SolveStatus.CONVERGED, fast, thin)));
    }
    assertThat(notices.list())
        .containsExactly(
            NoticeKind.MANY_TRANSITION.of(4, 6, 1e-3, 2e-3),
            NoticeKind.MANY_MACH.of(6, 6, 1e-3, 4e-3));
  }

  @Test
  void unfinishedFlowsAreNamedByLip() {
    RankingNotices notices = new RankingNotices("flat");
    notices.results("teeth", List.of(result(1e-3, SolveStatus.UNSTEADY)));
    notices.results(
        "flat", List.of(result(1e-3, SolveStatus.UNSTEADY), result(2e-3, SolveStatus.CANCELLED)));
    assertThat(notices.list())
        .containsExactly(
            NoticeKind.RANKING_CANCELLED.of("flat", 2e-3),
            NoticeKind.RANKING_UNSTEADY.of(List.of("flat", "teeth"), 1e-3, 1e-3));
  }

  @Test
  void severalPossibleSwapsAreCounted() {
    RankingNotices notices = new RankingNotices("flat");
    Ranking.Crossing swap = new Ranking.Crossing("teeth", "flat", 2.4e-3);
    notices.possibleCrossings(List.of());
    assertThat(notices.list()).isEmpty();
    notices.possibleCrossings(List.of(swap, swap));
    assertThat(notices.list()).containsExactly(NoticeKind.RANKING_SWAPS.of(2));
  }
}
