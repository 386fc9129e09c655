package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Changed files of every format: each must end as a value or in sentences within 5 s of processor
 * time, and no file but its own may be touched. A case that fails is named by format, seed and
 * number; its file is left in {@code target/hard}.
 */
final class MutatedFilesTest {
  private static final double PATIENCE = 5;
  private static final Path LEFT = Path.of("target", "hard");

  @TempDir Path dir;

  private final ThreadMXBean clock = ManagementFactory.getThreadMXBean();
  private final List<String> failures = new ArrayList<>();

  /** How a case ended. */
  private record End(List<Problem> told, Throwable fault, double seconds) {}

  @Test
  void everyChangedFileEndsInAValueOrASentence() throws Exception {
    run(40, 20261129);
    assertThat(failures).isEmpty();
  }

  @Tag("hard")
  @Test
  void manyChangedFiles() throws Exception {
    HardTable.write(run(Integer.getInteger("hemline.hard.files", 1000), 7));
    assertThat(failures).isEmpty();
  }

  private List<HardTable.Tally> run(int cases, long seed) throws Exception {
    Path outside = Files.createDirectories(dir.resolve("outside/lips"));
    Files.writeString(dir.resolve("outside/settings.conf"), "precious");
    Files.writeString(outside.resolve("mine.json"), "precious");
    Path profiles = Path.of("..", "profiles");
    Path ducts = Path.of("../validation/src/main/resources/hemline/validation/cases");
    Formats formats = new Formats(Files.createDirectories(dir.resolve("inside")), profiles, ducts);
    List<HardTable.Tally> tallies = new ArrayList<>();
    for (Formats.Format format : formats.all()) {
      HardTable.Tally tally = new HardTable.Tally("changed files: " + format.name(), seed);
      tallies.add(tally);
      TreeMap<String, Long> before = around(format.file());
      for (int k = 0; k < cases; k++) {
        SplittableRandom random = new SplittableRandom(31 * (seed + 1009 * k));
        byte[] sound = format.seeds().get(random.nextInt(format.seeds().size()));
        byte[] changed = Mutator.change(sound, random);
        if (format.sealed() && random.nextInt(3) > 0) {
          changed = Formats.sealed(changed);
        }
        Files.write(format.file(), changed);
        judge(tally, format, k, changed, end(format));
        Files.deleteIfExists(format.file());
        if (k % 200 == 199 || k == cases - 1) {
          clean(format.file());
          if (!around(format.file()).equals(before)) {
            tally.lost++;
            failures.add(tally.part + ": a file beside case " + k + " or before was touched");
            before = around(format.file());
          }
        }
      }
    }
    return tallies;
  }

  private void judge(HardTable.Tally tally, Formats.Format format, int k, byte[] file, End end)
      throws IOException {
    tally.tried++;
    tally.longest = Math.max(tally.longest, end.seconds());
    String why = "";
    if (end.seconds() > PATIENCE) {
      tally.hung++;
      why = "took " + end.seconds() + " s";
    } else if (end.fault() != null) {
      tally.crashed++;
      why = "ended in " + end.fault();
    } else if (end.told().isEmpty()) {
      tally.read++;
    } else {
      tally.refused++;
      why = wrong(end.told());
      tally.crashed += why.isEmpty() ? 0 : 1;
    }
    if (!why.isEmpty()) {
      Files.createDirectories(LEFT);
      String name = format.name().replace(' ', '-') + "-" + tally.seed + "-" + k;
      Files.write(LEFT.resolve(name), file);
      failures.add(name + " " + why);
    }
  }

  /** What is wrong with what was told; empty if each is one clear sentence. */
  private static String wrong(List<Problem> told) {
    for (Problem p : told) {
      String text = p.toString();
      if (p.text().isBlank() || text.contains("Exception") || text.contains("java.")) {
        return "told \"" + text + "\"";
      }
    }
    return "";
  }

  /** Reads in another thread, so that a case that hangs can be told. */
  @SuppressWarnings("deprecation") // a thread that hangs cannot be ended in another way
  private End end(Formats.Format format) throws InterruptedException {
    SynchronousQueue<End> answer = new SynchronousQueue<>();
    Thread reader =
        new Thread(
            () -> {
              long start = clock.getCurrentThreadCpuTime();
              List<Problem> told = List.of();
              Throwable fault = null;
              try {
                told = format.reader().read(format.file());
              } catch (InputException e) {
                told = e.problems();
              } catch (Throwable e) {
                fault = e;
              }
              double seconds = 1e-9 * (clock.getCurrentThreadCpuTime() - start);
              try {
                answer.put(new End(told, fault, seconds));
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    reader.setDaemon(true);
    reader.start();
    End end = answer.poll(1, TimeUnit.SECONDS);
    while (end == null && 1e-9 * clock.getThreadCpuTime(reader.getId()) < PATIENCE) {
      end = answer.poll(1, TimeUnit.SECONDS);
    }
    if (end == null) {
      reader.stop();
      return new End(List.of(), null, 2 * PATIENCE);
    }
    return end;
  }

  /** Everything but the case itself: sizes and times by name. */
  private TreeMap<String, Long> around(Path own) throws IOException {
    TreeMap<String, Long> found = new TreeMap<>();
    try (Stream<Path> files = Files.walk(dir)) {
      for (Path file : files.filter(f -> !f.equals(own) && !Files.isDirectory(f)).toList()) {
        long time = Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toMillis();
        found.put(file.toString(), 31 * time + Files.size(file));
      }
    }
    return found;
  }

  /** Removes what was set aside. */
  private static void clean(Path own) throws IOException {
    try (Stream<Path> files = Files.list(own.getParent())) {
      for (Path file : files.filter(f -> f.toString().endsWith(".refused")).toList()) {
        Files.delete(file);
      }
    }
  }
}
