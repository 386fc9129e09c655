package hemline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.profile.LipResolver;
import hemline.shared.profile.Starter;
import hemline.shared.result.Figure;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The bench without a window: this thread is the screen's. */
final class WorkbenchTest {
  private static final long PATIENCE = 30;
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private Workbench bench;

  @BeforeEach
  void aFlatLip() {
    bench = new Workbench(new Starter.Flat(8e-3, 10e-3).drawing(), new FamilySolver(), screen::add);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1));
  }

  private void until(BooleanSupplier done) throws InterruptedException {
    long start = System.nanoTime();
    while (!done.getAsBoolean()) {
      Runnable next = screen.poll(1, TimeUnit.SECONDS);
      if (next != null) {
        next.run();
      }
      assertThat(System.nanoTime() - start).isLessThan(PATIENCE * 1_000_000_000L);
    }
  }

  private double leak() {
    return bench.shown().get().result().figures().get(Figure.LEAK_FLOW).value();
  }

  private void run() throws InterruptedException {
    bench.run();
    until(() -> !bench.running().get());
    assertThat(bench.shown().get().preview()).isFalse();
  }

  @Test
  void aDragIsFollowedAndSolvedInFullWhenItEnds() throws InterruptedException {
    run();
    double before = leak();
    bench.beginDrag();
    for (int k = 1; k <= 5; k++) {
      bench.set(bench.setting().get().withGap(2e-3 + k * 0.1e-3));
    }
    assertThat(bench.stale().get()).isTrue();
    assertThat(bench.behind().get()).as("its flow is on the way").isFalse();
    until(() -> !bench.stale().get());
    assertThat(bench.shown().get().preview()).isTrue();
    assertThat(leak()).isGreaterThan(1.1 * before);
    bench.endDrag();
    until(() -> !bench.running().get());
    assertThat(bench.shown().get().preview()).isFalse();
    assertThat(bench.stale().get()).isFalse();
  }

  @Test
  void aDragThatBeginsWhileTheSolveRunsIsFollowedToo() throws InterruptedException {
    bench.run();
    until(() -> bench.shown().get() != null);
    bench.beginDrag();
    for (int k = 1; k <= 10; k++) {
      double by = 0.1e-3;
      bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), by, 0));
    }
    until(() -> !bench.stale().get());
    assertThat(bench.shown().get().placement().right()).isCloseTo(9e-3, within(1e-9));
    bench.endDrag();
    bench.stop();
  }

  @Test
  void aFlowThatNothingFollowsFallsBehind() throws InterruptedException {
    run();
    bench.beginDrag();
    bench.edit(d -> LipEdit.place(d, new Corner(0, 1), 20e-3, 30e-3));
    assertThat(bench.section()).as("a drawing that crosses itself").isNull();
    assertThat(bench.behind().get()).isTrue();
    bench.undo();
    bench.endDrag();
    bench.stop();
    bench.set(bench.setting().get().withGap(3e-3));
    assertThat(bench.behind().get()).as("a change outside a drag").isTrue();
    until(() -> !bench.running().get());
    assertThat(bench.behind().get()).isFalse();
  }

  @Test
  void aFollowerTellsOfSectionsWithoutAFlow() {
    List<String> told = new ArrayList<>();
    SectionFamily broken =
        (SectionFamily)
            Proxy.newProxyInstance(
                getClass().getClassLoader(),
                new Class<?>[] {SectionFamily.class},
                (proxy, method, arguments) -> {
                  throw new IllegalArgumentException("no mesh");
                });
    Follower follower =
        new Follower(
            broken,
            Runnable::run,
            System::nanoTime,
            flow -> told.add("flow"),
            () -> told.add("lost"));
    follower.follow(bench.section(), Placement.of(bench.drawing().get()));
    assertThat(told).containsExactly("lost");
  }

  @Test
  void thinPartsAreToldDuringADragAndAtItsEnd() throws InterruptedException {
    bench.beginDrag();
    bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1), new Corner(0, 2)), -7.4e-3, 0));
    assertThat(bench.section()).as("previews wait for no thin parts").isNotNull();
    until(() -> !bench.findings().get().thinWalls().isEmpty());
    bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1), new Corner(0, 2)), 5e-3, 0));
    assertThat(bench.findings().get().notices()).as("of some moments ago").hasSize(1);
    bench.endDrag();
    assertThat(bench.findings().get())
        .isEqualTo(LipResolver.check(bench.drawing().get()))
        .satisfies(f -> assertThat(f.notices()).isEmpty());
  }

  @Test
  void undoOfADragIsOneStep() {
    var first = bench.drawing().get();
    bench.beginDrag();
    for (int k = 1; k <= 10; k++) {
      bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), 0.1e-3, 0));
    }
    bench.endDrag();
    bench.undo();
    assertThat(bench.drawing().get()).isEqualTo(first);
    assertThat(bench.canUndo().get()).isFalse();
    assertThat(bench.canRedo().get()).isTrue();
  }
}
