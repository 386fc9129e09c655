package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.SIZES;
import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;
import static hemline.solver.study.MadeUpRankings.TWO;
import static hemline.solver.study.MadeUpRankings.codes;
import static hemline.solver.study.MadeUpRankings.rank;
import static hemline.solver.study.MadeUpRankings.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.NoticeKind;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Gaps at which two lips swap places. */
class RankingCrossingsTest {
  private static MadeUpFamily crossingLips(double gapOfSwap, double ownError) {
    return new MadeUpFamily(
        (section, closure, place) -> {
          boolean flat = section.profile().name().equals("flat");
          double error = flat ? 0 : ownError * SIZES[place];
          double cd = flat ? 0.75 : 0.75 * Math.pow(section.gap() / gapOfSwap, 0.05) * (1 + error);
          return jet(section, cd);
        });
  }

  @Test
  void namesTheGapWhereTwoLipsSwapPlaces() {
    for (double[] gaps : new double[][] {{1e-3, 4e-3}, {1e-3, 2e-3, 3e-3, 4e-3, 5e-3, 6e-3}}) {
      Ranking ranking = rank(crossingLips(2.6e-3, 0), TWO, List.of(lip("teeth")), gaps).ranking();
      assertThat(ranking.crossings()).hasSize(1);
      Ranking.Crossing crossing = ranking.crossings().get(0);
      assertThat(crossing.first()).isEqualTo("teeth");
      assertThat(crossing.second()).isEqualTo("flat");
      assertThat(crossing.gap()).isCloseTo(2.6e-3, within(1e-8));
      assertThat(codes(ranking)).doesNotContain("ranking.crossings");
    }
  }

  @Test
  void aSwapInsideTheBandsIsOnlyNoticed() {
    // clear at 1 mm, inside the band at 3 mm
    Ranking ranking =
        rank(crossingLips(2.8e-3, 5e-4), TWO, List.of(lip("teeth")), 1e-3, 3e-3).ranking();
    assertThat(ranking.crossings()).isEmpty();
    assertThat(ranking.notices())
        .anySatisfy(
            notice -> {
              assertThat(notice.kind()).isEqualTo(NoticeKind.RANKING_SWAP);
              assertThat(notice.names()).containsExactly("teeth", "flat");
              assertThat(notice.numbers().get(0)).isCloseTo(2.8e-3, within(0.1e-3));
            });
    assertThat(ranking.possibleCrossings())
        .singleElement()
        .satisfies(
            swap -> {
              assertThat(swap.first()).isEqualTo("teeth");
              assertThat(swap.second()).isEqualTo("flat");
              assertThat(swap.gap()).isCloseTo(2.8e-3, within(0.1e-3));
            });
    // ties on both sides say nothing at all
    Ranking tie =
        rank(crossingLips(2.5e-3, 0.02), TWO, List.of(lip("teeth")), 2.4e-3, 2.6e-3).ranking();
    assertThat(tie.crossings()).isEmpty();
    assertThat(codes(tie)).isEmpty();
  }

  @Test
  void aSwapAcrossATieIsCertain() {
    RankingAnswer answer =
        rank(crossingLips(2.0e-3, 0.003), TWO, List.of(lip("teeth")), 1e-3, 2e-3, 4e-3);
    Ranking ranking = answer.ranking();
    assertThat(row(answer, "teeth").perGap().get(1).relativeLeak())
        .satisfies(r -> assertThat(r.low() < 1 && r.high() > 1).isTrue());
    assertThat(ranking.crossings()).hasSize(1);
    assertThat(ranking.crossings().get(0).gap()).isBetween(1.6e-3, 2.1e-3);
    assertThat(codes(ranking)).doesNotContain("ranking.crossings");
  }
}
