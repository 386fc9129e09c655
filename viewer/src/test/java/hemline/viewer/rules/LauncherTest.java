package hemline.viewer.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher in a folder of its own with a stand-in for Java, which notes each start's arguments
 * one a line and ends as it is told.
 */
class LauncherTest {
  private static final String NOTE =
      """
      #!/bin/sh
      printf '%s\\n' "$@" '' >>"$STARTS"
      case $* in
        -version) echo "openjdk version \\"${VERSION:-17.0.1}\\"" >&2 ;;
        *-Dhemline.keptOnly=true*) eval "$FIRST" ;;
        *) eval "$THEN" ;;
      esac
      """;

  private static final String MAVEN =
      """
      #!/bin/sh
      [ "$1" != -v ] || { echo Apache Maven 3.9.9; exit; }
      echo built >>"$BUILDS"
      sleep 1
      for word; do
        case $word in
          -Dmdep.outputFile=*) printf %s "$STARTS.jar" >"${word#*=}"; : >"$STARTS.jar" ;;
        esac
      done
      """;

  @TempDir Path root;

  private final Map<String, String> more = new HashMap<>();

  private Path launcher;

  @BeforeEach
  void buildIsUpToDate() throws IOException {
    Path java = root.resolve("jdk/bin/java");
    program(java, NOTE);
    launcher = root.resolve("a place/viewer/hemline");
    Files.createDirectories(launcher.resolveSibling("target"));
    Files.copy(Path.of("hemline"), launcher, StandardCopyOption.COPY_ATTRIBUTES);
    Path setup = root.resolve("a place/.ci/setup");
    Files.createDirectories(setup.getParent());
    Files.copy(Path.of("../.ci/setup"), setup, StandardCopyOption.COPY_ATTRIBUTES);
    Path jar = launcher.resolveSibling("target/hemline.jar");
    write(jar, "classes");
    write(launcher.resolveSibling("target/hemline.java"), java.toString());
    write(launcher.resolveSibling("target/hemline.classpath"), jar.toString());
  }

