package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.shared.units.Quantities;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SweepResult;
import hemline.viewer.picture.SweepChart;
import hemline.viewer.report.FiguresCsv;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SectionFiles;
import hemline.viewer.report.SweepDocument;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Solves one lip over a range of gaps or suctions. */
@Command(
    name = "sweep",
    description = "Solve one lip over a range of gaps or of suctions.",
    customSynopsis = {
      "hemline sweep PROFILE --gap 1mm..6mm --suction Q [options]",
      "       hemline sweep PROFILE --gap Q --suction 100Pa..6kPa [options]"
    },
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class SweepCommand extends Job {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "PROFILE",
      description = "Lip file, or SVG or DXF drawing of a lip.")
  @Nullable Path profile;

  @Option(
      names = "--gap",
      paramLabel = "Q",
      description = "Gap, or range of gaps such as 1mm..6mm.")
  @Nullable String gap;

  @Option(
      names = "--suction",
      paramLabel = "Q",
      description = "Suction, or range of suctions such as 100Pa..6kPa.")
  @Nullable String suction;

  @Option(
      names = "--steps",
      paramLabel = "N",
      defaultValue = "6",
      description = "Points in the range, both ends among them (default: ${DEFAULT-VALUE}).")
  int steps = 6;

  @Mixin GroundOptions ground = new GroundOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin OutputOptions output = new OutputOptions();

  SweepCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    LoadedLip lip = Lips.one(profile, wanted);
    int count = wanted.steps("--steps", steps);
    List<Double> gaps = wanted.gaps("--gap", gap, count);
    List<Double> suctions = wanted.suctions("--suction", suction, count);
    boolean overGap = gap != null && Quantities.isRange(gap);
    boolean overSuction = suction != null && Quantities.isRange(suction);
    if (gap != null && suction != null && overGap == overSuction) {
      wanted.fault(
          "--gap, --suction",
          "exactly one of them must be a range, such as --gap 1mm..6mm --suction 600Pa");
    }
    RunOptions options = solve.read(wanted);
    var motion = ground.motion(wanted);
    var air = ground.air(wanted);
    wanted.check();
    if (lip == null) {
      throw new IllegalStateException("a lip that cannot be read is a problem");
    }
    ResultFolder folder = output.folder(null);
    SealSection base =
        new SealSection(lip.profile(), gaps.get(0), suctions.get(0), motion, air, List.of());
    long start = desk.clock().getAsLong();
    SweepResult sweep =
        watched(
            progress ->
                overGap
                    ? desk.bench().overGaps(base, gaps, options, desk.cancel(), progress)
                    : desk.bench().overSuctions(base, suctions, options, desk.cancel(), progress));
    return finish(Lips.withNotices(sweep, lip), overGap, folder, desk.secondsSince(start));
  }

  private int finish(
      SweepResult sweep, boolean overGap, @Nullable ResultFolder folder, double seconds)
      throws InputException {
    List<SectionResult> done =
        sweep.points().stream().filter(p -> p.status() != SolveStatus.CANCELLED).toList();
    boolean complete = done.size() == sweep.points().size();
    SweepResult told = complete ? sweep : new SweepResult(done, null);
    if (!complete) {
      tell(
          "stopped on request; "
              + done.size()
              + " of "
              + sweep.points().size()
              + " points were solved.");
    }
    if (!done.isEmpty()) {
      String document = SweepDocument.text(told, complete, seconds);
      if (folder != null) {
        folder.write("sweep.json", document);
        folder.write("figures.csv", FiguresCsv.of(done));
        SectionFiles.picture(folder, "sweep", SweepChart.of(told, overGap));
      }
      if (output.json) {
        print(document);
      } else {
        print(SweepText.lines(told, overGap, seconds));
        print(
            List.of(
                folder == null
                    ? "Add --out DIR for the chart and tables."
                    : "Files in " + folder.path() + "."));
      }
    }
    return exitCode(sweep.points().stream().map(SectionResult::status).toList(), false);
  }
}
