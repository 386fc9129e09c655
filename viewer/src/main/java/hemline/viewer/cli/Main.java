package hemline.viewer.cli;

import hemline.solver.flow.CancelToken;
import hemline.solver.refine.FamilySolver;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/** Start of the command line. */
public final class Main {
  /** Set by the launcher when standard error is a terminal. */
  private static final String TERMINAL = "hemline.terminal";

  /** Set by the launcher when it starts a command again that ends with {@link ExitCode#AGAIN}. */
  private static final String KEPT_ONLY = "hemline.keptOnly";

  private static final long GRACE_SECONDS = 5;

  private Main() {}

  /**
   * Runs the command that the arguments name and exits with its code.
   *
   * @param window opens the window for the command {@code view}
   */
  public static void start(String[] args, Window window) {
    PrintStream out = utf8(FileDescriptor.out);
    PrintStream err = utf8(FileDescriptor.err);
    CancelToken cancel = new CancelToken();
    CountDownLatch told = new CountDownLatch(1);
    AtomicBoolean finished = new AtomicBoolean();
    Runtime.getRuntime()
        .addShutdownHook(new Thread(() -> stop(cancel, told, finished), "hemline-stop"));
    boolean terminal = Boolean.getBoolean(TERMINAL);
    Studies studies = new SolverStudies(new FamilySolver(), Boolean.getBoolean(KEPT_ONLY));
    Desk desk = new Desk(out, err, terminal, cancel, studies, System::nanoTime);
    int code = ExitCode.NOT_USABLE;
    try {
      code = Commands.execute(desk, window, args);
    } finally {
      out.flush();
      err.flush();
      told.countDown();
    }
    if (!cancel.isCancelled()) {
      finished.set(true);
      System.exit(code);
    }
  }

  /**
   * On a signal: asks the work to stop and waits until it has told what it has. A normal end passes
   * through here too and is let go.
   */
  private static void stop(CancelToken cancel, CountDownLatch told, AtomicBoolean finished) {
    if (finished.get()) {
      return;
    }
    cancel.cancel();
    try {
      told.await(GRACE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Runtime.getRuntime().halt(ExitCode.CANCELLED);
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
  }
}
