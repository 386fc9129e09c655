package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.section.SealSection;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import hemline.viewer.screen.SectionBoard;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.IntConsumer;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/**
 * Measures how the bench follows the hand, on demand and on an otherwise idle machine; figures go
 * to standard output and to {@code viewer/target/pace.txt}. Wall times of a busy machine say
 * nothing.
 */
@Tag("pace")
final class BenchPaceTest extends ApplicationTest {
  private static final Path FIGURES = Path.of("target", "pace.txt");
  private static final int TUBES = 200;
  private static final String SCREEN = "JavaFX Application Thread";
  private static final String RENDERER = "QuantumRenderer";
  private Workbench bench;
  private HemlineWindow window;

  @Override
  public void start(Stage stage) {
    Examples examples = Examples.of(Path.of("../profiles"));
    bench = new Workbench(examples.first(), new FamilySolver(), Platform::runLater);
    bench.setOptions(RunOptions.DEFAULT);
    window = new HemlineWindow(bench, examples);
    stage.setScene(window.createScene());
    stage.show();
  }

  private void until(Callable<Boolean> done) throws Exception {
    WaitForAsyncUtils.waitFor(120, TimeUnit.SECONDS, done);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private boolean solvedInFull() {
    Shown shown = bench.shown().get();
    return shown != null && !shown.preview() && !bench.running().get() && !bench.stale().get();
  }

  private void run() throws Exception {
    interact(bench::run);
    until(this::solvedInFull);
    until(() -> window.benchScreen().board().picture().get() != null);
  }

  private static void tell(String what, double value, String unit) throws IOException {
    String line = String.format(Locale.ROOT, "%-58s %8.1f %s%n", what, value, unit);
    System.out.print("pace: " + line);
    Files.createDirectories(FIGURES.getParent());
    Files.writeString(
        FIGURES,
        line,
        java.nio.file.StandardOpenOption.CREATE,
        java.nio.file.StandardOpenOption.APPEND);
  }

  /** Delay of the screen's thread, sampled every two milliseconds. */
  private static final class Heartbeat implements AutoCloseable {
    private final AtomicBoolean on = new AtomicBoolean(true);
    private final List<Long> delays = Collections.synchronizedList(new ArrayList<>());

    Heartbeat() {
      Thread thread =
          new Thread(
              () -> {
                AtomicBoolean back = new AtomicBoolean(true);
                while (on.get()) {
                  if (back.compareAndSet(true, false)) {
                    long asked = System.nanoTime();
                    Platform.runLater(
                        () -> {
                          delays.add(System.nanoTime() - asked);
                          back.set(true);
                        });
                  }
                  try {
                    Thread.sleep(2);
                  } catch (InterruptedException e) {
                    return;
                  }
                }
              });
      thread.setDaemon(true);
      thread.start();
    }

    /** Delay that a share of all samples stays below, ms. */
    double quantile(double share) {
      synchronized (delays) {
        List<Long> sorted = new ArrayList<>(delays);
        Collections.sort(sorted);
        return 1e-6 * sorted.get((int) Math.min(sorted.size() - 1.0, share * sorted.size()));
      }
    }

    @Override
    public void close() {
      on.set(false);
    }
  }

  /** Processor time of a thread of the toolkit so far, ms; unlike delays it is hardly disturbed. */
  private static double processorTime(String thread) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    double time = 0;
    for (Thread one : Thread.getAllStackTraces().keySet()) {
      if (one.getName().startsWith(thread)) {
        time += 1e-6 * threads.getThreadCpuTime(one.getId());
      }
    }
    return time;
  }

