package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.shared.units.Quantities;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.page.Page;
import hemline.viewer.page.PageText;
import hemline.viewer.page.SweepPage;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SweepDocument;
import hemline.viewer.report.SweepFiles;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Solves one lip over a range of gaps, suctions or ground speeds. */
@Command(
    name = "sweep",
    description = {
      "Solve one lip over a range of gaps, of suctions or of ground speeds.",
      "A calibration kept beside the lip is left out."
    },
    customSynopsis = {
      "hemline sweep PROFILE --gap 1mm..6mm --suction Q [options]",
      "       hemline sweep PROFILE --gap Q --suction 100Pa..6kPa [options]",
      "       hemline sweep PROFILE --gap Q --suction Q --ground-speed=-5m/s..5m/s [options]"
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

  @Option(
      names = "--relative",
      description = {
        "Solve the plain flat lip as wide as this one too, and tell the leak relative to it."
      })
  boolean relative;

  @Mixin GroundOptions ground = new GroundOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin KeepOptions keep = new KeepOptions();
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
    Swept swept = swept(wanted);
    List<Double> values =
        switch (swept) {
          case GAP -> gaps;
          case SUCTION -> suctions;
          case GROUND_SPEED -> wanted.speeds("--ground-speed", ground.groundSpeed, count);
        };
    RunOptions options = solve.read(wanted);
    var motion = swept == Swept.GROUND_SPEED ? ground.alongOnly(wanted) : ground.motion(wanted);
    var air = ground.air(wanted);
    keep.check(wanted);
    wanted.check();
    if (lip == null) {
      throw new IllegalStateException("a lip that cannot be read is a problem");
    }
    ResultFolder folder = output.folder(null);
    CalibrationOptions.tellLeftOut(this, "sweep", profile == null ? List.of() : List.of(profile));
    SealSection base =
        new SealSection(lip.profile(), gaps.get(0), suctions.get(0), motion, air, List.of());
    long start = desk.clock().getAsLong();
    LoadedLip known = lip;
    if (relative) {
      LipProfile flat = PlainFlat.asWideAs(lip.profile());
      RelativeSweep sweep =
          watched(
              p ->
                  keep.studies(desk, false)
                      .against(flat, swept, base, values, options, desk.cancel(), p));
      SweepResult told = Lips.withNotices(sweep.lip(), known);
      RelativeSweep all = new RelativeSweep(told, sweep.baseline(), sweep.relativeLeak());
      return finish(told, all, swept, folder, desk.secondsSince(start));
    }
    SweepResult sweep =
        watched(
            p -> keep.studies(desk, false).over(swept, base, values, options, desk.cancel(), p));
    return finish(Lips.withNotices(sweep, known), null, swept, folder, desk.secondsSince(start));
  }

  /** What has a range; a fault unless it is exactly one. */
  private Swept swept(Wanted wanted) {
    List<Swept> ranges = new ArrayList<>();
    addIfRange(ranges, Swept.GAP, gap);
    addIfRange(ranges, Swept.SUCTION, suction);
    addIfRange(ranges, Swept.GROUND_SPEED, ground.groundSpeed);
    if (ranges.size() != 1 && gap != null && suction != null) {
      wanted.fault(
          "--gap, --suction",
          "exactly one of them, or --ground-speed, must be a range, such as --gap 1mm..6mm"
              + " --suction 600Pa");
    }
    return ranges.isEmpty() ? Swept.GAP : ranges.get(0);
  }

  private static void addIfRange(List<Swept> ranges, Swept swept, @Nullable String text) {
    if (text != null && Quantities.isRange(text)) {
      ranges.add(swept);
    }
  }

  private int finish(
      SweepResult sweep,
      @Nullable RelativeSweep against,
      Swept swept,
      @Nullable ResultFolder folder,
      double seconds) {
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
    int code = exitCode(sweep.points().stream().map(SectionResult::status).toList(), false);
    if (!done.isEmpty()) {
      RelativeSweep whole = complete ? against : null;
      String document = SweepDocument.text(told, whole, complete, seconds);
      Page page = SweepPage.of(told, whole, swept);
      if (output.json) {
        print(document);
      } else {
        print(PageText.lines(page));
        effort(done.size() + " points", seconds);
      }
      if (folder != null) {
        SweepFiles.write(folder, document, told, whole, swept, page);
        return tellFiles(folder, "Files", output.json, code);
      }
      if (!output.json) {
        print(List.of("Add --out DIR for the chart and tables."));
      }
    }
    return code;
  }
}
