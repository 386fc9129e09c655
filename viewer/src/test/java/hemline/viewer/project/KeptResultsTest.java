package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import hemline.viewer.hard.SampleResults;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptResultsTest {
  private static final LeakOrigin ASKED = SampleResults.ASKED;
  private static final SectionResult RESULT = SampleResults.whole();

  @TempDir Path folder;

  private Path only() throws Exception {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).findFirst().orElseThrow();
    }
  }

  @Test
  void findsToTheLastBitWhatItKept() {
    KeptResults store = new KeptResults(folder.resolve("a"), "one");
    assertThat(store.find(ASKED)).isNull();
    store.keep(ASKED, RESULT);
    assertThat(new KeptResults(folder.resolve("a"), "one").find(ASKED)).isEqualTo(RESULT);
  }

  @Test
  void neitherAnotherSolverNorAnotherQuestionFindsIt() throws Exception {
    new KeptResults(folder, "one").keep(ASKED, RESULT);
    assertThat(new KeptResults(folder, "two").find(ASKED)).isNull();
    LeakOrigin other = new LeakOrigin("abc", 2e-3, 601, 0, 0, 1.2, 1.5e-5, "coarse", "auto", false);
    assertThat(new KeptResults(folder, "one").find(other)).isNull();
    // nor under the other's name
    Path mine = only();
    KeptResults store = new KeptResults(folder.resolve("other"), "one");
    store.keep(other, RESULT);
    Path place;
    try (Stream<Path> files = Files.walk(folder.resolve("other"))) {
      place = files.filter(Files::isRegularFile).findFirst().orElseThrow();
    }
    Files.copy(mine, place, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    assertThat(store.find(other)).isNull();
  }

  @Test
  void aChangedFileCountsAsMissing() throws Exception {
    KeptResults store = new KeptResults(folder, "one");
    store.keep(ASKED, RESULT);
    Path file = only();
    String text = Files.readString(file);
    Files.writeString(file, text.replace("600", "601"));
    assertThat(store.find(ASKED)).isNull();
    store.keep(ASKED, RESULT);
    assertThat(store.find(ASKED)).isEqualTo(RESULT);
  }

  @Test
  void nothingIsBelievedOfAnUnknownSolver() {
    KeptResults store = new KeptResults(folder, Engine.UNKNOWN);
    store.keep(ASKED, RESULT);
    assertThat(store.find(ASKED)).isNull();
  }
}
