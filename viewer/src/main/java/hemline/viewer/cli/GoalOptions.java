package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.improve.DownforceGoal;
import hemline.solver.improve.Goal;
import hemline.solver.improve.LeakGoal;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.GroundSpeeds;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Options that say what a search makes least: a leak, or what a machine lacks in downforce. */
final class GoalOptions {
  private static final int MOST_SPEEDS = 20;

  @Mixin GapOptions gaps = new GapOptions(3);
  @Mixin GapWeights weights = new GapWeights();

  @Option(
      names = "--suction",
      paramLabel = "Q",
      description = "Ambient minus plenum pressure, such as 600Pa.")
  @Nullable String suction;

  @Option(
      names = "--ground-speed",
      paramLabel = "Q,Q...",
      split = ",",
      description = {
        "Speed of the ground across the lip, positive towards the plenum, or several",
        "such as 0m/s,4m/s (default: 0)."
      })
  List<String> speeds = new ArrayList<>();

  @Option(
      names = "--speed-weights",
      paramLabel = "W,W...",
      split = ",",
      description = "How much of the time the ground has each speed (default: all alike).")
  List<Double> speedWeights = new ArrayList<>();

  @Mixin AirOptions air = new AirOptions();

  @Option(
      names = "--machine",
      paramLabel = "FILE",
      description = {
        "Look for the most downforce of a machine at rest with the lip all round, in place of the",
        "least leak; gap, suction and air are then the machine's."
      })
  @Nullable Path machine;

  /** The goal; null after a problem. */
  @Nullable Goal read(@Nullable LoadedLip lip, Wanted wanted) {
    return machine == null ? leak(lip, wanted) : downforce(machine, wanted);
  }

  private @Nullable Goal leak(@Nullable LoadedLip lip, Wanted wanted) {
    List<Double> asked = gaps.read(wanted);
    double atSuction = wanted.suction("--suction", suction);
    GapDistribution spread = weights.read(asked, wanted);
    GroundSpeeds ground = speeds(wanted);
    double along = air.alongSpeed(wanted);
    var fluid = air.air(wanted);
    return lip == null
        ? null
        : new LeakGoal(
            spread,
            ground,
            new SealSection(
                lip.profile(),
                asked.get(0),
                atSuction,
                new GroundMotion(ground.speeds().get(0), along),
                fluid,
                List.of()));
  }

  private GroundSpeeds speeds(Wanted wanted) {
    List<Double> values = new ArrayList<>();
    for (String one : speeds) {
      values.add(wanted.speed("--ground-speed", one));
    }
    if (values.isEmpty()) {
      values.add(0.0);
    }
    if (values.stream().distinct().count() < values.size() || values.size() > MOST_SPEEDS) {
      wanted.fault(
          "--ground-speed", "name each speed once, at most " + MOST_SPEEDS + ", such as 0m/s,4m/s");
      return GroundSpeeds.of(0);
    }
    List<Double> told =
        speedWeights.isEmpty() ? values.stream().map(v -> 1.0).toList() : speedWeights;
    List<Problem> problems = GapDistribution.check("speeds", values.size(), told);
    for (Problem p : problems) {
      wanted.fault("--speed-weights", p.text());
    }
    return problems.isEmpty() ? GroundSpeeds.of(values, told) : GroundSpeeds.of(0);
  }

  private @Nullable Goal downforce(Path file, Wanted wanted) {
    if (gaps.gaps != null
        || suction != null
        || weights.weights != null
        || !speeds.isEmpty()
        || !speedWeights.isEmpty()
        || air.given()) {
      wanted.fault(
          "--machine",
          "gap, suction, ground and air are those of the machine at rest; leave --gaps,"
              + " --gap-weights, --suction, --ground-speed, --speed-weights, --spanwise-speed and"
              + " --temperature out");
    }
    try {
      return new DownforceGoal(MachineFile.read(file));
    } catch (InputException e) {
      wanted.addAll(e);
      return null;
    }
  }
}
