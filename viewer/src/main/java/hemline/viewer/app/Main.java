package hemline.viewer.app;

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
          // the toolkit warns that it is used from the class path, which is meant
          Logger toolkit = Logger.getLogger("javafx");
          toolkit.setLevel(Level.SEVERE);
          String[] given = file == null ? new String[0] : new String[] {file.toString()};
          Application.launch(HemlineApplication.class, given);
        });
  }
}
