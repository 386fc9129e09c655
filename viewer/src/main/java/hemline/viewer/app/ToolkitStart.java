package hemline.viewer.app;

import hemline.shared.problem.InputException;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Platform;
import org.jspecify.annotations.Nullable;

/** Starts the window toolkit in the background, once, and waits for it. */
final class ToolkitStart {
  private final CountDownLatch ended = new CountDownLatch(1);
  private boolean begun;
  private volatile @Nullable Throwable fault;

  /** Starts the toolkit and returns at once; nothing happens the second time. */
  void begin() {
    if (begun) {
      return;
    }
    begun = true;
    // the toolkit warns that it is used from the class path, which is meant
    Logger.getLogger("javafx").setLevel(Level.SEVERE);
    Thread thread = new Thread(this::start, "hemline-toolkit");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Where no window can be opened the toolkit prints traces, to which one sentence is the answer.
   */
  private void start() {
    PrintStream err = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
    try {
      Platform.startup(
          () -> {
            System.setErr(err);
            err.print(said.toString(StandardCharsets.UTF_8));
            ended.countDown();
          });
    } catch (RuntimeException | LinkageError e) {
      fault = e;
      ended.countDown();
    }
  }

  /**
   * Waits until windows can be opened.
   *
   * @throws InputException when the display cannot be reached or a system library is missing
   */
  void await() throws InputException {
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (fault != null) {
      throw new InputException(
          "view.display",
          "view",
          "no window can be opened on display "
              + System.getenv("DISPLAY")
              + "; check that it runs and lets this user in, and that the system has the packages"
              + " libgtk-3-0 and libxtst6, which .ci/setup window installs");
    }
  }
}