  /**
   * Drags something; the change of each frame is given by its number.
   *
   * @param before seconds of dragging that are not measured
   * @param seconds that are measured
   */
  private void drag(String what, double before, double seconds, IntConsumer change)
      throws Exception {
    SectionBoard board = window.benchScreen().board();
    Map<SealSection, Long> asked = new HashMap<>();
    List<Double> latencies = new ArrayList<>();
    var hearing =
        board
            .picture()
            .subscribe(
                (FlowPicture p) -> {
                  Long since = p == null ? null : asked.get(p.shown().section());
                  if (since != null && p.shown().preview()) {
                    latencies.add(1e-6 * (System.nanoTime() - since));
                  }
                });
    AtomicInteger frames = new AtomicInteger();
    AnimationTimer hand =
        new AnimationTimer() {
          @Override
          public void handle(long now) {
            change.accept(frames.incrementAndGet());
            SealSection section = bench.section();
            if (section != null) {
              asked.put(section, System.nanoTime());
            }
          }
        };
    interact(
        () -> {
          bench.beginDrag();
          hand.start();
        });
    WaitForAsyncUtils.sleep((long) (1000 * before), TimeUnit.MILLISECONDS);
    interact(latencies::clear);
    long start = System.nanoTime();
    int framesBefore = frames.get();
    double screenBefore = processorTime(SCREEN);
    double rendererBefore = processorTime(RENDERER);
    double p50;
    double p99;
    double longest;
    try (Heartbeat heart = new Heartbeat()) {
      WaitForAsyncUtils.sleep((long) (1000 * seconds), TimeUnit.MILLISECONDS);
      p50 = heart.quantile(0.5);
      p99 = heart.quantile(0.99);
      longest = heart.quantile(1);
    }
    double lasted = 1e-9 * (System.nanoTime() - start);
    int counted = frames.get() - framesBefore;
    double screen = (processorTime(SCREEN) - screenBefore) / counted;
    double renderer = (processorTime(RENDERER) - rendererBefore) / counted;
    List<Double> sorted = new ArrayList<>();
    interact(
        () -> {
          hand.stop();
          hearing.unsubscribe();
          sorted.addAll(latencies);
          bench.endDrag();
        });
    Collections.sort(sorted);
    assertThat(sorted).as("previews while dragging %s", what).hasSizeGreaterThan(3);
    tell(what + ": preview latency, median", sorted.get(sorted.size() / 2), "ms");
    tell(what + ": preview latency, ninth decile", sorted.get(sorted.size() * 9 / 10), "ms");
    tell(what + ": previews a second", sorted.size() / lasted, "");
    tell(what + ": delay of the screen's thread, median", p50, "ms");
    tell(what + ": delay of the screen's thread, 99 %", p99, "ms");
    tell(what + ": delay of the screen's thread, longest", longest, "ms");
    tell(what + ": frames a second", counted / lasted, "");
    tell(what + ": processor time of the screen's thread a frame", screen, "ms");
    tell(what + ": processor time of the renderer a frame", renderer, "ms");
    until(this::solvedInFull);
  }

  @Test
  void dragging() throws Exception {
    run();
    // a few seconds pass before anybody minds the pace, and code is compiled meanwhile
    drag("corner", 6, 8, this::moveCorner);
    drag("gap", 1.5, 8, n -> bench.set(bench.setting().get().withGap(2e-3 + 2e-6 * (n % 400))));
    drag("suction", 1.5, 8, n -> bench.set(bench.setting().get().withSuction(600 + (n % 400))));
    drag(
        "ground",
        1.5,
        8,
        n -> bench.set(bench.setting().get().withGroundSpeed(-5 + 0.025 * (n % 400))));
  }

  private void moveCorner(int frame) {
    bench.edit(d -> LipEdit.place(d, new Corner(0, 1), 1e-3 + 2e-6 * (frame % 400), 1e-5));
  }

  @Test
  void panning() throws Exception {
    run();
    SectionBoard board = window.benchScreen().board();
    interact(() -> board.look().set(board.look().get().withTubes(TUBES)));
    until(() -> board.picture().get().streamlines().throughLines() >= TUBES - 1);
    AtomicInteger frames = new AtomicInteger();
    AtomicLong longest = new AtomicLong();
    AnimationTimer hand =
        new AnimationTimer() {
          private long last;

          @Override
          public void handle(long now) {
            int n = frames.incrementAndGet();
            longest.set(Math.max(longest.get(), last == 0 ? 0 : now - last));
            last = now;
            double angle = 0.02 * n;
            board.pan(6 * Math.cos(angle), 4 * Math.sin(angle));
          }
        };
    interact(hand::start);
    WaitForAsyncUtils.sleep(1500, TimeUnit.MILLISECONDS);
    longest.set(0);
    int before = frames.get();
    long start = System.nanoTime();
    try (Heartbeat heart = new Heartbeat()) {
      WaitForAsyncUtils.sleep(6, TimeUnit.SECONDS);
      double lasted = 1e-9 * (System.nanoTime() - start);
      tell("panning, 200 streamlines: frames a second", (frames.get() - before) / lasted, "");
      tell("panning, 200 streamlines: longest frame", 1e-6 * longest.get(), "ms");
      tell("panning: delay of the screen's thread, longest", heart.quantile(1), "ms");
    }
    interact(hand::stop);
  }

  @Test
  void memoryAfterManyRuns() throws Exception {
    int runs = Integer.getInteger("hemline.pace.runs", 500);
    for (int k = 0; k < runs; k++) {
      double gap = 1e-3 + 2e-6 * (k % 250);
      interact(() -> bench.set(bench.setting().get().withSuction(20).withGap(gap)));
      run();
    }
    System.gc();
    WaitForAsyncUtils.sleep(1, TimeUnit.SECONDS);
    System.gc();
    Runtime memory = Runtime.getRuntime();
    tell(
        "after " + runs + " runs: heap after collection",
        (memory.totalMemory() - memory.freeMemory()) / 1e6,
        "MB");
    for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
      if (line.startsWith("VmRSS") || line.startsWith("VmHWM")) {
        double kilobytes = Double.parseDouble(line.replaceAll("[^0-9]", ""));
        String what = line.startsWith("VmRSS") ? "resident memory" : "most resident memory ever";
        tell("after " + runs + " runs: " + what, kilobytes / 1e3, "MB");
      }
    }
  }
}
