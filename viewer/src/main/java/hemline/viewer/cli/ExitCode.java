package hemline.viewer.cli;

/** How a command ended, as its exit code. */
final class ExitCode {
  static final int DONE = 0;

  /** The command ran, but a result is not usable: it failed or found no steady flow. */
  static final int NOT_USABLE = 1;

  static final int BAD_INPUT = 2;

  /**
   * Nothing was told or left yet: the launcher starts the command again, this time with a compiler
   * that is worth its cost in a solve. Seen by nobody else, since only the launcher asks for it.
   */
  static final int AGAIN = 75;

  static final int CANCELLED = 130;

  private ExitCode() {}
}
