package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.Seal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MachineRescueTest {
  private static final Program GONE =
      new Program(
          Program.here().computer(), Program.here().machine(), Integer.MAX_VALUE - 7L, null);
  private static final Map<String, String> VALUES = Map.of("fan.speed", "22000rpm");

  @TempDir Path folder;

  private final Path machine = Path.of("crawler.json").toAbsolutePath();

  private Path only() {
    String[] files = Objects.requireNonNull(folder.toFile().list());
    assertThat(files).hasSize(1);
    return folder.resolve(files[0]);
  }

  @Test
  void offersWhatAnEndedProgramLeftForAKnownMachine() throws Exception {
    new MachineRescue(folder, GONE).putBy(machine, VALUES);
    MachineRescue mine = new MachineRescue(folder);
    assertThat(mine.left(List.of(Path.of("cart.json")))).isNull();
    MachineRescue.Left left = Objects.requireNonNull(mine.left(List.of(machine)));
    assertThat(left.machine()).isEqualTo(machine);
    assertThat(left.values()).isEqualTo(VALUES);
    mine.drop(left);
    assertThat(mine.left(List.of(machine))).isNull();
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void whatARunningProgramPutByIsItsOwn() throws Exception {
    MachineRescue running = new MachineRescue(folder);
    running.putBy(machine, VALUES);
    assertThat(new MachineRescue(folder, GONE).left(List.of(machine))).isNull();
    running.putBy(machine, Map.of());
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void aDamagedFileIsSetAsideAndOneOfAnotherVersionStays() throws Exception {
    new MachineRescue(folder, GONE).putBy(machine, VALUES);
    Path file = only();
    String text = Files.readString(file);
    String later = text.replace("machine-rescue/1", "machine-rescue/9");
    Files.writeString(
        file, Seal.close(later.replaceFirst("\"[0-9a-f]{64}\"", "\"" + Seal.BLANK + "\"")));
    assertThat(new MachineRescue(folder).left(List.of(machine))).isNull();
    assertThat(only()).isEqualTo(file);
    Files.writeString(file, text.replace("22000", "33000"));
    assertThat(new MachineRescue(folder).left(List.of(machine))).isNull();
    assertThat(only().toString()).endsWith(".refused");
  }
}