  private static void write(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private static void program(Path file, String text) throws IOException {
    write(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** Stand-ins for the compiler and for Maven, whose build takes a moment; nothing is built yet. */
  private void buildIsMissing() throws IOException {
    program(root.resolve("jdk/bin/javac"), "#!/bin/sh\necho javac 17.0.1\n");
    program(root.resolve("jdk/bin/jar"), "#!/bin/sh\nexit 1\n");
    program(root.resolve("tools/mvn"), MAVEN);
    Files.delete(launcher.resolveSibling("target/hemline.classpath"));
  }

  /** Starts the launcher; what it prints and what is typed are files in the root folder. */
  private Process start(String first, String then, String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of(launcher.toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("JAVA_HOME", root.resolve("jdk").toString());
    builder.environment().put("HEMLINE_SETUP", "no");
    builder.environment().remove("DISPLAY");
    builder.environment().putAll(more);
    builder
        .environment()
        .merge("PATH", root.resolve("tools").toString(), (path, tools) -> tools + ":" + path);
    builder.environment().put("STARTS", root.resolve("starts").toString());
    builder.environment().put("BUILDS", root.resolve("builds").toString());
    builder.environment().put("FIRST", first);
    builder.environment().put("THEN", then);
    write(root.resolve("typed"), "typed\n");
    builder.redirectInput(root.resolve("typed").toFile());
    builder.redirectOutput(root.resolve("out").toFile());
    builder.redirectError(ProcessBuilder.Redirect.appendTo(root.resolve("err").toFile()));
    return builder.start();
  }

  private int run(String first, String then, String... arguments) throws Exception {
    Files.deleteIfExists(root.resolve("starts"));
    Files.deleteIfExists(root.resolve("err"));
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
    assertThat(again.stream().filter(a -> a.contains("Tiered") || a.contains("keptOnly")))
        .isEmpty();
    assertThat(run("exit 75", "exit 75", arguments)).isEqualTo(75);
    assertThat(starts()).hasSize(2);
  }

  @Test
  void otherCommandsStartOnceWithBothCompilers() throws Exception {
    assertThat(run("echo wrong", "exit 75", "run", "balance")).isEqualTo(75);
    assertThat(starts()).hasSize(1);
    assertThat(starts().get(0))
        .endsWith("run", "balance")
        .contains("-XX:Tier4MinInvocationThreshold=30")
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

  @Test
  void theFolderIsFoundThroughALinkToIt() throws Exception {
    Path elsewhere = Files.createDirectories(root.resolve("elsewhere/deep"));
    launcher =
        Files.createSymbolicLink(elsewhere.resolve("v"), launcher.getParent()).resolve("hemline");
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(text("starts")).contains(root.toRealPath() + "/a place/viewer/target/hemline.jar");
  }

  @Test
  void aColonInThePathIsToldInOneSentence() throws Exception {
    Path old = root.resolve("a place");
    Path odd = Files.move(old, root.resolve("a:place"));
    launcher = odd.resolve("viewer/hemline");
    assertThat(run("echo wrong", "echo wrong", "run")).isEqualTo(2);
    assertThat(text("err")).contains("a:place holds a colon").hasLineCount(1);
  }

  @Test
  void aJavaThatIsTooOldIsToldInOneSentence() throws Exception {
    write(launcher.resolveSibling("target/hemline.java"), "/another/java");
    more.put("VERSION", "11.0.2");
    assertThat(run("echo wrong", "echo wrong", "run")).isEqualTo(2);
    assertThat(text("err")).contains("JAVA_HOME names version 11").hasLineCount(1);
    more.put("VERSION", "1.8.0_292");
    assertThat(run("echo wrong", "echo wrong", "run")).isEqualTo(2);
    assertThat(text("err")).contains("JAVA_HOME names version 8").hasLineCount(1);
  }

  @Test
  void homeIsWhatTheUserSaysItIs() throws Exception {
    more.put("HOME", root.toString());
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(starts().get(0)).contains("-Duser.home=" + root);
  }

  /** Such a folder was left by a build that was killed, with the number of another program. */
  @Test
  void aLockLeftBehindHoldsNobodyUp() throws Exception {
    buildIsMissing();
    Path left = Files.createDirectories(launcher.resolveSibling(".build-lock"));
    write(left.resolve("pid"), String.valueOf(ProcessHandle.current().pid()));
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(text("err")).contains("building").doesNotContain("waiting");
    assertThat(text("builds")).hasLineCount(1);
  }

  /** Sources changed after that are older than the program, so their times say nothing. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aProgramFromTheFutureIsBuiltAnew() throws Exception {
    buildIsMissing();
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(text("builds")).hasLineCount(1);
    Path stamp = launcher.resolveSibling("target/hemline.classpath");
    Files.setLastModifiedTime(stamp, FileTime.from(Instant.now().plusSeconds(3600)));
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(text("builds")).hasLineCount(2);
  }

  /** The compiler would take half a class file for a whole one, because it is new. */
  @Test
  void aBuildThatWasKilledIsDoneAnew() throws Exception {
    buildIsMissing();
    Path half = launcher.resolveSibling("../shared/target/classes/Half.class").normalize();
    write(half, "");
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(half).exists();
    Files.delete(launcher.resolveSibling("target/hemline.classpath"));
    write(launcher.resolveSibling("target/hemline.began"), "");
    assertThat(run("echo wrong", "exit 0", "run")).isZero();
    assertThat(half).doesNotExist();
    assertThat(text("builds")).hasLineCount(2);
    assertThat(launcher.resolveSibling("target/hemline.began")).doesNotExist();
  }

  @Test
  void startsAtOnceBuildOnceAndSayThatTheyWait() throws Exception {
    buildIsMissing();
    // a build that was killed leaves the file, but not the lock on it
    write(launcher.resolveSibling(".build-lock"), "process 1 of another");
    List<Process> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      all.add(start("echo wrong", "exit 0", "run"));
    }
    for (Process one : all) {
      assertThat(code(one)).isZero();
    }
    assertThat(text("builds")).hasLineCount(1);
    assertThat(text("err").lines().filter(l -> l.contains("another start builds (process")))
        .hasSize(3);
  }
}
