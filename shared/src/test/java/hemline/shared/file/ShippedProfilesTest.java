package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.geometry.Ring;
import hemline.shared.problem.InputException;
import hemline.shared.profile.MountEdge;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ShippedProfilesTest {
  private static final Path PROFILES = Path.of("..", "profiles");

  @Test
  void allAreSoundPrintableAndMarkedAsInvented() throws InputException {
    List<LoadedLip> lips = LipFile.loadFolder(PROFILES);
    assertThat(lips).hasSizeGreaterThanOrEqualTo(11);
    for (LoadedLip lip : lips) {
      String name = lip.profile().name();
      assertThat(lip.notices()).as(name).isEmpty();
      assertThat(lip.drawing().invented()).as(name).isTrue();
      Ring ring = lip.profile().outline().flatten();
      assertThat(DoubleStream.of(ring.y()).min().orElseThrow()).as(name).isZero();
      assertThat(DoubleStream.of(ring.x()).min().orElseThrow()).as(name).isZero();
      assertThat(MountEdge.of(lip.profile()).y()).as(name).isEqualTo(0.01);
      assertThat(MountEdge.of(lip.profile()).width()).as(name).isGreaterThanOrEqualTo(0.006);
    }
  }

  @Test
  void holdTheBaseline() throws InputException {
    assertThat(LipFile.loadFolder(PROFILES))
        .extracting(l -> l.profile().name())
        .contains("plain flat 8", "plain flat 14");
  }

  @Test
  void areLaidOutAsTheProgramWritesThem() throws Exception {
    try (Stream<Path> files = Files.list(PROFILES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
        String text = Files.readString(file);
        if (text.contains("hemline.lip/")) {
          assertThat(LipFile.text(LipFile.read(file))).as(file.toString()).isEqualTo(text);
        }
      }
    }
  }
}
