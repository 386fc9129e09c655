package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.GroundSpeeds;
import hemline.solver.study.MadeUpFamily;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Search and proof over leaks that are formulas. */
final class ImproveStudyTest {
  private static final ShapeLimits LIMITS = new ShapeLimits(14e-3, 20e-3, 0.8e-3, 0.8e-3);
  private static final LipProfile START = MadeUpFamily.lip("start");

  private static final class Memory implements ResultStore<SectionResult> {
    private final Map<LeakOrigin, SectionResult> kept = new ConcurrentHashMap<>();

    @Override
    public @Nullable SectionResult find(LeakOrigin asked) {
      return kept.get(asked);
    }

    @Override
    public void keep(LeakOrigin asked, SectionResult result) {
      kept.put(asked, result);
    }
  }

  private static Improvement improve(
      MadeUpFamily family, ResultStore<SectionResult> store, int threads, CancelToken cancel) {
    return improve(family, GroundSpeeds.of(0), store, threads, cancel);
  }

  private static Improvement improve(
      MadeUpFamily family,
      GroundSpeeds speeds,
      ResultStore<SectionResult> store,
      int threads,
      CancelToken cancel) {
    LipSpace space = LipFamily.FLAT.space(1, LIMITS, LipFamily.FLAT.within(1, LIMITS), false);
    return new ImproveStudy(family, store)
        .of(
            new ImproveStudy.Asked(
                START,
                space,
                LIMITS,
                new LeakGoal(
                    GapDistribution.of(List.of(1e-3, 2e-3), List.of(1.0, 2.0)),
                    speeds,
                    MadeUpFamily.section(START)),
                14,
                1),
            new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, false, threads),
            () -> false,
            all -> {},
            cancel,
            (done, what) -> {});
  }

  @Test
  void theBestIsFoundAndProven() {
    Improvement found = improve(MadeUpFamily.valley(), ResultStore.none(), 2, new CancelToken());
    assertThat(found.status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(found.history()).hasSize(14);
    assertThat(found.proven()).isTrue();
    Improvement.Found best = found.best();
    assertThat(best).isNotNull();
    assertThat(MadeUpFamily.width(best.profile())).isBetween(10.5e-3, 11.5e-3);
    // 0.6 over 0.6 + 0.3², beside a start 8 mm wide
    var row = Improvement.row(found.proof().toStart(), best.profile().name());
    assertThat(row).isNotNull();
    assertThat(row.relativeLeak().value()).isBetween(0.865, 0.875);
    assertThat(Improvement.row(found.proof().toFlat(), best.profile().name())).isNotNull();
    assertThat(improve(MadeUpFamily.valley(), ResultStore.none(), 1, new CancelToken()).history())
        .isEqualTo(found.history());
  }

  /** The search tells lips apart by the grids that they have, and tells which it doubts. */
  @Test
  void aStartWithoutAFlowOnTheFinestGridIsSearchedFromAllTheSame() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              double width = MadeUpFamily.width(section.profile());
              boolean lost = place == 2 && (width == 8e-3 || width > 12e-3);
              double off = (width - 11e-3) / 10e-3;
              return lost
                  ? Double.NaN
                  : MadeUpFamily.jet(section, (0.6 + off * off) * (1 + 0.01 * (2 - place)));
            });
    Improvement found = improve(family, ResultStore.none(), 2, new CancelToken());
    Improvement.Found best = found.best();
    assertThat(best).isNotNull();
    assertThat(MadeUpFamily.width(best.profile())).isBetween(10.5e-3, 11.5e-3);
    assertThat(found.history())
        .anyMatch(
            e -> NoticeKind.SEARCH_NOT_FINEST.of().equals(e.doubt()) && Double.isFinite(e.score()));
  }

  /**
   * Least leak at 11 mm over still ground and at 7 mm over a moving one, which counts a quarter.
   */
  @Test
  void speedsOfTheGroundCountByTheirWeights() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              double best = section.ground().speed() > 0 ? 7e-3 : 11e-3;
              double off = (MadeUpFamily.width(section.profile()) - best) / 10e-3;
              return MadeUpFamily.jet(section, (0.6 + off * off) * (1 + 0.01 * (2 - place)));
            });
    GroundSpeeds speeds = GroundSpeeds.of(List.of(0.0, 4.0), List.of(3.0, 1.0));
    Improvement found = improve(family, speeds, ResultStore.none(), 2, new CancelToken());
    Improvement.Found best = found.best();
    assertThat(best).isNotNull();
    assertThat(MadeUpFamily.width(best.profile())).isBetween(9.5e-3, 10.5e-3);
    // 0.6 + 0.75 · 0.1² + 0.25 · 0.3² over 0.6 + 0.75 · 0.3² + 0.25 · 0.1²
    assertThat(found.relative(best.profile().name())).isNotNull();
    assertThat(found.relative(best.profile().name()).value()).isBetween(0.935, 0.945);
  }

  /** Lips that differ by errors of the coarse grids alone: the least is no gain. */
  @Test
  void aLuckyErrorIsNoGain() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              long seed = Double.doubleToLongBits(MadeUpFamily.width(section.profile()));
              boolean fine = place == 2 && section.profile().name().startsWith("improved");
              double error = fine ? 0 : 0.02 * new Well19937c(seed).nextGaussian();
              return MadeUpFamily.jet(section, 0.7 * (1 + error));
            });
    Improvement found = improve(family, ResultStore.none(), 2, new CancelToken());
    assertThat(found.proof().lips().get(0).evaluation().score()).isLessThan(0.99);
    assertThat(found.proven()).isFalse();
  }

  @Test
  void aSearchBrokenOffGoesOn() {
    Memory memory = new Memory();
    CancelToken cancel = new CancelToken();
    MadeUpFamily first = MadeUpFamily.valley();
    MadeUpFamily breaking =
        new MadeUpFamily(
            (section, closure, place) -> {
              if (memory.kept.size() >= 12) {
                cancel.cancel();
              }
              double off = (MadeUpFamily.width(section.profile()) - 11e-3) / 10e-3;
              return MadeUpFamily.jet(section, (0.6 + off * off) * (1 + 0.01 * (2 - place)));
            });
    Improvement stopped = improve(breaking, memory, 2, cancel);
    assertThat(stopped.status()).isEqualTo(SolveStatus.CANCELLED);
    assertThat(stopped.proof().lips()).isEmpty();
    int kept = memory.kept.size();
    assertThat(kept).isGreaterThan(10);
    Improvement whole = improve(first, memory, 2, new CancelToken());
    assertThat(whole.history())
        .isEqualTo(
            improve(MadeUpFamily.valley(), ResultStore.none(), 2, new CancelToken()).history());
    assertThat(whole.history().subList(0, stopped.history().size())).isEqualTo(stopped.history());
  }
}
