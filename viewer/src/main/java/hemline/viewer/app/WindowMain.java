package hemline.viewer.app;

import java.util.Arrays;
import java.util.stream.Stream;

/** Start of an installed program from a menu or by a lip file: the command {@code view}. */
public final class WindowMain {
  private WindowMain() {}

  /** Opens the window on the file named, if any. */
  public static void main(String[] args) {
    Main.main(Stream.concat(Stream.of("view"), Arrays.stream(args)).toArray(String[]::new));
  }
}
