package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.SIZES;
import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;
import static hemline.solver.study.MadeUpRankings.FLAT;
import static hemline.solver.study.MadeUpRankings.TWO;
import static hemline.solver.study.MadeUpRankings.lips;
import static hemline.solver.study.MadeUpRankings.rank;
import static hemline.solver.study.MadeUpRankings.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.ModelResidual;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the ratio of two leaks is for, and what it is worth under several flow models. */
class RankingStudyTest {
  @Test
  void commonGridErrorsCancelInTheRatio() {
    MadeUpFamily family = lips(Map.of("flat", 0.76, "teeth", 0.75), -0.03, 0);
    RankingAnswer answer = rank(family, TWO, List.of(lip("teeth"), FLAT), 2e-3);

    Ranking.Row teeth = row(answer, "teeth");
    Ranking.Row flat = row(answer, "flat");
    assertThat(teeth.relativeLeak().value()).isCloseTo(0.75 / 0.76, within(1e-12));
    assertThat(teeth.relativeLeak().high()).isLessThan(1);
    assertThat(teeth.rank()).isEqualTo(1);
    assertThat(flat.rank()).isEqualTo(2);
    assertThat(flat.relativeLeak()).isEqualTo(Estimate.exact(1));
    assertThat(teeth.tiedWith()).isEmpty();
    // the bands of the two leaks alone overlap widely
    Estimate leakTeeth = teeth.results().get(0).figures().get(Figure.LEAK_FLOW);
    Estimate leakFlat = flat.results().get(0).figures().get(Figure.LEAK_FLOW);
    assertThat(leakTeeth.high()).isGreaterThan(leakFlat.value());
  }

  @Test
  void lipsWithinTheBandTie() {
    MadeUpFamily family = lips(Map.of("flat", 0.76, "teeth", 0.755), 0, 0.01);
    Ranking ranking = rank(family, TWO, List.of(lip("teeth")), 2e-3).ranking();
    assertThat(ranking.rows()).hasSize(2);
    assertThat(ranking.rows()).allSatisfy(r -> assertThat(r.rank()).isEqualTo(1));
    assertThat(ranking.rows().get(0).tiedWith()).hasSize(1);
    double first = ranking.rows().get(0).relativeLeak().value();
    assertThat(first).isLessThanOrEqualTo(ranking.rows().get(1).relativeLeak().value());
  }

