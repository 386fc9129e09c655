package hemline.viewer.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Opens the window of the program. */
@FunctionalInterface
public interface Window {

  /**
   * Opens the window and returns when it is closed.
   *
   * @param place lip to show or project folder; null for an example
   */
  void open(@Nullable Path place);
}
