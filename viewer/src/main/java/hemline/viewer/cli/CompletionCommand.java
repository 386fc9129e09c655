package hemline.viewer.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** Prints what a shell needs to complete commands and options. */
@Command(
    name = "completion",
    description = {
      "Print a script that completes commands and options in bash and zsh; read it with",
      "source <(hemline completion).",
      ""
    },
    customSynopsis = "hemline completion",
    mixinStandardHelpOptions = true)
final class CompletionCommand extends Job {
  CompletionCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() {
    desk.out().print(AutoComplete.bash("hemline", Handbook.commandLine()));
    desk.out().flush();
    return ExitCode.DONE;
  }
}