  @Test
  void weightsOfTheGapsCountInTheScore() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) ->
                jet(section, section.profile().name().equals("teeth") ? 0.5 : 0.7)
                    * (section.profile().name().equals("teeth") && section.gap() > 2e-3 ? 1.6 : 1));
    RankingAnswer answer =
        new RankingStudy(family)
            .rank(
                List.of(lip("teeth")),
                FLAT,
                GapDistribution.of(List.of(1e-3, 3e-3), List.of(3.0, 1.0)),
                section(FLAT),
                TWO,
                new CancelToken(),
                ProgressListener.NONE);
    Ranking.Row teeth = row(answer, "teeth");
    assertThat(teeth.relativeLeak().value())
        .isCloseTo((0.5 * 1 * 3 + 0.8 * 3) / (0.7 * 3 + 0.7 * 3), within(1e-12));
    // teeth leak least at 1 mm, the flat lip at 3 mm
    assertThat(teeth.bestShare()).isEqualTo(0.75);
    assertThat(row(answer, "flat").bestShare()).isEqualTo(0.25);
    assertThat(answer.ranking().rows(Placement.Group.LESS))
        .extracting(Ranking.Row::profile)
        .containsExactly("teeth");
    assertThat(answer.ranking().rows(Placement.Group.SAME))
        .extracting(Ranking.Row::profile)
        .containsExactly("flat");
  }

  @Test
  void theScoreIsTheRatioOfSumsOverTheGaps() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) ->
                jet(section, section.profile().name().equals("teeth") ? 0.5 : 0.7)
                    * (section.profile().name().equals("teeth") && section.gap() > 2e-3 ? 1.6 : 1));
    RankingAnswer answer = rank(family, TWO, List.of(lip("teeth")), 3e-3, 1e-3, 3e-3);
    assertThat(answer.ranking().gaps()).containsExactly(1e-3, 3e-3);
    Ranking.Row teeth = row(answer, "teeth");
    assertThat(teeth.relativeLeak().value())
        .isCloseTo((0.5 * 1 + 0.8 * 3) / (0.7 * 4), within(1e-12));
    assertThat(teeth.perGap()).extracting(Ranking.GapRatio::gap).containsExactly(1e-3, 3e-3);
    assertThat(teeth.perGap().get(0).relativeLeak().value()).isCloseTo(0.5 / 0.7, within(1e-12));
    assertThat(teeth.results()).hasSize(2);
    assertThat(answer.answers()).hasSize(4);
    assertThat(answer.answers().get(0).result().name()).isEqualTo("teeth");
    assertThat(answer.answers().get(1).result().conditions().gap()).isEqualTo(3e-3);
    assertThat(answer.answers().get(3).result().name()).isEqualTo("flat");
    assertThat(answer.answers()).allSatisfy(a -> assertThat(a.field()).isNotNull());
  }

  @Test
  void modelsAreComparedLikeWithLike() {
    // each lip leaks 10 % less in the second model, so the ratio has hardly any spread between them
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              boolean flat = section.profile().name().equals("flat");
              double model = closure == Closure.SA ? (flat ? 0.9 : 0.905) : 1;
              return jet(section, model * (flat ? 0.75 : 0.7));
            });
    RunOptions spread = new RunOptions(MeshLevel.MEDIUM, Closure.SST, true, 2);
    Ranking.Row teeth = row(rank(family, spread, List.of(lip("teeth")), 3e-3), "teeth");
    Estimate ratio = teeth.relativeLeak();
    // what is left is the residual that ratios are known to have
    double residual = ModelResidual.ratio(Closure.SST) * ratio.value();
    assertThat(ratio.modelHigh()).isCloseTo(residual, within(1e-12));
    assertThat(ratio.modelLow()).isCloseTo(residual, within(1e-12));
    assertThat(teeth.results().get(0).figures().get(Figure.LEAK_FLOW).modelLow())
        .isGreaterThan(0.0);
    assertThat(family.solves).contains("teeth sa", "flat sa").hasSize(4);
  }

  @Test
  void lipsSolvedUnderDifferentModelsAreHeldTogetherByTheSpread() {
    // AUTO takes one lip as laminar and the other as turbulent; the models differ by 4 %
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              double model = closure == Closure.LAMINAR ? 0.96 : 1;
              double own = section.profile().name().equals("flat") ? 0.75 : 0.76;
              return jet(section, model * own * (1 + 0.01 * SIZES[place]));
            });
    family.auto =
        section -> section.profile().name().equals("flat") ? Closure.SST : Closure.LAMINAR;
    RunOptions auto = new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, false, 2);
    Ranking.Row teeth = row(rank(family, auto, List.of(lip("teeth")), 0.8e-3), "teeth");
    double truth = 0.76 / 0.75;
    assertThat(teeth.relativeLeak().value()).isCloseTo(0.96 * truth, within(1e-9));
    assertThat(teeth.relativeLeak().high()).isGreaterThanOrEqualTo(truth - 1e-9);
    assertThat(teeth.relativeLeak().low()).isLessThanOrEqualTo(0.96 * truth);
    assertThat(teeth.tiedWith()).containsExactly("flat");
  }

  @Test
  void namesWhatIsWrongWithTheQuestion() {
    LipProfile other =
        new LipProfile("flat", "flat", "", new Outline(FLAT.outline().vertices()), 1, List.of());
    assertThat(RankingStudy.check(List.of(lip("a"), lip("b")), FLAT, List.of(1e-3))).isEmpty();
    assertThat(RankingStudy.check(List.of(lip("a"), lip("a")), FLAT, List.of(1e-3)))
        .extracting(Problem::place)
        .containsExactly("a");
    assertThat(RankingStudy.check(List.of(other), FLAT, List.of(1e-3)))
        .extracting(Problem::code)
        .containsExactly("ranking.names");
    assertThat(RankingStudy.check(List.of(lip("a")), FLAT, List.of())).hasSize(1);
    assertThat(RankingStudy.check(List.of(lip("a")), FLAT, List.of(-1e-3, Double.NaN))).hasSize(2);
    MadeUpFamily family = lips(Map.of("flat", 0.7), 0, 0);
    assertThatThrownBy(() -> rank(family, TWO, List.of(), -1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("positive");
    assertThat(rank(family, TWO, List.of(), 1e-3).ranking().rows()).hasSize(1);
  }
}
