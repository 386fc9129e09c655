package hemline.viewer.app;

import hemline.shared.problem.InputException;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.application.Application;

/** Start of the program: the command line, whose command {@code view} opens the window. */
public final class Main {
  private static final int CANCELLED = 130;

  private Main() {}

  public static void main(String[] args) {
    ToolkitStart toolkit = new ToolkitStart();
    if (opensWindow(args) && hasDisplay()) {
      // it starts while the command line is read
      toolkit.begin();
    }
    hemline.viewer.cli.Main.start(
        args,
        file -> {
          needDisplay();
          toolkit.begin();
          toolkit.await();
          String[] given = file == null ? new String[0] : new String[] {file.toString()};
          AtomicBoolean closed = new AtomicBoolean();
          Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(closed), "hemline-close"));
          Application.launch(HemlineApplication.class, given);
          closed.set(true);
        });
  }

  /**
   * On a signal the window goes at once, before the toolkit is taken down under it; what is not
   * saved was put by. A normal end passes through here too and is let go.
   */
  private static void stop(AtomicBoolean closed) {
    if (!closed.get()) {
      Runtime.getRuntime().halt(CANCELLED);
    }
  }

  private static boolean opensWindow(String[] args) {
    return args.length > 0
        && args[0].equals("view")
        && Arrays.stream(args).noneMatch(a -> a.startsWith("-") && !a.startsWith("--units"));
  }

  private static boolean hasDisplay() {
    String display = System.getenv("DISPLAY");
    boolean linux = System.getProperty("os.name", "").startsWith("Linux");
    return !linux || (display != null && !display.isBlank());
  }

  /** On Linux the toolkit draws on an X display; without one it would end in a stack trace. */
  private static void needDisplay() throws InputException {
    if (!hasDisplay()) {
      throw new InputException(
          "view.display",
          "view",
          "a window needs a display and DISPLAY names none; start it from a desktop, or run"
              + " hemline run and look at the pictures that it leaves");
    }
  }
}
