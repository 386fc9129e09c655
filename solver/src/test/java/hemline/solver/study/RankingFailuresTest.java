package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;
import static hemline.solver.study.MadeUpRankings.TWO;
import static hemline.solver.study.MadeUpRankings.codes;
import static hemline.solver.study.MadeUpRankings.leak;
import static hemline.solver.study.MadeUpRankings.lips;
import static hemline.solver.study.MadeUpRankings.rank;
import static hemline.solver.study.MadeUpRankings.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.NoticeKind;
import hemline.shared.result.SolveStatus;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Rankings in which solves fail. */
class RankingFailuresTest {
  @Test
  void oneBrokenLipLeavesTheOthersAlone() {
    Map<String, Double> exact = Map.of("flat", 0.76, "teeth", 0.7, "hook", 0.72);
    MadeUpFamily whole = lips(exact, 0.01, 0.001);
    Ranking without = rank(whole, TWO, List.of(lip("teeth")), 1e-3, 2e-3).ranking();

    MadeUpFamily broken =
        new MadeUpFamily(
            (section, closure, place) -> {
              if (section.profile().name().equals("hook")) {
                throw new IllegalStateException("the pocket is sealed off");
              }
              return leak(exact, 0.01, 0.001).at(section, closure, place);
            });
    RankingAnswer answer = rank(broken, TWO, List.of(lip("hook"), lip("teeth")), 1e-3, 2e-3);
    assertThat(answer.ranking().rows()).isEqualTo(without.rows());
    assertThat(answer.answers()).hasSize(6);
    assertThat(answer.answers().get(0).result().status()).isEqualTo(SolveStatus.FAILED);
    assertThat(answer.answers().get(0).field()).isNull();
    assertThat(answer.answers().get(0).result().notices())
        .containsExactly(NoticeKind.SOLVE_BROKEN.of("the pocket is sealed off"));
    assertThat(codes(answer.ranking())).containsExactly("ranking.left-out");
  }

  @Test
  void aLipThatFailsAtOneGapIsJudgedOnTheOthers() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) ->
                section.profile().name().equals("teeth") && section.gap() > 2.5e-3
                    ? Double.NaN
                    : jet(section, section.profile().name().equals("teeth") ? 0.6 : 0.75));
    RankingAnswer answer = rank(family, TWO, List.of(lip("teeth")), 1e-3, 2e-3, 3e-3);
    Ranking.Row teeth = row(answer, "teeth");
    assertThat(teeth.relativeLeak().value()).isCloseTo(0.8, within(1e-12));
    assertThat(teeth.perGap()).hasSize(2);
    assertThat(teeth.results()).hasSize(3);
    assertThat(teeth.rank()).isEqualTo(1);
    assertThat(answer.ranking().notices())
        .contains(NoticeKind.RANKING_GAPS_MISSING.of("teeth", 3e-3));
  }

  @Test
  void withoutABaselineThereIsNoRow() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) ->
                section.profile().name().equals("flat") ? Double.NaN : jet(section, 0.7));
    Ranking ranking = rank(family, TWO, List.of(lip("teeth")), 1e-3).ranking();
    assertThat(ranking.rows()).isEmpty();
    assertThat(codes(ranking)).contains("ranking.left-out");
  }

  @Test
  void leaksInOppositeDirectionsAreNotCompared() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) ->
                jet(section, section.profile().name().equals("flat") ? 0.7 : -0.1));
    Ranking ranking = rank(family, TWO, List.of(lip("teeth")), 1e-3).ranking();
    assertThat(ranking.rows()).extracting(Ranking.Row::profile).containsExactly("flat");
    assertThat(codes(ranking)).containsExactly("ranking.left-out");
  }
}
