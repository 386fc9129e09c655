package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.UnixOperatingSystemMXBean;
import hemline.shared.file.DxfFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.SvgFile;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.RunOptions;
import hemline.solver.study.Swept;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.model.LipDocument;
import hemline.viewer.model.StudyDesk;
import hemline.viewer.model.Surely;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.StudyQuestion;
import hemline.viewer.project.StudyStore;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Long use without a window: edits, saves, imports, studies kept and read, runs, in turn. Heap
 * after a full collection, threads and open files must stay flat; {@code validation/hard/soak.csv}
 * has them minute by minute. Minutes: {@code -Dhemline.hard.minutes}, 120 if absent.
 */
@Tag("hard")
final class SoakTest {
  private static final long SEED = 5;

  @TempDir Path dir;

  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final List<InputException> faults = new ArrayList<>();
  private final SplittableRandom random = new SplittableRandom(SEED);

  /** What is used after a minute. */
  private record Used(int minute, int turns, double heap, int threads, long files) {
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%d,%d,%.1f,%d,%d", minute, turns, heap, threads, files);
    }
  }

  @Test
  void longUse() throws Exception {
    List<Path> lips;
    try (Stream<Path> files = Files.list(Path.of("../profiles"))) {
      lips = files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    }
    Workbench bench = new Workbench(LipFile.read(lips.get(0)), new FamilySolver(), screen::add);
    bench.setOptions(new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1));
    bench.set(bench.setting().get().withGap(0.3e-3).withSuction(20));
    ProjectFolder project = new ProjectFolder(dir);
    LipDocument document =
        new LipDocument(
            bench,
            new RescueStore(project.rescue()),
            new RecentPlaces(dir.resolve("settings/recent.json")),
            Clock.systemUTC(),
            Runnable::run,
            Runnable::run);
    StudyStore studies = new StudyStore(project.studies(), "engine");
    StudyDesk desk =
        new StudyDesk(new FamilySolver(), studies, Runnable::run, screen::add, Clock.systemUTC());
    HardTable.Tally tally = new HardTable.Tally("long use: turns", SEED);
    List<Used> used = new ArrayList<>();
    int minutes = Integer.getInteger("hemline.hard.minutes", 120);
    long start = System.nanoTime();
    for (int minute = 1; minute <= minutes; minute++) {
      while (System.nanoTime() - start < minute * 60e9) {
        Path lip = lips.get(random.nextInt(lips.size()));
        turn(bench, document, studies, lip, tally);
        if (tally.tried % 10 == 0) {
          study(desk, lip, tally);
        }
        tally.tried++;
      }
      used.add(now(minute, tally.tried));
      System.out.println(used.get(used.size() - 1) + " solved " + tally.solved);
      write(used);
    }
    desk.close();
    assertThat(faults).isEmpty();
    HardTable.write(List.of(tally));
    // of the heap the least, because the flow on show differs from lip to lip
    List<Used> early = used.subList(minutes / 4, minutes / 2 + 1);
    List<Used> late = used.subList(minutes - minutes / 4 - 1, minutes);
    assertThat(least(late, Used::heap)).isLessThan(1.1 * least(early, Used::heap) + 2);
    assertThat(least(late, Used::threads)).isLessThanOrEqualTo(least(early, Used::threads) + 2);
    assertThat(least(late, Used::files)).isLessThanOrEqualTo(least(early, Used::files) + 5);
  }

  private static double least(List<Used> used, ToDoubleFunction<Used> what) {
    return used.stream().mapToDouble(what).min().orElseThrow();
  }

  private void turn(
      Workbench bench, LipDocument document, StudyStore studies, Path lip, HardTable.Tally tally)
      throws Exception {
    int turn = tally.tried;
    LipProfile profile = LipFile.load(lip).profile();
    Path drawing = dir.resolve(turn % 2 == 0 ? "drawing.svg" : "drawing.dxf");
    if (turn % 2 == 0) {
      SvgFile.write(drawing, List.of(profile.outline()), profile.name());
    } else {
      DxfFile.write(drawing, List.of(profile.outline()));
    }
    document.open(LipDocument.read(turn % 3 == 0 ? drawing : lip));
    for (int k = 0; k < 20; k++) {
      int corner = random.nextInt(bench.drawing().get().body().vertices().size());
      double by = 1e-5 * (random.nextDouble() - 0.5);
      bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, corner)), by, 0));
      document.putBy(faults::add);
    }
    document.saveAs(dir.resolve("lip" + turn % 10 + ".json"), new Surely(() -> {}));
    studies.keep(Kept.study(profile));
    assertThat(studies.all().studies()).isNotEmpty();
    if (turn % 5 == 0) {
      bench.run();
      until(() -> !bench.running().get());
      tally.solved += bench.shown().get() == null ? 0 : 1;
    }
    while (!screen.isEmpty()) {
      screen.remove().run();
    }
  }

  /** A lip at a gap of chance against a plain one, solved and kept; five are kept. */
  private void study(StudyDesk desk, Path lip, HardTable.Tally tally) throws Exception {
    LipProfile profile = LipFile.load(lip).profile();
    StudyQuestion question =
        new StudyQuestion(
            Swept.GAP,
            List.of(profile),
            PlainFlat.asWideAs(profile),
            List.of(random.nextDouble(0.2e-3, 0.4e-3)),
            new StudyQuestion.Held(0.3e-3, 20, GroundMotion.STILL, Air.STANDARD),
            new StudyQuestion.Solving(MeshLevel.COARSE, Closure.AUTO, false));
    assertThat(desk.start(question, 1)).isEmpty();
    until(() -> !desk.work().running().get());
    assertThat(desk.work().state().get()).isEmpty();
    tally.solved++;
    List<KeptStudy> kept = desk.kept().get();
    kept.subList(Math.min(5, kept.size()), kept.size()).forEach(desk::remove);
  }

  private void until(java.util.function.BooleanSupplier done) throws InterruptedException {
    while (!done.getAsBoolean()) {
      Runnable next = screen.poll(100, TimeUnit.MILLISECONDS);
      if (next != null) {
        next.run();
      }
    }
  }

  private static Used now(int minute, int turns) throws InterruptedException {
    for (int k = 0; k < 3; k++) {
      System.gc();
      Thread.sleep(100);
    }
    double heap = 1e-6 * ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    long files =
        ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean unix
            ? unix.getOpenFileDescriptorCount()
            : 0;
    int threads = ManagementFactory.getThreadMXBean().getThreadCount();
    return new Used(minute, turns, heap, threads, files);
  }

  private static void write(List<Used> used) throws IOException {
    if ("write".equals(System.getProperty("hemline.hard"))) {
      Path file = Path.of("..", "validation", "hard", "soak.csv");
      Files.createDirectories(file.getParent());
      StringBuilder text = new StringBuilder("minute,turns,heap_MB,threads,open_files\n");
      used.forEach(u -> text.append(u).append('\n'));
      Files.writeString(file, text);
    }
  }
}
