package hemline.viewer.report;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.LeakPoint;
import hemline.viewer.picture.InventedStudies;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LeakFolderTest {
  @TempDir Path folder;

  @Test
  void findsWhatItKept() throws Exception {
    LeakPoint point = Objects.requireNonNull(InventedStudies.LEAKS.find("k"));
    LeakFolder store = new LeakFolder(folder.resolve("a").resolve("b"));
    assertThat(store.find("k")).isNull();
    store.keep("k", point);
    assertThat(new LeakFolder(folder.resolve("a").resolve("b")).find("k")).isEqualTo(point);
    assertThat(store.find("other")).isNull();
  }

  @Test
  void takesABrokenFileForNone() throws Exception {
    Files.writeString(folder.resolve("k.json"), "{\"schema\": \"hemline.leak/1\"");
    assertThat(new LeakFolder(folder).find("k")).isNull();
    Files.writeString(folder.resolve("k.json"), "{\"schema\": \"hemline.leak/1\"}");
    assertThat(new LeakFolder(folder).find("k")).isNull();
  }

  @Test
  void worksOnWhereNothingCanBeKept() throws Exception {
    Path file = folder.resolve("file");
    Files.writeString(file, "in the way");
    LeakFolder store = new LeakFolder(file);
    store.keep("k", Objects.requireNonNull(InventedStudies.LEAKS.find("k")));
    assertThat(store.find("k")).isNull();
  }
}
