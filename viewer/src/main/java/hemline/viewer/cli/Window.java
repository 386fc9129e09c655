package hemline.viewer.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Opens the window of the program. */
@FunctionalInterface
public interface Window {

  /**
   * Opens the window and returns when it is closed.
   *
   * @param file lip to show; null for an example
   */
  void open(@Nullable Path file);
}
