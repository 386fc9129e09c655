package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.file.LipFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import hemline.shared.result.LeakOrigin;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.KeptResults;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.StudyStore;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Disks that are full or must not be written, homes that are missing, clocks, large folders. */
final class FaultsTest {
  private static final LeakOrigin ASKED = SampleResults.ASKED;

  @TempDir Path dir;

  private static LipDrawing lip(double width) {
    return new Starter.Flat(width, 10e-3).drawing();
  }

  /** Everything that the window keeps is told or let go; nothing sound is harmed. */
  private static void writesFail(Path project) throws Exception {
    ProjectFolder folder = new ProjectFolder(project);
    RescueStore rescue = new RescueStore(folder.rescue());
    assertThatThrownBy(
            () ->
                rescue.putBy(
                    List.of(new RescueStore.Open(lip(8e-3), Map.of(), null, "")), Instant.EPOCH))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("cannot be put by");
    rescue.clear();
    StudyStore studies = new StudyStore(folder.studies(), "engine");
    KeptStudy study = Kept.study(LipFile.load(Path.of("../profiles/knife-fin.json")).profile());
    assertThatThrownBy(() -> studies.keep(study))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("cannot be kept");
    assertThat(studies.all().studies()).isEmpty();
    var leaks = KeptResults.leaks(project.resolve("leaks"), "engine");
    leaks.keep(ASKED, InventedStudies.LEAKS.find(ASKED));
    assertThat(leaks.find(ASKED)).isNull();
    new RecentPlaces(project.resolve("settings/recent.json")).used(Path.of("a.json"));
  }

  @Test
  void aMissingHomeIsToldOrLetGo() throws Exception {
    Path nowhere = Path.of("/proc/no-such-home/hemline");
    writesFail(nowhere);
    assertThat(new ProjectFolder(nowhere).lips().lips()).isEmpty();
    assertThat(new RescueStore(new ProjectFolder(nowhere).rescue()).left().drawings()).isEmpty();
    assertThatThrownBy(() -> LipFile.write(nowhere.resolve("a.json"), lip(8e-3)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("make it first");
  }

  @Test
  void aClockSetBackHarmsNothing() throws Exception {
    ProjectFolder folder = new ProjectFolder(dir);
    RescueStore rescue = new RescueStore(folder.rescue());
    rescue.putBy(
        List.of(new RescueStore.Open(lip(8e-3), Map.of(), null, "")),
        Instant.parse("2099-01-01T00:00:00Z"));
    rescue.putBy(
        List.of(new RescueStore.Open(lip(9e-3), Map.of(), null, "")),
        Instant.parse("1999-01-01T00:00:00Z"));
    assertThat(rescue.left().refused()).isEmpty();
    rescue.clear();
  }

  @Test
  void aThousandLipsAreRead() throws Exception {
    for (int k = 0; k < 1000; k++) {
      String text = LipFile.text(lip(4e-3 + 1e-6 * k)).replaceFirst("\"name\": \"", "$0" + k + " ");
      Files.writeString(dir.resolve(k + ".json"), text);
    }
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    assertThat(new ProjectFolder(dir).lips().lips()).hasSize(1000);
    assertThat(1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before))
        .isLessThan(10);
  }

  private static boolean ended(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(command).start().waitFor() == 0;
  }

  /** Needs to be allowed to mount. */
  @Tag("hard")
  @Test
  void aFullDiskAndOneThatMustNotBeWritten() throws Exception {
    Path disk = Files.createDirectories(dir.resolve("disk"));
    Assumptions.assumeTrue(
        ended("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", disk.toString()),
        "mounting is not allowed here");
    HardTable.Tally full = new HardTable.Tally("full disk", 0);
    HardTable.Tally readOnly = new HardTable.Tally("disk that must not be written", 0);
    try {
      Path file = disk.resolve("lip.json");
      LipFile.write(file, lip(8e-3));
      String sound = Files.readString(file);
      try {
        Files.write(disk.resolve("filler"), new byte[1 << 20]);
      } catch (IOException e) {
        // that is the point
      }
      writesFail(disk.resolve("project"));
      assertThatThrownBy(() -> LipFile.write(file, lip(9e-3))).isInstanceOf(InputException.class);
      assertThat(file).hasContent(sound);
      full.tried += 5;
      full.refused += 5;
      Files.delete(disk.resolve("filler"));
      assertThat(ended("mount", "-o", "remount,ro", disk.toString())).isTrue();
      writesFail(disk.resolve("project"));
      assertThatThrownBy(() -> LipFile.write(file, lip(9e-3))).isInstanceOf(InputException.class);
      assertThat(file).hasContent(sound);
      readOnly.tried += 5;
      readOnly.refused += 5;
    } finally {
      ended("umount", disk.toString());
    }
    HardTable.write(List.of(full, readOnly));
  }
}
