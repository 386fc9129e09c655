package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.SIZES;
import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.problem.Notice;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.ModelResidual;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RankingStudyTest {
  private static final long SEED = Long.getLong("hemline.seed", 20_260_102L);
  private static final LipProfile FLAT = lip("flat");
  private static final RunOptions TWO = new RunOptions(MeshLevel.MEDIUM, Closure.SST, false, 2);

  private static RankingAnswer rank(
      MadeUpFamily family, RunOptions options, List<LipProfile> candidates, double... gaps) {
    return new RankingStudy(family)
        .rank(
            candidates,
            FLAT,
            GapDistribution.even(DoubleStream.of(gaps).boxed().toList()),
            section(FLAT),
            options,
            new CancelToken(),
            ProgressListener.NONE);
  }

  private static Ranking.Row row(RankingAnswer answer, String name) {
    return answer.ranking().rows().stream()
        .filter(r -> r.profile().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** Codes of what is told of the ranking itself, without what sections share. */
  private static List<String> codes(Ranking ranking) {
    return ranking.notices().stream()
        .map(Notice::code)
        .filter(code -> code.startsWith("ranking."))
        .toList();
  }

  /** Coefficient of a lip on a grid: exact value times 1 + common and own error. */
  private static MadeUpFamily.Leak leak(Map<String, Double> exact, double common, double own) {
    return (section, closure, place) -> {
      double cd = Objects.requireNonNull(exact.get(section.profile().name()));
      double sign = section.profile().name().hashCode() % 2 == 0 ? 1 : -1;
      double error = common * SIZES[place] + sign * own * SIZES[place];
      return jet(section, cd * (1 + error));
    };
  }

  private static MadeUpFamily lips(Map<String, Double> exact, double common, double own) {
    return new MadeUpFamily(leak(exact, common, own));
  }

  // ---- what the ratio is for

  @Test
  void commonGridErrorsCancelInTheRatio() {
    MadeUpFamily family = lips(Map.of("flat", 0.76, "teeth", 0.745), -0.03, 0);
    RankingAnswer answer = rank(family, TWO, List.of(lip("teeth"), FLAT), 2e-3);

    Ranking.Row teeth = row(answer, "teeth");
    Ranking.Row flat = row(answer, "flat");
    assertThat(teeth.relativeLeak().value()).isCloseTo(0.745 / 0.76, within(1e-12));
    assertThat(teeth.relativeLeak().high()).isLessThan(0.99);
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
    assertThat(answer.answers().get(1).result().gap()).isEqualTo(3e-3);
    assertThat(answer.answers().get(3).result().name()).isEqualTo("flat");
    assertThat(answer.answers()).allSatisfy(a -> assertThat(a.field()).isNotNull());
  }

  // ---- properties

  private record Setup(List<LipProfile> candidates, MadeUpFamily family, double[] gaps) {}

  /** Lips with random leak, gap dependence and grid errors, some equal, some that fail. */
  private static Setup setup(SplittableRandom random, MadeUpFamily.Before before) {
    int lips = 2 + random.nextInt(6);
    double[] gaps = new double[1 + random.nextInt(4)];
    for (int g = 0; g < gaps.length; g++) {
      gaps[g] = 1e-3 * (g + 1);
    }
    List<LipProfile> candidates = new ArrayList<>();
    Map<String, double[]> constants = new HashMap<>();
    for (int i = 0; i < lips; i++) {
      String name = "lip" + i;
      candidates.add(lip(name));
      constants.put(
          name,
          new double[] {
            0.7 + 0.02 * random.nextInt(4),
            0.1 * (random.nextDouble() - 0.5),
            0.02 * (random.nextDouble() - 0.5),
            random.nextInt(8) == 0 ? 1 : 0
          });
    }
    constants.put("flat", new double[] {0.73, 0, 0.01, 0});
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              double[] c = Objects.requireNonNull(constants.get(section.profile().name()));
              if (c[3] == 1 && section.gap() > 1.5e-3 && place > 0) {
                return Double.NaN;
              }
              double bend = 1 + c[1] * Math.log(section.gap() / 2e-3);
              return jet(section, c[0] * bend * (1 + c[2] * Math.pow(SIZES[place], 1.3)));
            },
            before);
    return new Setup(candidates, family, gaps);
  }

  @Test
  void ranksCountTheClearlyBetterLips() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int n = 0; n < 150; n++) {
      Setup s = setup(random, (section, closure, cancel) -> {});
      Ranking ranking = rank(s.family(), TWO, s.candidates(), s.gaps()).ranking();
      List<Ranking.Row> rows = ranking.rows();
      assertThat(rows).as("seed %d, case %d", SEED, n).hasSize(s.candidates().size() + 1);
      for (int i = 0; i < rows.size(); i++) {
        Ranking.Row row = rows.get(i);
        long better =
            rows.stream()
                .filter(other -> other != row)
                .filter(other -> !row.tiedWith().contains(other.profile()))
                .filter(other -> other.relativeLeak().value() < row.relativeLeak().value())
                .count();
        assertThat(row.rank()).as("seed %d, case %d", SEED, n).isEqualTo(1 + (int) better);
        for (String tied : row.tiedWith()) {
          Ranking.Row other =
              rows.stream().filter(r -> r.profile().equals(tied)).findFirst().orElseThrow();
          assertThat(other.tiedWith()).as("seed %d, case %d", SEED, n).contains(row.profile());
        }
        if (i > 0) {
          Ranking.Row above = rows.get(i - 1);
          assertThat(above.rank()).isLessThanOrEqualTo(row.rank());
          if (above.rank() == row.rank()) {
            assertThat(above.relativeLeak().value())
                .isLessThanOrEqualTo(row.relativeLeak().value());
          }
        }
        boolean tiesBaseline = row.tiedWith().contains("flat");
        boolean bandHoldsOne = row.relativeLeak().low() <= 1 && row.relativeLeak().high() >= 1;
        if (!row.profile().equals("flat")) {
          assertThat(tiesBaseline).as("seed %d, case %d", SEED, n).isEqualTo(bandHoldsOne);
        }
      }
    }
  }

  @Test
  void theOrderOfTheQuestionDoesNotMatter() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int n = 0; n < 40; n++) {
      Setup s = setup(random, (section, closure, cancel) -> {});
      Ranking ranking = rank(s.family(), TWO, s.candidates(), s.gaps()).ranking();
      List<LipProfile> shuffled = new ArrayList<>(s.candidates());
      shuffled.add(FLAT);
      for (int i = shuffled.size() - 1; i > 0; i--) {
        Collections.swap(shuffled, i, random.nextInt(i + 1));
      }
      double[] reversed =
          IntStream.range(0, s.gaps().length)
              .mapToDouble(i -> s.gaps()[s.gaps().length - 1 - i])
              .toArray();
      Ranking again = rank(s.family(), TWO, shuffled, reversed).ranking();
      assertThat(again.rows()).as("seed %d, case %d", SEED, n).isEqualTo(ranking.rows());
      assertThat(again.crossings()).isEqualTo(ranking.crossings());
    }
  }

  @Test
  void theNumberOfThreadsDoesNotMatter() {
    for (int n = 0; n < 8; n++) {
      List<Ranking> rankings = new ArrayList<>();
      for (int threads : new int[] {1, 2, 5}) {
        Setup s =
            setup(
                new SplittableRandom(SEED + n),
                (section, closure, cancel) ->
                    LockSupport.parkNanos(
                        100_000L * (Math.abs(section.profile().name().hashCode()) % 7)));
        RunOptions options = new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, true, threads);
        rankings.add(rank(s.family(), options, s.candidates(), s.gaps()).ranking());
        assertThat(s.family().threads).hasSizeLessThanOrEqualTo(threads);
        assertThat(s.family().threads).allMatch(name -> name.matches("hemline-solve-[1-5]"));
      }
      assertThat(rankings.get(1)).as("seed %d", SEED + n).isEqualTo(rankings.get(0));
      assertThat(rankings.get(2)).as("seed %d", SEED + n).isEqualTo(rankings.get(0));
    }
  }

  @Test
  void clearOrdersAreTrue() {
    SplittableRandom random = new SplittableRandom(SEED);
    int clear = 0;
    int wrong = 0;
    int pairs = 600;
    for (int n = 0; n < pairs; n++) {
      double truth = 1 + 0.06 * (random.nextDouble() - 0.5);
      double[] error = {0.02 * random.nextDouble(), 0.01 * (random.nextDouble() - 0.5)};
      double order = 1 + random.nextDouble();
      double[] scatter = new double[3];
      for (int k = 0; k < 3; k++) {
        scatter[k] = 0.001 * (random.nextDouble() - 0.5);
      }
      MadeUpFamily family =
          new MadeUpFamily(
              (section, closure, place) -> {
                boolean flat = section.profile().name().equals("flat");
                double own = flat ? 0 : error[1] * Math.pow(SIZES[place], order) + scatter[place];
                double common = error[0] * SIZES[place];
                return jet(section, 0.75 * (flat ? 1 : truth) * (1 + common + own));
              });
      Ranking.Row row = row(rank(family, TWO, List.of(lip("teeth")), 2e-3), "teeth");
      if (row.tiedWith().isEmpty()) {
        clear++;
        wrong += (row.rank() == 1) == (truth < 1) ? 0 : 1;
      }
    }
    assertThat(clear).as("seed %d", SEED).isGreaterThan(pairs / 3);
    assertThat(wrong).as("seed %d, of %d", SEED, clear).isLessThanOrEqualTo(clear / 50);
  }

  // ---- crossings

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
        rank(crossingLips(2.8e-3, 0.02), TWO, List.of(lip("teeth")), 1e-3, 3e-3).ranking();
    assertThat(ranking.crossings()).isEmpty();
    assertThat(ranking.notices())
        .anySatisfy(
            notice -> {
              assertThat(notice.code()).isEqualTo("ranking.crossings");
              assertThat(notice.text()).contains("teeth and flat may swap places near 2.8 mm");
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

  // ---- failure

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
        .anySatisfy(n -> assertThat(n.text()).contains("the pocket is sealed off"));
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
        .anySatisfy(n -> assertThat(n.text()).contains("teeth").contains("3 mm"));
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

  // ---- models

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

  // ---- input

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
