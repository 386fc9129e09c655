package hemline.viewer.app;

import hemline.shared.problem.InputException;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;

/** Start of the program: the command line, whose command {@code view} opens the window. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    hemline.viewer.cli.Main.start(
        args,
        file -> {
          needDisplay();
          // the toolkit warns that it is used from the class path, which is meant
          Logger toolkit = Logger.getLogger("javafx");
          toolkit.setLevel(Level.SEVERE);
          String[] given = file == null ? new String[0] : new String[] {file.toString()};
          Application.launch(HemlineApplication.class, given);
        });
  }

  /** On Linux the toolkit draws on an X display; without one it would end in a stack trace. */
  private static void needDisplay() throws InputException {
    String display = System.getenv("DISPLAY");
    boolean linux = System.getProperty("os.name", "").startsWith("Linux");
    if (linux && (display == null || display.isBlank())) {
      throw new InputException(
          "view.display",
          "view",
          "a window needs a display and DISPLAY names none; start it from a desktop, or run"
              + " hemline run and look at the pictures that it leaves");
    }
  }
}
