package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import hemline.shared.problem.PlainText;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.ProgressListener;
import java.util.List;
import java.util.concurrent.Callable;

/** What all commands share: reading input, showing progress, telling how it ended. */
abstract class Job implements Callable<Integer> {
  final Desk desk;

  Job(Desk desk) {
    this.desk = desk;
  }

  @Override
  public final Integer call() {
    try {
      return work();
    } catch (InputException e) {
      e.problems().forEach(problem -> desk.err().println("hemline: " + problem));
      return ExitCode.BAD_INPUT;
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

  final void print(String text) {
    desk.out().print(text);
    desk.out().flush();
  }

  final void tell(String sentence) {
    desk.err().println("hemline: " + PlainText.shown(sentence));
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
