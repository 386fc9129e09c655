package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A batch that is killed (SIGKILL) a few times and started again: nothing is solved twice but what
 * was under way, and its table is that of a batch in one go, byte for byte.
 */
final class BatchKillTest {
  private static final long SEED = 19;
  private static final Path LIP = Path.of("..", "profiles", "plain-flat-8.json");

  /**
   * One batch of the flat lip.
   *
   * @param gaps range
   * @param suctions range
   * @param sections in all
   * @param each suctions at each gap
   * @param kills how often it is killed
   * @param patience longest wait before a kill, ms
   */
  private record Form(
      String gaps, String suctions, int sections, int each, int kills, int patience) {}

  @TempDir Path dir;

  private final SplittableRandom random = new SplittableRandom(SEED);

  @Test
  void aKilledBatchGoesOn() throws Exception {
    batch(new Form("0.1mm..0.3mm", "2Pa..20Pa", 12, 4, 2, 300));
  }

  /** The number of sections is {@code -Dhemline.hard.sections}. */
  @Tag("hard")
  @Test
  void aLongBatchGoesOn() throws Exception {
    int sections = Integer.getInteger("hemline.hard.sections", 2000);
    HardTable.write(List.of(batch(new Form("1.5mm..3mm", "300Pa..900Pa", sections, 10, 3, 2000))));
  }

  private HardTable.Tally batch(Form form) throws Exception {
    int sections = form.sections();
    HardTable.Tally tally = new HardTable.Tally("kill -9: batch of " + sections, SEED);
    Path whole = dir.resolve("whole");
    Busy busy = new Busy(start(form, whole));
    assertThat(busy.toTheEnd()).isZero();
    System.out.println(sections + " sections in one go: " + busy);
    assertThat(document(whole).path("solved").asInt()).isEqualTo(sections);

    Path killed = dir.resolve("killed");
    int before = 0;
    for (int k = 1; k <= form.kills(); k++) {
      Process process = start(form, killed);
      while (process.isAlive() && kept(killed) < sections * k / (form.kills() + 1)) {
        Thread.sleep(20);
      }
      process.waitFor(random.nextInt(form.patience()), TimeUnit.MILLISECONDS);
      process.destroyForcibly();
      process.waitFor();
      tally.tried++;
      assertThat(kept(killed)).as("kept after kill %d", k).isGreaterThan(before);
      before = kept(killed);
      assertThat(killed.resolve("out/batch.csv")).doesNotExist();
    }
    assertThat(start(form, killed).waitFor()).isZero();
    JsonNode end = document(killed);
    assertThat(end.path("found").asInt()).as("sections found kept").isEqualTo(before);
    tally.solved = before + end.path("solved").asInt();
    assertThat(tally.solved).isEqualTo(sections);
    for (String table : List.of("out/batch.csv", "out/batch.arrow")) {
      assertThat(killed.resolve(table)).hasSameBinaryContentAs(whole.resolve(table));
    }
    assertThat(Files.readAllLines(killed.resolve("out/batch.csv"))).hasSize(sections + 1);
    return tally;
  }

  private static JsonNode document(Path place) throws IOException {
    return new ObjectMapper().readTree(place.resolve("out/batch.json").toFile());
  }

  private static Process start(Form form, Path place) throws IOException {
    Files.createDirectories(place);
    List<String> program =
        List.of(
            "hemline.viewer.app.Main",
            "batch",
            LIP.toString(),
            "--gaps",
            form.gaps(),
            "--steps",
            String.valueOf(form.sections() / form.each()),
            "--suctions",
            form.suctions(),
            "--suction-steps",
            String.valueOf(form.each()),
            "--mesh",
            "coarse",
            "--keep",
            place.resolve("kept").toString(),
            "--out",
            place.resolve("out").toString());
    return Victim.java(List.of("-XX:TieredStopAtLevel=4"), program, place.resolve("told"));
  }

  /** Whole files of figures, which have folders of two digits. */
  private static int kept(Path place) {
    Path kept = place.resolve("kept");
    if (!Files.isDirectory(kept)) {
      return 0;
    }
    try (Stream<Path> folders = Files.list(kept)) {
      int count = 0;
      for (Path folder : folders.filter(f -> f.getFileName().toString().length() == 2).toList()) {
        try (Stream<Path> files = Files.list(folder)) {
          count += (int) files.filter(f -> f.toString().endsWith(".json")).count();
        }
      }
      return count;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How busy a program keeps the cores, also where other programs use them too. */
  private static final class Busy {
    private static final int LOOK_MS = 25;

    private final Process process;
    private final long start = System.nanoTime();

    /** Nanoseconds for which each solving thread ran or waited for a core to run on. */
    private final Map<String, Long> threads = new HashMap<>();

    private double solving;
    private Duration cpu = Duration.ZERO;
    private double wall;

    Busy(Process process) {
      this.process = process;
    }

    int toTheEnd() throws Exception {
      long first = 0;
      while (!process.waitFor(LOOK_MS, TimeUnit.MILLISECONDS)) {
        cpu = process.info().totalCpuDuration().orElse(cpu);
        look();
        first = first == 0 && !threads.isEmpty() ? System.nanoTime() : first;
        solving = first == 0 ? 0 : 1e-9 * (System.nanoTime() - first);
      }
      wall = 1e-9 * (System.nanoTime() - start);
      return process.exitValue();
    }

    private void look() {
      Path tasks = Path.of("/proc", String.valueOf(process.pid()), "task");
      try (Stream<Path> all = Files.list(tasks)) {
        for (Path task : all.toList()) {
          if (Files.readString(task.resolve("comm")).startsWith("hemline-solve")) {
            String[] told = Files.readString(task.resolve("schedstat")).strip().split(" ");
            threads.put(
                task.getFileName().toString(), Long.parseLong(told[0]) + Long.parseLong(told[1]));
          }
        }
      } catch (IOException e) {
        // a thread ended between two looks, or this system does not tell
      }
    }

    @Override
    public String toString() {
      int cores = Runtime.getRuntime().availableProcessors();
      double seconds = cpu.toMillis() / 1e3;
      double wanted = 1e-9 * threads.values().stream().mapToDouble(Long::doubleValue).sum();
      return String.format(
          Locale.ROOT,
          "%.0f s, %.0f s of CPU time, which is %.1f %% of %d cores; solving threads at work or"
              + " waiting for a core %.1f %% of %.0f s",
          wall,
          seconds,
          100 * seconds / wall / cores,
          cores,
          100 * wanted / solving / cores,
          solving);
    }
  }
}
