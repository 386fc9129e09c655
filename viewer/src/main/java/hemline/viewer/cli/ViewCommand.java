package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.UserChoices;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

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

  @Spec CommandSpec spec = CommandSpec.create();

  private final Window window;

  ViewCommand(Desk desk, Window window) {
    super(desk);
    this.window = window;
  }

  /** True where the command line or the environment names the unit; else the window remembers. */
  private boolean unitsTold() {
    return System.getenv(UNITS) != null
        || spec.commandLine().getParseResult().hasMatchedOption("--units");
  }

  @Override
  int work() throws InputException {
    if (profile != null && !Files.isDirectory(profile)) {
      Wanted wanted = new Wanted();
      Lips.one(profile, wanted);
      wanted.check();
    }
    if (!unitsTold()) {
      String home =
          ProjectFolder.home(System.getenv(), System.getProperty("user.home", "")).toString();
      String kept = UserChoices.usual(System.getenv(), home).get(UserChoices.UNITS);
      LengthUnit.use(kept.equals(LengthUnit.INCH.name()) ? LengthUnit.INCH : LengthUnit.MM);
    }
    window.open(profile);
    return ExitCode.DONE;
  }
}
