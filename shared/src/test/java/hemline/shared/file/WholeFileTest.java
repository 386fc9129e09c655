package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that appear whole, for whom the mask says, and never through a planted link. */
final class WholeFileTest {
  private static final byte[] NEW = "new".getBytes(StandardCharsets.UTF_8);

  @TempDir Path dir;

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(dir)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void aFileTakesThePlaceOfTheOldOneAndLeavesNothingBeside() throws Exception {
    Path file = Files.writeString(dir.resolve("one.txt"), "old");
    WholeFile.write(file, NEW);
    assertThat(file).hasContent("new");
    Files.writeString(file, "older");
    WholeFile.writeUnsynced(file, NEW);
    assertThat(file).hasContent("new");
    assertThat(names()).containsExactly("one.txt");
  }

  @Test
  void aFailureLeavesTheOldFileAndNothingBeside() throws Exception {
    Files.createDirectories(dir.resolve("full/inside"));
    assertThatThrownBy(() -> WholeFile.write(dir.resolve("full"), NEW))
        .isInstanceOf(IOException.class);
    assertThat(names()).containsExactly("full");
    assertThat(dir.resolve("full/inside")).isDirectory();
  }

  @Test
  void aTrialLeavesNothing() throws Exception {
    WholeFile.tryIn(dir);
    assertThat(names()).isEmpty();
    assertThatThrownBy(() -> WholeFile.tryIn(dir.resolve("missing")))
        .isInstanceOf(IOException.class);
  }

  @Test
  void aLinkOfTheNameIsReplacedAndNotFollowed() throws Exception {
    Path foreign = Files.writeString(dir.resolve("foreign"), "theirs");
    Path link = Files.createSymbolicLink(dir.resolve("result.json"), foreign);
    WholeFile.write(link, NEW);
    assertThat(foreign).hasContent("theirs");
    assertThat(link).isRegularFile().hasContent("new");
    assertThat(Files.isSymbolicLink(link)).isFalse();
    Files.delete(link);
    Files.createSymbolicLink(link, foreign);
    WholeFile.writeUnsynced(link, NEW);
    assertThat(foreign).hasContent("theirs");
    assertThat(Files.isSymbolicLink(link)).isFalse();
  }

  /**
   * The name of a draft once followed from process, thread and file; a link there was written to.
   */
  @Test
  void aLinkPlantedWhereADraftCouldBeIsNotFollowed() throws Exception {
    Path foreign = Files.writeString(dir.resolve("foreign"), "theirs");
    String unique = ProcessHandle.current().pid() + "-" + Thread.currentThread().getId();
    Files.createSymbolicLink(dir.resolve(".lip.json." + unique + ".part"), foreign);
    TextFiles.write(dir.resolve("lip.json"), "new");
    assertThat(foreign).hasContent("theirs");
    assertThat(dir.resolve("lip.json")).isRegularFile().hasContent("new");
  }

  /** A lip file that is a link, into a shared folder perhaps, stays one when it is saved. */
  @Test
  void aLipFileThatIsALinkStaysOne() throws Exception {
    Path real = Files.writeString(dir.resolve("real.json"), "old");
    Path link = Files.createSymbolicLink(dir.resolve("link.json"), real);
    TextFiles.write(link, "new");
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(real).hasContent("new");
  }

  @Test
  void whoMayReadFollowsFromTheMask() throws Exception {
    for (String mask : List.of("077", "027", "022")) {
      Path file = dir.resolve("mask-" + mask);
      Process process =
          new ProcessBuilder(
                  "sh",
                  "-c",
                  "umask " + mask + "; exec \"$@\"",
                  "sh",
                  ProcessHandle.current().info().command().orElseThrow(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  Once.class.getName(),
                  file.toString())
              .inheritIO()
              .start();
      assertThat(process.waitFor()).isZero();
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
          .isEqualTo(
              switch (mask) {
                case "077" -> "rw-------";
                case "027" -> "rw-r-----";
                default -> "rw-r--r--";
              });
    }
  }

  /** Writes the file that its argument names. */
  static final class Once {
    private Once() {}

    public static void main(String[] args) throws Exception {
      WholeFile.write(Path.of(args[0]), NEW);
    }
  }
}
