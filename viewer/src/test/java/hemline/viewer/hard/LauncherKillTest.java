package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Builds by the launcher in a copy of the sources, killed (SIGKILL) at random moments, all of them
 * or the launcher alone: no file has its final name before it is whole, nobody waits for a lock
 * that was left, and the next build that runs through gives the program.
 */
@Tag("hard")
final class LauncherKillTest {
  private static final long SEED = 17;
  private static final Set<String> LEFT_OUT = Set.of("target", ".git", ".build-lock");

  @TempDir Path dir;

  private final SplittableRandom random = new SplittableRandom(SEED);
  private final List<String> failures = new ArrayList<>();
  private final List<ProcessHandle> orphans = new ArrayList<>();

  @Test
  void buildsSurviveKills() throws Exception {
    Path root = Files.createDirectories(dir.resolve("checkout"));
    copy(Path.of("..").toAbsolutePath().normalize(), root);
    HardTable.Tally tally = new HardTable.Tally("kill -9: a build by the launcher", SEED);
    for (int k = 0; k < Victim.kills() / 10; k++) {
      if (random.nextInt(4) == 0) {
        delete(root.resolve("viewer/target"));
      }
      Files.writeString(root.resolve("pom.xml"), "\n", StandardOpenOption.APPEND);
      long life = TimeUnit.SECONDS.toMillis(Integer.getInteger("hemline.hard.build", 40));
      killed(root, random.nextLong(life));
      tally.tried++;
      int before = failures.size();
      sound(root, k);
      tally.lost += failures.size() - before;
    }
    orphans.forEach(one -> one.onExit().join());
    // the next start builds what is missing, without waiting for anybody, and has the program
    assertThat(launcher(root, "--version").waitFor()).as(told("err")).isZero();
    assertThat(told("err")).doesNotContain("waiting");
    works(root);
    sound(root, tally.tried);
    HardTable.write(List.of(tally));
    assertThat(failures).isEmpty();
  }

  /** Builds and is killed after a time, ms, alone or with all that it has started. */
  private void killed(Path root, long life) throws Exception {
    Process launcher = launcher(root, "--version");
    if (!launcher.waitFor(life, TimeUnit.MILLISECONDS)) {
      List<ProcessHandle> started = launcher.descendants().toList();
      launcher.destroyForcibly();
      if (random.nextInt(4) > 0) {
        started.forEach(ProcessHandle::destroyForcibly);
      }
      orphans.addAll(started);
    }
    launcher.waitFor();
  }

  private Process launcher(Path root, String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(root.resolve("viewer/hemline").toString()));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("HEMLINE_SETUP", "no");
    builder.redirectOutput(dir.resolve("out").toFile());
    builder.redirectError(dir.resolve("err").toFile());
    return builder.start();
  }

  private String told(String stream) throws IOException {
    return Files.readString(dir.resolve(stream));
  }

  private void works(Path root) throws Exception {
    Path flat = root.resolve("profiles/plain-flat-8.json");
    Process run =
        launcher(
            root,
            "run",
            flat.toString(),
            "--gap",
            "0.3mm",
            "--suction",
            "20Pa",
            "--mesh",
            "coarse");
    assertThat(run.waitFor()).as(told("err")).isZero();
    assertThat(told("out")).contains("leak flow");
    assertThat(told("err")).doesNotContain("building");
  }

  /** What has its final name is whole: the class path names what is there, the jar opens. */
  private void sound(Path root, int k) throws IOException {
    Path target = root.resolve("viewer/target");
    Path stamp = target.resolve("hemline.classpath");
    if (Files.exists(stamp)) {
      for (String part : Files.readString(stamp).split(":")) {
        if (!Files.exists(Path.of(part))) {
          failures.add("kill " + k + ": the class path names " + part);
        }
      }
    }
    Path jar = target.resolve("hemline.jar");
    if (Files.exists(jar)) {
      try (ZipFile file = new ZipFile(jar.toFile())) {
        if (file.getEntry("hemline/viewer/app/Main.class") == null) {
          failures.add("kill " + k + ": the jar has no program");
        }
      } catch (IOException e) {
        failures.add("kill " + k + ": the jar is not whole");
      }
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.walkFileTree(
        from,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes a)
              throws IOException {
            if (LEFT_OUT.contains(folder.getFileName().toString())) {
              return FileVisitResult.SKIP_SUBTREE;
            }
            Files.createDirectories(to.resolve(from.relativize(folder).toString()));
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes a) throws IOException {
            if (!LEFT_OUT.contains(file.getFileName().toString())) {
              Files.copy(
                  file,
                  to.resolve(from.relativize(file).toString()),
                  StandardCopyOption.COPY_ATTRIBUTES);
            }
            return FileVisitResult.CONTINUE;
          }
        });
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(one);
      }
    }
  }
}
