package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.profile.Starter;
import hemline.viewer.app.KilledWindow;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RescueStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Folders that two programs share, that lie on a slow drive or that are closed to the user. */
@Tag("hard")
@EnabledOnOs(OS.LINUX)
final class FoldersTest {
  private static final Path FLAT = Path.of("../profiles/plain-flat-8.json").toAbsolutePath();

  @TempDir Path dir;

  /** Starts a program that edits the lip of the project and waits until it has told something. */
  private Process editing(Path folder, Path words) throws IOException, InterruptedException {
    Process program =
        Victim.java(List.of(), List.of(Killed.class.getName(), folder.toString()), words);
    while (Victim.told(words).isEmpty() && program.isAlive()) {
      Thread.sleep(5);
    }
    return program;
  }

  @Test
  void twoProgramsOnOneProjectLeaveItWhole() throws Exception {
    HardTable.Tally tally = new HardTable.Tally("two programs on one project: reads", 0);
    Path folder = Files.createDirectories(dir.resolve("project"));
    RescueStore third = new RescueStore(new ProjectFolder(folder).rescue());
    Process one = editing(folder, dir.resolve("one"));
    Process two = editing(folder, dir.resolve("two"));
    for (int k = 0; k < 1000; k++) {
      tally.tried++;
      Killed.edits(folder.resolve("lip.json"));
      RescueStore.Left left = third.left();
      // a drawing that is open in a program belongs to it, and none is ever half written
      assertThat(left.refused()).isEmpty();
      assertThat(left.drawings()).isEmpty();
      tally.read++;
      Thread.sleep(2);
    }
    assertThat(one.isAlive() && two.isAlive()).isTrue();
    one.destroyForcibly().waitFor();
    two.destroyForcibly().waitFor();
    RescueStore.Left left = third.left();
    assertThat(left.refused()).isEmpty();
    assertThat(left.drawings()).hasSizeLessThanOrEqualTo(2);
    HardTable.write(List.of(tally));
  }

  /** Every write takes 6 s; needs strace. The screen goes on, and the drawing is put by. */
  @Test
  void aSlowDriveDoesNotHoldUpTheScreen() throws Exception {
    Assumptions.assumeTrue(Files.isExecutable(Path.of("/usr/bin/strace")), "there is no strace");
    Path folder = Files.createDirectories(dir.resolve("project"));
    LipFile.write(folder.resolve("lip.json"), new Starter.Flat(KilledWindow.WIDTH, 0.01).drawing());
    Path words = dir.resolve("told");
    List<String> slow =
        List.of(
            "strace",
            "-f",
            "-qqq",
            "-o",
            "/dev/null",
            "--seccomp-bpf",
            "-e",
            "trace=fsync,fdatasync,rename,renameat2",
            "-e",
            "inject=fsync,fdatasync,rename,renameat2:delay_enter=6000000");
    List<String> program = List.of(KilledWindow.class.getName(), folder.toString(), "-1");
    Process window = Victim.java(slow, WindowKillTest.SCREEN_IN_MEMORY, program, words);
    long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(8);
    while (number(words, "settled") < 1 && System.nanoTime() < end) {
      Thread.sleep(100);
    }
    List<ProcessHandle> java = window.descendants().toList();
    java.forEach(ProcessHandle::destroyForcibly);
    java.forEach(one -> one.onExit().join());
    window.destroyForcibly().waitFor();
    List<String> told = Victim.told(words);
    HardTable.Tally tally = new HardTable.Tally("project on a slow drive: windows", 0);
    tally.tried++;
    tally.lost += number(words, "settled") < 1 ? 1 : 0;
    tally.hung += number(words, "late") > 5000 ? 1 : 0;
    HardTable.write(List.of(tally));
    assertThat(number(words, "settled")).as(told.toString()).isPositive();
    assertThat(number(words, "late")).as("ms, " + told).isLessThan(5000);
    assertThat(new RescueStore(new ProjectFolder(folder).rescue()).left().drawings()).hasSize(1);
  }

  private static long number(Path words, String word) throws IOException {
    return WindowKillTest.number(Victim.told(words), word);
  }

  @Test
  void whatIsNotPermittedIsTold() throws Exception {
    Path closed = Files.createDirectories(dir.resolve("closed"));
    Path open = Files.createDirectories(dir.resolve("open"));
    Path secret = Files.copy(FLAT, open.resolve("secret.json"));
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("---------"));
    Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
    List<String> run = List.of("run", FLAT.toString(), "--gap", "2mm", "--suction", "600Pa");
    List<List<String>> all = new ArrayList<>();
    all.add(with(run, "--out", closed.toString()));
    all.add(with(run, "--out", closed.resolve("new").toString()));
    all.add(List.of("run", secret.toString(), "--gap", "2mm", "--suction", "600Pa"));
    all.add(List.of("convert", FLAT.toString(), closed.resolve("a.dxf").toString()));
    all.add(List.of("rank", secret.toString(), "--gaps", "2mm", "--suction", "600Pa"));
    HardTable.Tally tally = new HardTable.Tally("no permission", 0);
    for (List<String> words : all) {
      tally.tried++;
      Path out = dir.resolve("out");
      Path err = dir.resolve("err");
      Process program =
          Victim.java(
              unprivileged(), List.of(), with(List.of("hemline.viewer.app.Main"), words), out, err);
      assertThat(program.waitFor()).as(words.toString()).isEqualTo(2);
      assertThat(Files.readString(err))
          .as(words.toString())
          .startsWith("hemline: ")
          .hasLineCount(1)
          .doesNotContain("Exception");
      tally.refused++;
    }
    Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwxr-xr-x"));
    HardTable.write(List.of(tally));
  }

  private static List<String> with(List<String> words, String... more) {
    return with(words, List.of(more));
  }

  private static List<String> with(List<String> words, List<String> more) {
    List<String> all = new ArrayList<>(words);
    all.addAll(more);
    return all;
  }

  /** Root may write everywhere, unless it gives that up. */
  private static List<String> unprivileged() {
    boolean root = "root".equals(System.getProperty("user.name"));
    return root
        ? List.of("setpriv", "--bounding-set=-dac_override,-dac_read_search", "--inh-caps=-all")
        : List.of();
  }
}
