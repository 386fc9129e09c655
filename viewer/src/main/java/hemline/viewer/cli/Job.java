package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import hemline.shared.problem.PlainText;
import hemline.shared.problem.Problem;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.ProgressListener;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.report.ResultFolder;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Option;

/** What all commands share: reading input, showing progress, telling how it ended. */
abstract class Job implements Callable<Integer> {
  private static final int MOST_PROBLEMS = 5;

  final Desk desk;

  /** Variable with the unit of lengths. */
  static final String UNITS = "HEMLINE_UNITS";

  @Option(
      names = "--units",
      paramLabel = "UNIT",
      defaultValue = "${env:" + UNITS + ":-mm}",
      description =
          "Unit of lengths that are shown, mm or inch; files for programs keep SI. Default: the"
              + " variable "
              + UNITS
              + ", else mm.")
  LengthUnit units = LengthUnit.MM;

  Job(Desk desk) {
    this.desk = desk;
  }

  @Override
  public final Integer call() {
    LengthUnit.use(units);
    try {
      return work();
    } catch (InputException e) {
      e.problems().forEach(problem -> desk.err().println("hemline: " + problem));
      return ExitCode.BAD_INPUT;
    } catch (OutOfMemoryError | IllegalStateException e) {
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        if (cause instanceof OutOfMemoryError) {
          tell(
              "the memory that Java may take, "
                  + (Runtime.getRuntime().maxMemory() >> 20)
                  + " MB, is used up; choose a coarser mesh or fewer threads, or let Java have more"
                  + " with JAVA_TOOL_OPTIONS=-Xmx4g");
          return ExitCode.NOT_USABLE;
        }
      }
      throw e;
    }
  }

  /** Does the work and answers with the exit code. */
  abstract int work() throws InputException;

  /** Work that tells how far it has come. */
  interface Watched<T> {
    T run(ProgressListener progress) throws InputException;
  }

  /** Runs a study with a progress bar where a person watches. */
  final <T> T watched(Watched<T> study) throws InputException {
    if (!desk.terminal()) {
      return study.run(ProgressListener.NONE);
    }
    ProgressBar bar = new ProgressBar(desk.err(), desk.clock());
    try {
      return study.run(bar);
    } finally {
      bar.close();
    }
  }

  final void print(List<String> lines) {
    lines.forEach(line -> desk.out().println(PlainText.shown(line)));
    desk.out().flush();
  }

  /** Tells what a result took, below it. */
  final void effort(String what, double seconds) {
    print(List.of("", what + ", " + Digits.plain(seconds, 2) + " s."));
  }

  final void print(String text) {
    desk.out().print(text);
    desk.out().flush();
  }

  final void tell(String sentence) {
    desk.err().println("hemline: " + PlainText.shown(sentence));
  }

  /**
   * Tells where the files of results are that stand on the screen already, and every one that could
   * not be written.
   *
   * @param what what the folder holds, such as "Files"
   * @param json true where standard output holds one document and nothing else
   * @param code exit code of the results
   * @return that code, or one for a failure where a file of good results is missing
   */
  final int tellFiles(ResultFolder folder, String what, boolean json, int code) {
    if (folder.problems().isEmpty() && !json) {
      print(List.of(what + " in " + folder.path() + "."));
    }
    return tellProblems(folder, code);
  }

  /** Tells which files of a folder could not be written and answers as {@link #tellFiles}. */
  final int tellProblems(ResultFolder folder, int code) {
    List<Problem> problems = folder.problems();
    if (problems.isEmpty()) {
      return code;
    }
    problems.stream().limit(MOST_PROBLEMS).forEach(problem -> tell(problem.toString()));
    int lost = problems.size();
    int kept = folder.kept();
    String named = lost > MOST_PROBLEMS ? " (the first " + MOST_PROBLEMS + " are named)" : "";
    tell(
        lost
            + " of "
            + (lost + kept)
            + (lost + kept == 1 ? " file" : " files")
            + " could not be written"
            + named
            + (kept == 0
                ? "; the results are on the screen alone."
                : "; the other " + kept + " are in " + folder.path() + "."));
    return code == ExitCode.DONE ? ExitCode.NOT_USABLE : code;
  }

  /**
   * Exit code for a set of results.
   *
   * @param strict true where a mean of an unsteady flow does not count as an answer
   */
  static int exitCode(List<SolveStatus> statuses, boolean strict) {
    if (statuses.contains(SolveStatus.CANCELLED)) {
      return ExitCode.CANCELLED;
    }
    boolean unusable =
        statuses.contains(SolveStatus.FAILED)
            || (strict && statuses.contains(SolveStatus.UNSTEADY));
    return unusable ? ExitCode.NOT_USABLE : ExitCode.DONE;
  }
}
