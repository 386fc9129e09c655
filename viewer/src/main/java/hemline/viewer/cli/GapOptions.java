package hemline.viewer.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options for a gap or a range of gaps. */
final class GapOptions {
  @Option(
      names = "--gaps",
      paramLabel = "Q",
      description = "Gap, or range of gaps such as 1mm..6mm.")
  @Nullable String gaps;

  @Option(
      names = "--steps",
      paramLabel = "N",
      description = "Gaps in the range, both ends among them (default: ${DEFAULT-VALUE}).")
  int steps;

  /**
   * Options of a command.
   *
   * @param usual number of gaps in a range where none is given
   */
  GapOptions(int usual) {
    steps = usual;
  }

  /** The gaps, m, increasing. */
  List<Double> read(Wanted wanted) {
    return wanted.gaps("--gaps", gaps, wanted.steps("--steps", steps));
  }
}
