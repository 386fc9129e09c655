package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Opens the window of the program. */
@FunctionalInterface
public interface Window {

  /**
   * Opens the window and returns when it is closed.
   *
   * @param place lip to show or project folder; null for an example
   * @throws InputException when no window can be opened here
   */
  void open(@Nullable Path place) throws InputException;
}
