package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.problem.Notice;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import java.util.List;
import org.junit.jupiter.api.Test;

final class RankingNoticesTest {
  private static SectionResult result(double gap, SolveStatus status, String... codes) {
    List<Notice> notices =
        List.of(codes).stream().map(code -> new Notice(code, "at " + gap)).toList();
    return new SectionResult(
        "lip",
        new SectionConditions(gap, 600, 0, 0),
        status,
        Regime.TRANSITIONAL,
        "sst",
        SectionFigures.NONE,
        notices,
        List.of());
  }

  private static List<String> texts(RankingNotices notices) {
    return notices.list().stream().map(Notice::text).toList();
  }

  @Test
  void whatManySectionsShareIsToldOnce() {
    RankingNotices notices = new RankingNotices("flat");
    for (String lip : List.of("flat", "teeth")) {
      notices.results(
          lip,
          List.of(
              result(1e-3, SolveStatus.CONVERGED, "regime.transition", "jet.mach"),
              result(2e-3, SolveStatus.CONVERGED, "regime.transition", "jet.mach"),
              result(4e-3, SolveStatus.CONVERGED, "jet.mach", "lip.thin")));
    }
    assertThat(texts(notices)).hasSize(2);
    assertThat(texts(notices).get(0))
        .startsWith("In 4 of 6 sections (gaps 1 mm to 2 mm) the gap Reynolds number");
    assertThat(texts(notices).get(1)).startsWith("In all 6 sections (gaps 1 mm to 4 mm) the jet");
  }

  @Test
  void unfinishedFlowsAreNamedByLip() {
    RankingNotices notices = new RankingNotices("flat");
    notices.results("teeth", List.of(result(1e-3, SolveStatus.UNSTEADY)));
    notices.results(
        "flat", List.of(result(1e-3, SolveStatus.UNSTEADY), result(2e-3, SolveStatus.CANCELLED)));
    assertThat(texts(notices))
        .containsExactly(
            "The study was stopped before flat at 2 mm was solved.",
            "No steady flow was found for flat at 1 mm; teeth at 1 mm.");
  }

  @Test
  void severalPossibleSwapsAreCounted() {
    RankingNotices notices = new RankingNotices("flat");
    Ranking.Crossing swap = new Ranking.Crossing("teeth", "flat", 2.4e-3);
    notices.possibleCrossings(List.of());
    assertThat(texts(notices)).isEmpty();
    notices.possibleCrossings(List.of(swap, swap));
    assertThat(texts(notices))
        .singleElement()
        .satisfies(text -> assertThat(text).startsWith("2 more swaps of places are possible"));
  }
}
