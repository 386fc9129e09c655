package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Opens the window. */
@Command(
    name = "view",
    description = {"Open the bench: draw a lip, run it, see the flow.", ""},
    customSynopsis = "hemline view [PROFILE|DIR]",
    mixinStandardHelpOptions = true)
final class ViewCommand extends Job {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "PROFILE",
      description =
          "Lip file (.json) or drawing (.svg, .dxf) to put on the bench, or project folder.")
  @Nullable Path profile;

  private final Window window;

  ViewCommand(Desk desk, Window window) {
    super(desk);
    this.window = window;
  }

  @Override
  int work() throws InputException {
    if (profile != null && !Files.isDirectory(profile)) {
      Wanted wanted = new Wanted();
      Lips.one(profile, wanted);
      wanted.check();
    }
    window.open(profile);
    return ExitCode.DONE;
  }
}
