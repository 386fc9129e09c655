package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.app.KilledWindow;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RescueStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The window on one project, killed (SIGKILL) again and again while the lip is edited: the next
 * start has every edit that was saved, that was followed by a rest, or that is older than what the
 * window promises to put by.
 */
@Tag("hard")
final class WindowKillTest {
  private static final long SEED = 13;
  static final List<String> SCREEN_IN_MEMORY =
      List.of(
          "-Dglass.platform=Monocle",
          "-Dmonocle.platform=Headless",
          "-Dprism.order=sw",
          "-Xmx256m");

  /** Longest wait for a window on a busy machine, s, and longest life of one after that, ms. */
  private static final int START = 300;

  private static final int LIFE = 20_000;

  @TempDir Path dir;

  private final SplittableRandom random = new SplittableRandom(SEED);
  private final List<String> failures = new ArrayList<>();

  @Test
  void editsInTheWindowSurviveKills() throws Exception {
    HardTable.Tally tally = new HardTable.Tally("kill -9: edits in the window", SEED);
    Path folder = Files.createDirectories(dir.resolve("project"));
    Path lip = folder.resolve("lip.json");
    long sure = 0;
    int kills = Victim.kills() / 5;
    for (int k = 0; k < kills; k++) {
      List<String> told = killed(folder, k);
      tally.tried++;
      long begins = number(told, "begins");
      tally.hung += begins < 0 ? 1 : 0;
      if (begins < sure || told.stream().anyMatch(line -> line.startsWith("refused"))) {
        tally.lost++;
        failures.add("kill " + k + ": " + sure + " edits were sure, told " + told);
      }
      sure = Math.max(begins, Math.max(number(told, "saved"), number(told, "settled")));
      RescueStore.Left left = new RescueStore(new ProjectFolder(folder).rescue()).left();
      long kept = Killed.edits(lip);
      for (RescueStore.Rescued one : left.drawings()) {
        kept = Math.max(kept, Killed.edits(one.drawing()));
      }
      if (kept < sure || !left.refused().isEmpty()) {
        tally.lost++;
        failures.add("kill " + k + ": sure of " + sure + ", kept " + kept);
      }
    }
    HardTable.write(List.of(tally));
    assertThat(failures).isEmpty();
  }

  /** What a window told until it was killed. */
  private List<String> killed(Path folder, int k) throws IOException, InterruptedException {
    Path words = dir.resolve("told" + k);
    List<String> program = List.of(KilledWindow.class.getName(), folder.toString(), "" + k);
    Process window = Victim.java(SCREEN_IN_MEMORY, program, words);
    long start = System.nanoTime();
    while (number(Victim.told(words), "begins") < 0 && window.isAlive()) {
      if (System.nanoTime() - start > TimeUnit.SECONDS.toNanos(START)) {
        stacks(window.pid(), k);
        break;
      }
      Thread.sleep(20);
    }
    Thread.sleep(random.nextInt(random.nextInt(LIFE) + 1));
    window.destroyForcibly();
    window.waitFor();
    return Victim.told(words);
  }

  /** Leaves what the threads of a window that hangs are doing. */
  private static void stacks(long pid, int k) throws IOException, InterruptedException {
    Path left = Files.createDirectories(Path.of("target", "hard")).resolve("window-" + k);
    String jstack = Path.of(System.getProperty("java.home"), "bin", "jstack").toString();
    new ProcessBuilder(jstack, "" + pid).redirectOutput(left.toFile()).start().waitFor();
  }

  /** The largest number told after a word, or -1. */
  static long number(List<String> told, String word) {
    return told.stream()
        .filter(line -> line.startsWith(word + " ") && !line.startsWith("refused"))
        .mapToLong(line -> Long.parseLong(line.substring(word.length() + 1)))
        .max()
        .orElse(-1);
  }
}
