package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.Starter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A search over scores that are known. */
final class LipSearchTest {
  private static final ShapeLimits LIMITS = new ShapeLimits(14e-3, 10e-3, 0.8e-3, 0.8e-3);

  /** Pockets by opening and depth; the least score lies at 4.2 mm and 3.1 mm. */
  private static final LipSpace POCKETS =
      new LipSpace() {
        @Override
        public List<NamedLength> lengths() {
          return List.of(
              new NamedLength("opening", 0.8e-3, 8e-3), new NamedLength("depth", 0.8e-3, 9e-3));
        }

        @Override
        public LipDrawing drawing(double[] v) {
          return new Starter.Pockets(1, v[0], v[1], 2e-3, 10e-3).drawing();
        }
      };

  private static double opening(LipProfile lip) {
    var v = lip.outline().vertices();
    return v.stream().mapToDouble(p -> p.x()).max().orElseThrow() - 4e-3;
  }

  private static double depth(LipProfile lip) {
    return lip.outline().vertices().stream()
        .mapToDouble(p -> p.y())
        .filter(y -> y > 0 && y < 9.9e-3)
        .max()
        .orElseThrow();
  }

  private static double known(LipProfile lip) {
    double a = (opening(lip) - 4.2e-3) / 7e-3;
    double b = (depth(lip) - 3.1e-3) / 8e-3;
    return 0.8 + a * a + 0.5 * b * b + 0.3 * a * b + 0.02 * Math.sin(20 * a);
  }

  private static LipSearch search(ToDoubleFunction<LipProfile> score, int budget, long seed) {
    return new LipSearch(
        POCKETS,
        LIMITS,
        lips -> lips.stream().map(l -> new LipSearch.Score(score.applyAsDouble(l), null)).toList(),
        budget,
        seed,
        () -> false);
  }

  private static double least(List<Evaluation> history) {
    return history.stream().mapToDouble(Evaluation::score).min().orElseThrow();
  }

  /** At the best of a brute sweep of 400 points by at most two thousandths. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void theLeastIsFoundInTwentyFiveEvaluations(long seed) {
    double brute = Double.POSITIVE_INFINITY;
    for (int i = 0; i < 20; i++) {
      for (int k = 0; k < 20; k++) {
        double[] v = {POCKETS.lengths().get(0).at(i / 19.0), POCKETS.lengths().get(1).at(k / 19.0)};
        LipProfile lip = LIMITS.judge(POCKETS.drawing(v)).profile();
        brute = lip == null ? brute : Math.min(brute, known(lip));
      }
    }
    LipSearch search = search(LipSearchTest::known, 25, seed);
    assertThat(search.run(all -> {})).isTrue();
    assertThat(search.history()).hasSize(25);
    assertThat(least(search.history())).isLessThan(brute + 2e-3);
  }

  /** Noise of half a per cent does not lead the search away. */
  @Test
  void noiseIsNoGain() {
    var chance = new Well19937c(9);
    LipSearch search = search(lip -> known(lip) * (1 + 0.005 * chance.nextGaussian()), 40, 1);
    assertThat(search.run(all -> {})).isTrue();
    Evaluation best =
        search.history().stream()
            .min(java.util.Comparator.comparingDouble(Evaluation::score))
            .orElseThrow();
    double[] v = best.lengths().stream().mapToDouble(Double::doubleValue).toArray();
    LipProfile lip = LIMITS.judge(POCKETS.drawing(v)).profile();
    assertThat(lip).isNotNull();
    assertThat(known(lip)).isLessThan(0.8);
  }

  @Test
  void theSameSeedGivesTheSameLipsAndAnotherOneOthers() {
    LipSearch one = search(LipSearchTest::known, 12, 7);
    LipSearch again = search(LipSearchTest::known, 12, 7);
    LipSearch other = search(LipSearchTest::known, 12, 8);
    assertThat(one.run(all -> {}) && again.run(all -> {}) && other.run(all -> {})).isTrue();
    assertThat(one.history()).isEqualTo(again.history()).isNotEqualTo(other.history());
  }

  /** What has no flow or a doubtful one is not chosen again and again. */
  @Test
  void failuresAreGoneAround() {
    LipSearch search =
        new LipSearch(
            POCKETS,
            LIMITS,
            lips ->
                lips.stream()
                    .map(
                        l ->
                            opening(l) > 4e-3
                                ? new LipSearch.Score(Double.NaN, NoticeKind.SEARCH_NO_FLOW.of())
                                : new LipSearch.Score(known(l), null))
                    .toList(),
            30,
            1,
            () -> false);
    assertThat(search.run(all -> {})).isTrue();
    long failed = search.history().stream().filter(e -> !Double.isFinite(e.score())).count();
    assertThat(failed).isBetween(1L, 15L);
    double least =
        search.history().stream()
            .mapToDouble(Evaluation::score)
            .filter(Double::isFinite)
            .min()
            .orElseThrow();
    assertThat(least).isLessThan(0.81);
  }

  @Test
  void aStopEndsItAndTimeUpEndsItWell() {
    LipSearch stopped = new LipSearch(POCKETS, LIMITS, lips -> List.of(), 30, 1, () -> false);
    assertThat(stopped.run(all -> {})).isFalse();
    assertThat(stopped.history()).isEmpty();
    int[] asked = {0};
    LipSearch brief =
        new LipSearch(
            POCKETS,
            LIMITS,
            lips -> lips.stream().map(l -> new LipSearch.Score(1, null)).toList(),
            30,
            1,
            () -> asked[0]++ >= 3);
    assertThat(brief.run(all -> {})).isTrue();
    assertThat(brief.history()).hasSize(6);
  }

  @Test
  void impossibleLimitsEndWithTheReason() {
    LipSearch none =
        new LipSearch(
            POCKETS,
            new ShapeLimits(3e-3, 10e-3, 0.8e-3, 0.8e-3),
            lips -> List.of(),
            30,
            1,
            () -> false);
    assertThat(none.run(all -> {})).isTrue();
    assertThat(none.history()).isEmpty();
    assertThat(none.refusal()).isEqualTo("it is wider than 3 mm");
  }

  /** Draws of each family: those that pass hold to the limits, and a fair part passes. */
  @ParameterizedTest
  @EnumSource
  void familiesGiveLipsWithinTheLimits(LipFamily family) {
    assertThat(family.fault(3, LIMITS)).isEmpty();
    LipSpace space = family.space(3, LIMITS, family.within(3, LIMITS), false);
    var chance = new Well19937c(3);
    List<String> refused = new ArrayList<>();
    int passed = 0;
    for (int k = 0; k < 300; k++) {
      double[] v = space.lengths().stream().mapToDouble(l -> l.at(chance.nextDouble())).toArray();
      ShapeLimits.Judged judged = LIMITS.judge(space.drawing(v));
      LipProfile lip = judged.profile();
      if (lip == null) {
        refused.add(judged.why());
        continue;
      }
      passed++;
      double wide = lip.outline().vertices().stream().mapToDouble(p -> p.x()).max().orElseThrow();
      assertThat(wide).isLessThanOrEqualTo(14e-3 + 1e-9);
    }
    assertThat(passed)
        .as("%s: %s", family, refused.stream().distinct().limit(4).toList())
        .isGreaterThan(15);
    ShapeLimits tight = new ShapeLimits(1e-3, 10e-3, 0.8e-3, 0.8e-3);
    if (family != LipFamily.FLAT && family != LipFamily.NOSE) {
      assertThat(family.fault(3, tight))
          .contains("leaves no room for")
          .contains(family.name().toLowerCase(Locale.ROOT));
    }
  }
}
