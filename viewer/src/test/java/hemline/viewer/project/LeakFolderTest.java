package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LeakPointFile;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.viewer.picture.InventedStudies;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LeakFolderTest {
  private static final LeakOrigin ASKED =
      new LeakOrigin("abc", 2e-3, 600, 0, 0, 1.2, 1.5e-5, "coarse", "auto", false);
  private static final LeakPoint POINT = Objects.requireNonNull(InventedStudies.LEAKS.find(ASKED));

  @TempDir Path folder;

  private LeakFolder store() {
    return new LeakFolder(folder, "solver one");
  }

  private Path only() {
    String[] files = Objects.requireNonNull(folder.toFile().list());
    assertThat(files).hasSize(1);
    return folder.resolve(files[0]);
  }

  @Test
  void findsWhatItKept() {
    LeakFolder store = new LeakFolder(folder.resolve("a").resolve("b"), "solver one");
    assertThat(store.find(ASKED)).isNull();
    store.keep(ASKED, POINT);
    assertThat(new LeakFolder(folder.resolve("a").resolve("b"), "solver one").find(ASKED))
        .isEqualTo(POINT);
  }

  @Test
  void theOldestMakeRoomAndOtherFilesStay() throws Exception {
    Path notes = Files.writeString(folder.resolve("my-notes.json"), "{}");
    LeakFolder small = new LeakFolder(folder, "solver one", false, 20);
    List<LeakOrigin> asked = new ArrayList<>();
    for (int k = 0; k < 21; k++) {
      asked.add(new LeakOrigin("abc", 2e-3, 600 + k, 0, 0, 1.2, 1.5e-5, "coarse", "auto", false));
      small.keep(asked.get(k), at(asked.get(k)));
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.toList()) {
          // each a second older than the one after it
          FileTime was = Files.getLastModifiedTime(file);
          Files.setLastModifiedTime(file, FileTime.fromMillis(was.toMillis() - 1000));
        }
      }
    }
    assertThat(Objects.requireNonNull(folder.toFile().list())).hasSize(19);
    assertThat(notes).exists();
    for (int k = 0; k < 21; k++) {
      assertThat(small.find(asked.get(k)) == null).as("point " + k).isEqualTo(k < 3);
    }
  }

  /** Questions that differ in one part each; the last ones also from what the point says. */
  private static List<LeakOrigin> others() {
    return List.of(
        new LeakOrigin("abd", 2e-3, 600, 0, 0, 1.2, 1.5e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2.1e-3, 600, 0, 0, 1.2, 1.5e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2e-3, 601, 0, 0, 1.2, 1.5e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2e-3, 600, 1, 0, 1.2, 1.5e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2e-3, 600, 0, 1, 1.2, 1.5e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2e-3, 600, 0, 0, 1.3, 1.5e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2e-3, 600, 0, 0, 1.2, 1.6e-5, "coarse", "auto", false),
        new LeakOrigin("abc", 2e-3, 600, 0, 0, 1.2, 1.5e-5, "fine", "auto", false),
        new LeakOrigin("abc", 2e-3, 600, 0, 0, 1.2, 1.5e-5, "coarse", "sst", false),
        new LeakOrigin("abc", 2e-3, 600, 0, 0, 1.2, 1.5e-5, "coarse", "auto", true));
  }

  private static LeakPoint at(LeakOrigin asked) {
    return new LeakPoint(
        POINT.lip(),
        asked.gap(),
        asked.suction(),
        asked.groundSpeed(),
        asked.spanwiseSpeed(),
        POINT.status(),
        POINT.regime(),
        POINT.discharge(),
        POINT.lift(),
        POINT.notices());
  }

  @Test
  void aPointOfAnotherQuestionIsNotBelievedWhateverItsName() throws Exception {
    store().keep(ASKED, POINT);
    Path file = only();
    for (LeakOrigin other : others()) {
      assertThat(store().find(other)).isNull();
      // the file of the other question under the name of this one, soundly sealed
      Files.writeString(file, LeakPointFile.text(at(other), other, "solver one", false));
      assertThat(store().find(ASKED)).as(other.text()).isNull();
    }
    Files.writeString(file, LeakPointFile.text(POINT, ASKED, "solver two", false));
    assertThat(store().find(ASKED)).isNull();
    Files.writeString(file, LeakPointFile.text(POINT, ASKED, "solver one", false));
    assertThat(store().find(ASKED)).isEqualTo(POINT);
  }

  @Test
  void aPointChangedByHandIsNotBelieved() throws Exception {
    store().keep(ASKED, POINT);
    Path file = only();
    String text = Files.readString(file);
    assertThat(text).contains("0.7");
    Files.writeString(file, text.replace("0.7", "0.3"));
    assertThat(store().find(ASKED)).isNull();
    // and once the section is solved again, the file is sound
    store().keep(ASKED, POINT);
    assertThat(store().find(ASKED)).isEqualTo(POINT);
  }

  @Test
  void inventedPointsAreTakenInARehearsalAlone() {
    new LeakFolder(folder, "solver one", true).keep(ASKED, POINT);
    assertThat(store().find(ASKED)).isNull();
    assertThat(new LeakFolder(folder, "solver one", true).find(ASKED)).isEqualTo(POINT);
    store().keep(ASKED, POINT);
    assertThat(new LeakFolder(folder, "solver one", true).find(ASKED)).isNull();
  }

  @Test
  void aSolverThatIsNotKnownBelievesNothing() {
    LeakFolder store = new LeakFolder(folder, Engine.UNKNOWN);
    store.keep(ASKED, POINT);
    assertThat(store.find(ASKED)).isNull();
  }

  @Test
  void takesABrokenFileForNone() throws Exception {
    store().keep(ASKED, POINT);
    Path file = only();
    for (String text : List.of("", "{\"schema\": \"hemline.leak/3\"", "{\"schema\": \"x\"}")) {
      Files.writeString(file, text);
      assertThat(store().find(ASKED)).isNull();
    }
  }

  @Test
  void worksOnWhereNothingCanBeKept() throws Exception {
    Path file = folder.resolve("file");
    Files.writeString(file, "in the way");
    LeakFolder store = new LeakFolder(file, "solver one");
    store.keep(ASKED, POINT);
    assertThat(store.find(ASKED)).isNull();
  }
}
