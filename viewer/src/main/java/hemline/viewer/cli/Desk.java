package hemline.viewer.cli;

import hemline.solver.flow.CancelToken;
import java.io.PrintStream;
import java.util.function.LongSupplier;

/**
 * What surrounds a command: where it writes, what can stop it, which studies it calls.
 *
 * @param out results
 * @param err problems and progress
 * @param terminal true when a person watches {@code err}
 * @param cancel asked to stop by the user
 * @param studies the studies
 * @param clock nanoseconds from any start
 */
record Desk(
    PrintStream out,
    PrintStream err,
    boolean terminal,
    CancelToken cancel,
    Studies studies,
    LongSupplier clock) {

  /** Seconds since a reading of the clock. */
  double secondsSince(long start) {
    return 1e-9 * (clock.getAsLong() - start);
  }
}
