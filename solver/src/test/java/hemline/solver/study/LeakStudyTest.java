package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class LeakStudyTest {
  private static final RunOptions COARSE = new RunOptions(MeshLevel.COARSE, Closure.SST, false, 2);

  /** Keeps points in memory. */
  private static final class Shelf implements ResultStore<LeakPoint> {
    final Map<String, LeakPoint> kept = new HashMap<>();

    @Override
    public @Nullable LeakPoint find(LeakOrigin asked) {
      return kept.get(asked.text());
    }

    @Override
    public void keep(LeakOrigin asked, LeakPoint point) {
      kept.put(asked.text(), point);
    }
  }

  private static MadeUpFamily jets() {
    return new MadeUpFamily((section, closure, place) -> MadeUpFamily.jet(section, 0.71));
  }

  @Test
  void solvesEachSectionOnceAndNeverAgain() {
    MadeUpFamily family = jets();
    Shelf shelf = new Shelf();
    SealSection a = MadeUpFamily.section(MadeUpFamily.lip("a"));
    SealSection twin = a.withProfile(MadeUpFamily.lip("twin of another name"));
    List<SealSection> asked = List.of(a, a.withGap(1e-3), a, twin);
    List<LeakPoint> points =
        new LeakStudy(family, shelf)
            .points(asked, COARSE, new CancelToken(), ProgressListener.NONE);
    assertThat(family.solves).hasSize(2);
    assertThat(shelf.kept).hasSize(2);
    assertThat(points)
        .extracting(LeakPoint::lip)
        .containsExactly("a", "a", "a", twin.profile().name());
    assertThat(points.get(1).conditions().gap()).isEqualTo(1e-3);
    for (LeakPoint p : points) {
      assertThat(p.usable()).isTrue();
      assertThat(p.discharge().value()).isCloseTo(0.71, within(1e-9));
    }
    List<LeakPoint> again =
        new LeakStudy(family, shelf)
            .points(asked, COARSE, new CancelToken(), ProgressListener.NONE);
    assertThat(family.solves).hasSize(2);
    assertThat(again).isEqualTo(points);
  }

  @Test
  void everythingThatChangesTheAnswerChangesTheKey() {
    SealSection s = MadeUpFamily.section(MadeUpFamily.lip("a"));
    LipProfile other =
        new LipProfile("a", "flat", "made up", MadeUpFamily.lip("a").outline(), 1, List.of());
    List<LeakOrigin> keys =
        List.of(
            LeakKey.of(s, COARSE),
            LeakKey.of(s.withGap(2.0000001e-3), COARSE),
            LeakKey.of(s.withSuction(601), COARSE),
            LeakKey.of(s.withProfile(other), COARSE),
            LeakKey.of(
                new SealSection(
                    s.profile(),
                    s.gap(),
                    s.suction(),
                    new GroundMotion(1, 0),
                    s.fluid(),
                    List.of()),
                COARSE),
            LeakKey.of(
                new SealSection(
                    s.profile(),
                    s.gap(),
                    s.suction(),
                    new GroundMotion(0, 1),
                    s.fluid(),
                    List.of()),
                COARSE),
            LeakKey.of(s, new RunOptions(MeshLevel.FINE, Closure.SST, false, 2)),
            LeakKey.of(s, new RunOptions(MeshLevel.COARSE, Closure.SST, true, 2)),
            LeakKey.of(s, new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 2)));
    assertThat(keys).extracting(LeakOrigin::text).doesNotHaveDuplicates();
    assertThat(LeakKey.of(s, new RunOptions(MeshLevel.COARSE, Closure.SST, false, 7)))
        .isEqualTo(keys.get(0));
  }

  @Test
  void doesNotKeepWhatWasCancelled() {
    CancelToken cancel = new CancelToken();
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> MadeUpFamily.jet(section, 0.71),
            (section, closure, token) -> {
              if (section.gap() == 1e-3) {
                cancel.cancel();
              }
            });
    Shelf shelf = new Shelf();
    SealSection a = MadeUpFamily.section(MadeUpFamily.lip("a"));
    List<LeakPoint> points =
        new LeakStudy(family, shelf)
            .points(List.of(a.withGap(1e-3)), COARSE, cancel, ProgressListener.NONE);
    assertThat(points.get(0).status()).isEqualTo(SolveStatus.CANCELLED);
    assertThat(shelf.kept).isEmpty();
  }

  @Test
  void keepsAFailureAsAFailure() {
    MadeUpFamily family = new MadeUpFamily((section, closure, place) -> Double.NaN);
    SealSection a = MadeUpFamily.section(MadeUpFamily.lip("a"));
    List<LeakPoint> points =
        new LeakStudy(family, ResultStore.none())
            .points(List.of(a), COARSE, new CancelToken(), ProgressListener.NONE);
    assertThat(points.get(0).usable()).isFalse();
  }
}
