package hemline.viewer.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher in a folder of its own with a stand-in for Java, which notes each start's arguments
 * one a line and ends as it is told.
 */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {
  private static final String NOTE =
      """
      #!/bin/sh
      printf '%s\\n' "$@" '' >>"$STARTS"
      case $* in
        *-Dhemline.keptOnly=true*) eval "$FIRST" ;;
        *) eval "$THEN" ;;
      esac
      """;

  @TempDir Path root;

  private Path launcher;

  @BeforeEach
  void buildIsUpToDate() throws IOException {
    Path java = root.resolve("jdk/bin/java");
    write(java, NOTE);
    Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
    launcher = root.resolve("a place/viewer/hemline");
    Files.createDirectories(launcher.resolveSibling("target"));
    Files.copy(Path.of("hemline"), launcher, StandardCopyOption.COPY_ATTRIBUTES);
    Path jar = launcher.resolveSibling("target/hemline.jar");
    write(jar, "classes");
    write(launcher.resolveSibling("target/hemline.java"), java.toString());
    write(launcher.resolveSibling("target/hemline.classpath"), jar.toString());
  }

  private static void write(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  /** Starts the launcher; what it prints and what is typed are files in the root folder. */
  private Process start(String first, String then, String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of(launcher.toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("JAVA_HOME", root.resolve("jdk").toString());
    builder.environment().put("STARTS", root.resolve("starts").toString());
    builder.environment().put("FIRST", first);
    builder.environment().put("THEN", then);
    write(root.resolve("typed"), "typed\n");
    builder.redirectInput(root.resolve("typed").toFile());
    builder.redirectOutput(root.resolve("out").toFile());
    builder.redirectError(root.resolve("err").toFile());
    return builder.start();
  }

  private int run(String first, String then, String... arguments) throws Exception {
    Files.deleteIfExists(root.resolve("starts"));
    return code(start(first, then, arguments));
  }

  private static int code(Process process) throws InterruptedException {
    assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
    return process.exitValue();
  }

  private String text(String name) throws IOException {
    return Files.readString(root.resolve(name), StandardCharsets.UTF_8);
  }

  private List<List<String>> starts() throws IOException {
    return List.of(text("starts").strip().split("\n\n")).stream()
        .map(one -> List.of(one.split("\n")))
        .toList();
  }

  @Test
  void aBalanceOfKeptSectionsIsOneStart() throws Exception {
    for (int code : new int[] {0, 1, 2, 130}) {
      assertThat(run("cat; exit " + code, "echo wrong", "balance", "m.json")).isEqualTo(code);
      assertThat(starts()).hasSize(1);
      assertThat(starts().get(0)).contains("-XX:TieredStopAtLevel=1");
      assertThat(text("out")).isEqualTo("typed\n");
      assertThat(text("err")).isEmpty();
    }
  }

  @Test
  void aBalanceWithMissingSectionsStartsAgainAtFullSpeed() throws Exception {
    String[] arguments = {"balance", "my machine.json", "--out", "a  b", "*", "$HOME", "'\"", "é"};
    assertThat(run("exit 75", "cat; exit 1", arguments)).isEqualTo(1);
    assertThat(text("out")).isEqualTo("typed\n");
    assertThat(text("err")).isEmpty();
    assertThat(starts()).hasSize(2);
    assertThat(starts().get(0)).endsWith(arguments);
    List<String> again = starts().get(1);
    assertThat(again).endsWith(arguments);
    assertThat(again.stream().filter(a -> a.contains("Tier") || a.contains("keptOnly"))).isEmpty();
    assertThat(run("exit 75", "exit 75", arguments)).isEqualTo(75);
    assertThat(starts()).hasSize(2);
  }

  @Test
  void otherCommandsStartOnceWithBothCompilers() throws Exception {
    assertThat(run("echo wrong", "exit 75", "run", "balance")).isEqualTo(75);
    assertThat(starts()).hasSize(1);
    assertThat(starts().get(0))
        .endsWith("run", "balance")
        .doesNotContain("-XX:TieredStopAtLevel=1");
    assertThat(run("echo wrong", "exit 0", "run", "--help")).isZero();
    assertThat(starts().get(0)).contains("-XX:TieredStopAtLevel=1");
    assertThat(run("echo wrong", "exit 2")).isEqualTo(2);
    assertThat(starts().get(0)).contains("-XX:TieredStopAtLevel=1");
  }

  /** After the first start the launcher is Java itself, so that a signal to it needs no way. */
  @Test
  void aSignalEndsEitherStart() throws Exception {
    Process first = start("echo on; sleep 1; exit 75", "echo wrong", "balance", "m.json");
    awaitOn();
    first.destroy();
    assertThat(code(first)).isEqualTo(130);
    assertThat(text("out")).isEqualTo("on\n");

    Process second =
        start(
            "exit 75", "trap 'exit 7' TERM; echo on; while :; do sleep 0.1; done", "balance", "m");
    awaitOn();
    second.destroy();
    assertThat(code(second)).isEqualTo(7);
  }

  private void awaitOn() throws Exception {
    for (int i = 0; i < 600 && !text("out").equals("on\n"); i++) {
      Thread.sleep(100);
    }
  }
}
