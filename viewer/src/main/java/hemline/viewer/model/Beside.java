package hemline.viewer.model;

import java.util.function.Consumer;
import java.util.function.Supplier;

/** Work on the disk that the screen does not wait for. */
@FunctionalInterface
public interface Beside {
  /**
   * Reads something in the background.
   *
   * @param source reads
   * @param taker gets what was read, on the screen's thread
   */
  <T> void read(Supplier<T> source, Consumer<T> taker);
}
