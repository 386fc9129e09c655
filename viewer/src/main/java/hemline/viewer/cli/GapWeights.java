package hemline.viewer.cli;

import hemline.shared.file.HeightsFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import hemline.solver.study.GapDistribution;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How much of a seal lies over each gap: weights on the command line, or a file of heights. */
final class GapWeights {
  private static final Pattern NUMBERS = Pattern.compile("[-+.,\\deE\\s]+");
  private static final double ROUND_OFF = 1e-9;

  private static final String OPTION = "--gap-weights";

  @Option(
      names = OPTION,
      paramLabel = "W,W...|FILE",
      description =
          "How much of the seal lies over each gap, such as 1,2,1, or a file of measured heights"
              + " (head line: height (mm)); all alike when left out.")
  @Nullable String weights;

  /**
   * Reads the option.
   *
   * @param gaps m, increasing
   */
  GapDistribution read(List<Double> gaps, Wanted wanted) {
    GapDistribution even = GapDistribution.even(gaps);
    if (weights == null) {
      return even;
    }
    return NUMBERS.matcher(weights).matches()
        ? ofWeights(weights, gaps, even, wanted)
        : ofHeights(weights, gaps, even, wanted);
  }

  private static GapDistribution ofWeights(
      String text, List<Double> gaps, GapDistribution even, Wanted wanted) {
    List<Double> weights = new ArrayList<>();
    for (String cell : text.split(",", -1)) {
      try {
        weights.add(Double.valueOf(cell.strip()));
      } catch (NumberFormatException e) {
        wanted.fault(
            OPTION,
            "weights are numbers with commas between, such as 1,2,1; \"" + text + "\" is not");
        return even;
      }
    }
    List<Problem> problems = GapDistribution.check("gaps", gaps.size(), weights);
    problems.forEach(problem -> wanted.fault(OPTION, problem.text()));
    return problems.isEmpty() ? GapDistribution.of(gaps, weights) : even;
  }

  private static GapDistribution ofHeights(
      String file, List<Double> gaps, GapDistribution even, Wanted wanted) {
    List<Double> heights;
    try {
      heights = HeightsFile.read(Path.of(file));
    } catch (InputException e) {
      wanted.addAll(e);
      return even;
    }
    if (gaps.size() < 2) {
      wanted.fault(OPTION, "a file of heights needs a range of gaps, such as --gaps 1mm..4mm");
      return even;
    }
    double low = gaps.get(0) * (1 - ROUND_OFF);
    double high = gaps.get(gaps.size() - 1) * (1 + ROUND_OFF);
    for (double height : heights) {
      if (height < low || height > high) {
        wanted.fault(
            OPTION,
            "every height must lie within the gaps, from "
                + NumberText.millimetres(gaps.get(0))
                + " to "
                + NumberText.millimetres(gaps.get(gaps.size() - 1))
                + "; "
                + file
                + " holds "
                + NumberText.millimetres(height));
        return even;
      }
    }
    return GapDistribution.ofHeights(gaps, heights);
  }
}
