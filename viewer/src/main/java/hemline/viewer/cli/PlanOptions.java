package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import hemline.solver.study.RelativeSweep;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options for the plan of a test of two lips. */
final class PlanOptions {
  @Option(
      names = "--plan",
      description = {
        "Plan a test with the instruments of RIG instead: at which gaps and suctions it tells",
        "PROFILE from the lip --against."
      })
  boolean plan;

  @Option(names = "--against", paramLabel = "PROFILE", description = "The other lip of a plan.")
  @Nullable Path against;

  @Option(
      names = "--gaps",
      paramLabel = "Q..Q",
      description = "Gaps of a plan (default: 1mm..4mm, four of them).")
  String gaps = "1mm..4mm";

  @Option(
      names = "--suctions",
      paramLabel = "Q..Q",
      description = "Suctions of a plan (default: 300Pa..900Pa, three of them).")
  String suctions = "300Pa..900Pa";

  @Option(
      names = "--repeats",
      paramLabel = "N",
      description = "Readings of each lip at each point of a plan (default: 3).")
  int repeats = 3;

  /** What a plan asks. */
  record Asked(LipProfile other, List<Double> gaps, List<Double> suctions, int repeats) {}

  /** The options; null after a problem. */
  @Nullable Asked read(Wanted wanted) {
    LoadedLip other = null;
    if (against == null) {
      wanted.fault("--against", "a plan needs the other lip, such as profiles/plain-flat-8.json");
    } else {
      other = Lips.one(against, wanted);
    }
    List<Double> atGaps = wanted.gaps("--gaps", gaps, 4);
    List<Double> atSuctions = wanted.suctions("--suctions", suctions, 3);
    if (atSuctions.stream().anyMatch(s -> !(s > 0))) {
      wanted.fault("--suctions", "the suctions of a plan are above 0");
    }
    if (repeats < 1 || repeats > 100) {
      wanted.fault("--repeats", "1 to 100 readings, got " + repeats);
    }
    return other == null ? null : new Asked(other.profile(), atGaps, atSuctions, repeats);
  }

  /** A pair of sections with the ratio of their leaks. */
  record Pair(SectionResult one, SectionResult other, @Nullable Estimate ratio) {}

  /** Pairs of one sweep, in its order. */
  static List<Pair> pairs(RelativeSweep sweep) {
    List<Pair> pairs = new ArrayList<>();
    for (int k = 0; k < sweep.lip().points().size(); k++) {
      pairs.add(
          new Pair(
              sweep.lip().points().get(k),
              sweep.baseline().points().get(k),
              sweep.relativeLeak().get(k)));
    }
    return pairs;
  }
}
