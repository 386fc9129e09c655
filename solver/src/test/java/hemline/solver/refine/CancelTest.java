package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A solve ends soon after it is cancelled, whatever it is doing.
 *
 * <p>What is measured is the processor time that the solving thread still spends, so that other
 * work on the machine does not matter.
 */
class CancelTest {
  private static final double MOST_MILLISECONDS = 50;
  private static final int ATTEMPTS = 3;
  private static final int WARM_UPS = 2;
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private static SealSection section(Closure closure) {
    return Lips.section(
        Lips.shipped("labyrinth-five-teeth"), 2, closure == Closure.LAMINAR ? 30 : 600, 0, 1);
  }

  /** Compiles the hot loops, and what builds the grids of a section this fine. */
  @BeforeAll
  static void warmUp() throws Exception {
    for (Closure closure : new Closure[] {Closure.LAMINAR, Closure.SST}) {
      new FamilySolver()
          .solve(
              SolveRequest.cold(
                  Lips.section(Lips.leaningTeeth(), 2, 30, 0, 1), MeshLevel.COARSE, 1, closure),
              new CancelToken(),
              ProgressListener.NONE);
      for (int k = 0; k < WARM_UPS; k++) {
        millisecondsToStop(closure, 100);
      }
    }
  }

  @ParameterizedTest(name = "{0} after {1} ms of work")
  @CsvSource({
    "LAMINAR, 0",
    "LAMINAR, 5",
    "LAMINAR, 15",
    "LAMINAR, 40",
    "LAMINAR, 100",
    "LAMINAR, 150",
    "LAMINAR, 250",
    "LAMINAR, 400",
    "LAMINAR, 700",
    "LAMINAR, 1100",
    "SST, 0",
    "SST, 5",
    "SST, 20",
    "SST, 60",
    "SST, 150",
    "SST, 300",
    "SST, 600"
  })
  void theSolvingThreadStops(Closure closure, long afterMilliseconds) throws Exception {
    // code met for the first time runs uncompiled: the best of a few tries counts
    double best = Double.POSITIVE_INFINITY;
    for (int attempt = 0; attempt < ATTEMPTS && !(best < MOST_MILLISECONDS); attempt++) {
      best = Math.min(best, millisecondsToStop(closure, afterMilliseconds));
    }
    assertThat(best).as("ms spent after cancelling").isLessThan(MOST_MILLISECONDS);
  }

  /** CPU time that a solve spends after it was cancelled, and checks what it answers. */
  private static double millisecondsToStop(Closure closure, long afterMilliseconds)
      throws Exception {
    CancelToken cancel = new CancelToken();
    AtomicLong end = new AtomicLong();
    AtomicReference<GridFamily> answer = new AtomicReference<>();
    Thread worker =
        new Thread(
            () -> {
              answer.set(
                  new FamilySolver()
                      .solve(
                          SolveRequest.cold(section(closure), MeshLevel.FINE, 3, closure),
                          cancel,
                          ProgressListener.NONE));
              end.set(THREADS.getCurrentThreadCpuTime());
            },
            "cancelled solve");
    worker.start();
    while (worker.isAlive()
        && THREADS.getThreadCpuTime(worker.getId()) < 1_000_000 * afterMilliseconds) {
      Thread.sleep(1);
    }
    long before = THREADS.getThreadCpuTime(worker.getId());
    assertThat(before).as("still at work").isPositive();
    cancel.cancel();
    worker.join();
    GridFamily family = answer.get();
    assertThat(family.grids()).as("grids finished").hasSizeLessThan(SectionFamily.GRIDS);
    assertThat(family.runs())
        .allSatisfy(run -> assertThat(run.status()).isEqualTo(SolveStatus.CONVERGED));
    return (end.get() - before) * 1e-6;
  }
}
