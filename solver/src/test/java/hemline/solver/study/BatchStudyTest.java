package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class BatchStudyTest {
  private static final int SECTIONS = 40;

  /** Keeps results in memory. */
  private static final class Shelf implements ResultStore<SectionResult> {
    final Map<String, SectionResult> kept = new ConcurrentHashMap<>();

    @Override
    public @Nullable SectionResult find(LeakOrigin asked) {
      return kept.get(asked.text());
    }

    @Override
    public void keep(LeakOrigin asked, SectionResult result) {
      assertThat(kept.put(asked.text(), result)).as("kept twice").isNull();
    }
  }

  private static List<SealSection> sections() {
    List<SealSection> all = new ArrayList<>();
    for (int k = 0; k < SECTIONS; k++) {
      all.add(MadeUpFamily.section(MadeUpFamily.lip("lip " + k % 3)).withGap(1e-3 + 1e-5 * k));
    }
    return all;
  }

  private static RunOptions options(int threads) {
    return new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, threads);
  }

  private static MadeUpFamily family(MadeUpFamily.Before before) {
    return new MadeUpFamily(
        (section, closure, place) -> MadeUpFamily.jet(section, 0.7 + 0.01 * place), before);
  }

  private static BatchAnswer run(
      MadeUpFamily family, ResultStore<SectionResult> store, int threads) {
    return new BatchStudy(new PoolRunner(family), store)
        .run(sections(), options(threads), new CancelToken(), ProgressListener.NONE);
  }

  @Test
  void answersAreInOrderAndTheSameOnAnyNumberOfThreads() {
    BatchAnswer one = run(family((s, c, cancel) -> {}), ResultStore.none(), 1);
    BatchAnswer four = run(family((s, c, cancel) -> {}), ResultStore.none(), 4);
    assertThat(four).isEqualTo(one);
    assertThat(one.complete()).isTrue();
    assertThat(one.solved()).isEqualTo(SECTIONS);
    for (int k = 0; k < SECTIONS; k++) {
      assertThat(one.results().get(k).conditions().gap()).isEqualTo(sections().get(k).gap());
      assertThat(one.results().get(k).name()).isEqualTo("lip " + k % 3);
    }
  }

  /** Stopped three times at other places, continued to the end: the same results, none twice. */
  @Test
  void goesOnWhereItWasStopped() {
    BatchAnswer whole = run(family((s, c, cancel) -> {}), ResultStore.none(), 2);
    Shelf shelf = new Shelf();
    for (int stopAfter : new int[] {5, 9, 14}) {
      AtomicInteger begun = new AtomicInteger();
      CancelToken token = new CancelToken();
      MadeUpFamily stopping =
          family(
              (s, closure, cancel) -> {
                if (begun.incrementAndGet() == stopAfter) {
                  token.cancel();
                }
              });
      BatchAnswer part =
          new BatchStudy(new PoolRunner(stopping), shelf)
              .run(sections(), options(2), token, ProgressListener.NONE);
      assertThat(part.complete()).isFalse();
      assertThat(part.results()).noneMatch(r -> r.status() == SolveStatus.CANCELLED);
    }
    int before = shelf.kept.size();
    assertThat(before).isBetween(3, SECTIONS - 1);
    MadeUpFamily last = family((s, c, cancel) -> {});
    BatchAnswer rest = run(last, shelf, 2);
    assertThat(rest.results()).isEqualTo(whole.results());
    assertThat(rest.found()).isEqualTo(before);
    assertThat(rest.solved()).isEqualTo(SECTIONS - before);
  }

  @Test
  void aSectionAskedTwiceIsSolvedOnceUnderBothNames() {
    Shelf shelf = new Shelf();
    SealSection a = MadeUpFamily.section(MadeUpFamily.lip("a"));
    SealSection twin = a.withProfile(MadeUpFamily.lip("twin"));
    BatchAnswer answer =
        new BatchStudy(new PoolRunner(family((s, c, cancel) -> {})), shelf)
            .run(List.of(a, twin, a), options(2), new CancelToken(), ProgressListener.NONE);
    assertThat(shelf.kept).hasSize(1);
    assertThat(answer.solved()).isEqualTo(1);
    assertThat(answer.results()).extracting(SectionResult::name).containsExactly("a", "twin", "a");
  }

  @Test
  void theLongestComeFirst() {
    List<Integer> order = BatchStudy.longestFirst(sections());
    List<Double> cost = order.stream().map(i -> BatchStudy.cost(sections().get(i))).toList();
    assertThat(cost).isSortedAccordingTo((x, y) -> Double.compare(y, x));
    assertThat(order).hasSize(SECTIONS).doesNotHaveDuplicates();
  }

  @Test
  void aPlaceThatBreaksDownKeepsWhatItHad() {
    Shelf shelf = new Shelf();
    BatchRunner breaking =
        (sections, options, cancel, progress, taker) -> {
          taker.accept(
              0,
              new SectionStudy(family((s, c, t) -> {}))
                  .run(sections.get(0), options, cancel, progress)
                  .result());
          throw new IllegalStateException("lost");
        };
    assertThatThrownBy(
            () ->
                new BatchStudy(breaking, shelf)
                    .run(sections(), options(1), new CancelToken(), ProgressListener.NONE))
        .hasMessage("lost");
    assertThat(shelf.kept).hasSize(1);
  }
}
