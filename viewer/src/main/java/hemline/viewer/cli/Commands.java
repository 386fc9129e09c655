package hemline.viewer.cli;

import hemline.shared.problem.PlainText;
import hemline.shared.problem.Spelling;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Finds the command that the arguments name and runs it. */
final class Commands {
  private static final int HELP_WIDTH = 100;

  private Commands() {}

  /** Runs a command line and answers with the exit code; never throws for bad input. */
  static int execute(Desk desk, Window window, String... args) {
    CommandLine line = commandLine(desk, window, args.length == 0 ? "" : args[0]);
    if (args.length == 0) {
      line.usage(desk.err(), Ansi.OFF);
      desk.err().println();
      desk.err().println("hemline: name a command, such as hemline rank profiles --gaps 2mm");
      return ExitCode.BAD_INPUT;
    }
    return line.execute(args);
  }

  /**
   * The command line.
   *
   * @param first argument: where it names a command, that one alone is made, which starts faster
   */
  static CommandLine commandLine(Desk desk, Window window, String first) {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put("run", () -> new RunCommand(desk));
    commands.put("sweep", () -> new SweepCommand(desk));
    commands.put("rank", () -> new RankCommand(desk));
    commands.put("improve", () -> new ImproveCommand(desk));
    commands.put("check", () -> new CheckCommand(desk));
    commands.put("compare", () -> new CompareCommand(desk));
    commands.put("batch", () -> new BatchCommand(desk));
    commands.put("balance", () -> new BalanceCommand(desk));
    commands.put("convert", () -> new ConvertCommand(desk));
    commands.put("view", () -> new ViewCommand(desk, window));
    commands.put("completion", () -> new CompletionCommand(desk));
    CommandLine line = new CommandLine(new HemlineCommand());
    commands.forEach(
        (name, command) -> {
          if (name.equals(first) || !commands.containsKey(first)) {
            line.addSubcommand(name, command.get());
          }
        });
    line.setOut(new PrintWriter(desk.out(), true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(desk.err(), true, StandardCharsets.UTF_8));
    line.setUsageHelpWidth(HELP_WIDTH);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setExpandAtFiles(false);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(
        (problem, given) -> {
          desk.err().println("hemline: " + PlainText.shown(sentence(problem)));
          return ExitCode.BAD_INPUT;
        });
    line.setExecutionExceptionHandler(
        (fault, command, parsed) -> {
          desk.err()
              .println(
                  "hemline: the program broke down; please report it with this line: "
                      + brief(fault));
          return ExitCode.NOT_USABLE;
        });
    return line;
  }

  private static String sentence(ParameterException problem) {
    String help = "; see hemline " + command(problem) + "--help.";
    if (problem instanceof UnmatchedArgumentException unmatched) {
      return unmatched(unmatched, help);
    }
    if (problem instanceof MissingParameterException missing) {
      String names =
          missing.getMissing().stream().map(Commands::name).collect(Collectors.joining(", "));
      return "a value is missing for " + names + help;
    }
    if (problem instanceof OverwrittenOptionException twice) {
      return name(twice.getOverwritten()) + " is given twice" + help;
    }
    ArgSpec spec = problem.getArgSpec();
    if (spec != null && problem.getValue() != null) {
      return unusable(spec, problem.getValue()) + help;
    }
    if (spec != null) {
      return name(spec) + " needs one value" + help;
    }
    return "the arguments cannot be read" + help;
  }

  /** What was written, where, and of which kind it should be. */
  private static String unusable(ArgSpec spec, String value) {
    String right =
        spec.completionCandidates() != null
            ? String.join(" or ", spec.completionCandidates()).toLowerCase(Locale.ROOT)
            : spec.type() == int.class || spec.type() == Integer.class
                ? "a whole number"
                : spec.isMultiValue() ? spec.paramLabel() : "";
    boolean variable = value.equals(System.getenv(Job.UNITS)) && name(spec).equals("--units");
    return (variable ? "the variable " + Job.UNITS : name(spec))
        + ": \""
        + value
        + "\" is no value for it"
        + (right.isEmpty() ? "" : "; write " + right);
  }

  private static String unmatched(UnmatchedArgumentException problem, String help) {
    List<String> unknown = problem.getUnmatched();
    String first = unknown.get(0);
    CommandLine line = problem.getCommandLine();
    String near =
        Spelling.nearest(
            first,
            problem.isUnknownOption()
                ? line.getCommandSpec().optionsMap().keySet()
                : line.getSubcommands().keySet());
    String hint = near == null ? "" : "; did you mean " + near + "?";
    if (problem.isUnknownOption()) {
      return "there is no option " + first + (hint.isEmpty() ? help : hint);
    }
    boolean noCommand = line.getParent() == null;
    return (noCommand ? "there is no command " : "one argument too many: ")
        + first
        + (hint.isEmpty() ? help : hint);
  }

  private static String command(ParameterException problem) {
    CommandLine line = problem.getCommandLine();
    return line.getParent() == null ? "" : line.getCommandName() + " ";
  }

  private static String name(ArgSpec spec) {
    return spec.isOption()
        ? ((CommandLine.Model.OptionSpec) spec).longestName()
        : spec.paramLabel();
  }

  private static String brief(Exception fault) {
    StackTraceElement[] trace = fault.getStackTrace();
    return fault + (trace.length == 0 ? "" : " at " + trace[0]);
  }
}
