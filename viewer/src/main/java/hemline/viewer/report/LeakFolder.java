package hemline.viewer.report;

import hemline.shared.file.LeakPointFile;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import hemline.shared.result.LeakPoint;
import hemline.solver.study.LeakStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Keeps solved leak points in a folder, one file each, named by the content of the question.
 *
 * <p>A file that cannot be read counts as missing, and a folder that cannot be written keeps
 * nothing: then only time is lost.
 */
public final class LeakFolder implements LeakStore {
  private final Path folder;

  /** Where programs of this user keep what can be made again. */
  public static Path usual() {
    String named = System.getenv("XDG_CACHE_HOME");
    Path base =
        named == null || named.isEmpty()
            ? Path.of(System.getProperty("user.home", "."), ".cache")
            : Path.of(named);
    return base.resolve("hemline").resolve("leaks");
  }

  public LeakFolder(Path folder) {
    this.folder = folder;
  }

  @Override
  public @Nullable LeakPoint find(String key) {
    Path file = file(key);
    if (!Files.isRegularFile(file)) {
      return null;
    }
    try {
      return LeakPointFile.parse(TextFiles.read(file), file.toString());
    } catch (InputException e) {
      return null;
    }
  }

  @Override
  public void keep(String key, LeakPoint point) {
    try {
      Files.createDirectories(file(key).toAbsolutePath().getParent());
      TextFiles.write(file(key), LeakPointFile.text(point));
    } catch (IOException | InputException e) {
      // nothing is kept; the point is solved again when it is needed
    }
  }

  private Path file(String key) {
    return folder.resolve(key + ".json");
  }
}
