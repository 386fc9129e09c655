package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.viewer.project.InventedLeaks;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RescueStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Programs that are killed (SIGKILL) at random moments: nothing but the last edit is lost, and no
 * file has its final name before it is whole.
 */
final class KillTest {
  private static final long SEED = 11;
  private static final String PROFILES = Path.of("..", "profiles").toAbsolutePath().toString();

  @TempDir Path dir;

  private final SplittableRandom random = new SplittableRandom(SEED);
  private final List<String> failures = new ArrayList<>();

  @Test
  void editsSurviveAKill() throws Exception {
    edits(1);
    assertThat(failures).isEmpty();
  }

  @Tag("hard")
  @Test
  void manyKills() throws Exception {
    int kills = Victim.kills();
    int results = kills / 10;
    HardTable.write(List.of(edits(kills / 2)));
    String leaks = dir.resolve("leaks").toString();
    String crawler = PROFILES + "/machines/silo-wall-crawler.json";
    InventedLeaks.main(new String[] {leaks, crawler});
    List<String> balance = List.of("balance", crawler, "--keep", leaks, "--out");
    HardTable.write(List.of(results("balance", results, balance)));
    List<String> ranking =
        List.of(
            "rank",
            PROFILES + "/plain-flat-8.json",
            PROFILES + "/knife-fin.json",
            "--gaps",
            "0.3mm",
            "--suction",
            "20Pa",
            "--mesh",
            "coarse",
            "--out");
    HardTable.write(List.of(results("ranking", results, ranking)));
    assertThat(failures).isEmpty();
  }

  private HardTable.Tally edits(int kills) throws Exception {
    HardTable.Tally tally = new HardTable.Tally("kill -9: edits of a lip", SEED);
    for (int k = 0; k < kills; k++) {
      Path folder = Files.createDirectories(dir.resolve("edits" + k));
      Path words = dir.resolve("told" + k);
      Process program =
          Victim.java(List.of(), List.of(Killed.class.getName(), folder.toString()), words);
      while (Files.size(words) == 0 && program.isAlive()) {
        Thread.sleep(5);
      }
      Thread.sleep(random.nextInt(600));
      program.destroyForcibly();
      program.waitFor();
      long told = 0;
      long saved = 0;
      String all = Files.readString(words);
      for (String line : all.substring(0, all.lastIndexOf('\n') + 1).lines().toList()) {
        told = Long.parseLong(line.substring(line.indexOf(' ') + 1));
        saved = line.startsWith("saved") ? told : saved;
      }
      tally.tried++;
      Path lip = folder.resolve("lip.json");
      RescueStore.Left left = new RescueStore(new ProjectFolder(folder).rescue()).left();
      long kept = Killed.edits(lip);
      boolean sound = kept >= saved && left.refused().isEmpty();
      for (RescueStore.Rescued one : left.drawings()) {
        kept = Math.max(kept, Killed.edits(one.drawing()));
        sound &= lip.equals(one.file());
      }
      if (kept < told || !sound) {
        tally.lost++;
        failures.add("kill " + k + ": told " + told + ", saved " + saved + ", kept " + kept);
      }
    }
    return tally;
  }

  private HardTable.Tally results(String name, int kills, List<String> command) throws Exception {
    HardTable.Tally tally = new HardTable.Tally("kill -9: " + name + " with --out", SEED);
    Path out = dir.resolve(name);
    long whole = run(command, out, Long.MAX_VALUE);
    for (int k = 0; k < kills; k++) {
      run(command, out, (long) (whole * random.nextDouble(0.3, 1.1)));
      tally.tried++;
      for (String broken : broken(out)) {
        tally.lost++;
        failures.add(name + " " + k + ": " + broken + " is not whole");
      }
    }
    assertThat(run(command, out, Long.MAX_VALUE)).as("the next start").isPositive();
    return tally;
  }

  /** Runs a command to its end or for a time, ns; answers how long it took. */
  private long run(List<String> command, Path out, long limit) throws Exception {
    List<String> program = new ArrayList<>(List.of("hemline.viewer.app.Main"));
    program.addAll(command);
    program.add(out.toString());
    String cache = "-Dhemline.rehearsal=true";
    long start = System.nanoTime();
    Process running = Victim.java(List.of(cache), program, dir.resolve("told"));
    if (!running.waitFor(limit, TimeUnit.NANOSECONDS)) {
      running.destroyForcibly();
    }
    int code = running.waitFor();
    if (limit == Long.MAX_VALUE) {
      assertThat(code).isZero();
    }
    return System.nanoTime() - start;
  }

  /** Files with a final name that are not whole. */
  private static List<String> broken(Path folder) throws IOException {
    List<String> broken = new ArrayList<>();
    if (!Files.isDirectory(folder)) {
      return broken;
    }
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = file.getFileName().toString();
        if (!name.endsWith(".part") && !whole(file, name)) {
          broken.add(name);
        }
      }
    }
    return broken;
  }

  private static boolean whole(Path file, String name) throws IOException {
    String end = name.substring(name.lastIndexOf('.') + 1);
    try {
      return switch (end) {
        case "png" -> ImageIO.read(file.toFile()) != null;
        case "json" -> new ObjectMapper().readTree(file.toFile()).has("schema");
        case "svg" -> Files.readString(file).endsWith("</svg>\n");
        case "html" -> Files.readString(file).strip().endsWith("</html>");
        default -> Files.readString(file).endsWith("\n");
      };
    } catch (com.fasterxml.jackson.core.JsonProcessingException | javax.imageio.IIOException e) {
      return false;
    }
  }
}
