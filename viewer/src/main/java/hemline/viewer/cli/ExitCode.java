package hemline.viewer.cli;

/** How a command ended, as its exit code. */
final class ExitCode {
  static final int DONE = 0;

  /** The command ran, but a result is not usable: it failed or found no steady flow. */
  static final int NOT_USABLE = 1;

  static final int BAD_INPUT = 2;
  static final int CANCELLED = 130;

  private ExitCode() {}
}
