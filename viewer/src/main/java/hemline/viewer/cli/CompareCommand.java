package hemline.viewer.cli;

import hemline.shared.file.CalibrationFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.result.Calibration;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigFile;
import hemline.shared.rig.RigTemplate;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.rig.CalibrationFit;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.ComparisonStudy;
import hemline.solver.rig.PlannedPoint;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.PredictionStudy;
import hemline.solver.rig.RigPoint;
import hemline.solver.rig.TestPlan;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.RunOptions;
import hemline.solver.study.Swept;
import hemline.viewer.format.CompareWords;
import hemline.viewer.page.ComparePage;
import hemline.viewer.page.PageText;
import hemline.viewer.page.PlanPage;
import hemline.viewer.report.CompareDocument;
import hemline.viewer.report.CompareFiles;
import hemline.viewer.report.PlanDocument;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lays the readings of a test rig over the prediction of its lip. */
@Command(
    name = "compare",
    description = {
      "Compare a lip measured at a test rig with its prediction.",
      "Do they agree, differ, or does the measurement not tell?"
    },
    customSynopsis = {
      "hemline compare RIG PROFILE [options]",
      "       hemline compare RIG PROFILE --plan --against PROFILE [options]",
      "       hemline compare --template > RIG"
    },
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class CompareCommand extends Job {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "RIG",
      description = "Rig file: a table of readings (CSV).")
  @Nullable Path rig;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "PROFILE",
      description = "Lip file, or SVG or DXF drawing of the lip that was measured.")
  @Nullable Path profile;

  @Option(names = "--template", description = "Print a rig file to fill in and do nothing else.")
  boolean template;

  @Option(
      names = "--matters",
      paramLabel = "PERCENT",
      defaultValue = "10",
      description = "Difference from which on it matters, per cent (default: ${DEFAULT-VALUE}).")
  double matters = 10;

  @Option(
      names = "--keep-calibration",
      description = {
        "Keep what the measurement teaches beside the lip file: a factor and an offset of C_d with",
        "their uncertainty. run, rank and balance then use and name it."
      })
  boolean keep;

  @Mixin PlanOptions planning = new PlanOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin KeepOptions kept = new KeepOptions();
  @Mixin OutputOptions output = new OutputOptions();

  CompareCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    if (template) {
      print(RigTemplate.TEXT);
      return ExitCode.DONE;
    }
    Wanted wanted = new Wanted();
    Rig read = rig(wanted);
    LoadedLip lip = Lips.one(profile, wanted);
    double share = wanted.share("--matters", matters);
    RunOptions options = solve.read(wanted);
    PlanOptions.Asked plan = planning.plan ? planning.read(wanted) : null;
    wanted.check();
    if (lip == null || read == null) {
      throw new IllegalStateException("what cannot be read is a problem");
    }
    ResultFolder folder = output.folder(null);
    long start = desk.clock().getAsLong();
    if (plan != null) {
      return plan(read, lip, plan, options, folder, start);
    }
    List<RigPoint> points = ComparisonStudy.points(read);
    List<Prediction> predictions =
        watched(
            p ->
                kept.studies(desk, false)
                    .predict(
                        points,
                        PredictionStudy.base(read, lip.profile()),
                        options,
                        desk.cancel(),
                        p));
    if (predictions.stream().anyMatch(p -> p.status() == SolveStatus.CANCELLED)) {
      tell("stopped on request before all points were predicted; there is no result.");
      return ExitCode.CANCELLED;
    }
    Comparison comparison = ComparisonStudy.of(read, predictions, share);
    Calibration learnt = CalibrationFit.of(read, lip.profile(), predictions);
    return finish(
        read,
        lip.profile().name(),
        comparison,
        learnt,
        exitCode(predictions.stream().map(Prediction::status).toList(), false),
        folder,
        desk.secondsSince(start));
  }

  private int finish(
      Rig read,
      String lip,
      Comparison comparison,
      @Nullable Calibration learnt,
      int code,
      @Nullable ResultFolder folder,
      double seconds)
      throws InputException {
    String document = CompareDocument.text(lip, read, comparison, learnt, seconds);
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(ComparePage.of(lip, read, comparison, learnt)));
      effort(comparison.points().size() + " points", seconds);
    }
    if (keep && !keep(comparison, learnt)) {
      code = ExitCode.NOT_USABLE;
    }
    if (folder != null) {
      CompareFiles.write(folder, lip, read, comparison, learnt, document);
      return tellFiles(folder, "Report, chart, table and JSON", output.json, code);
    }
    if (!output.json) {
      print(List.of("Add --out DIR for the report, chart and table."));
    }
    return code;
  }

  /** Keeps a calibration beside the lip; false where it teaches none. */
  private boolean keep(Comparison comparison, @Nullable Calibration learnt) throws InputException {
    String why = CompareWords.notKept(comparison, learnt);
    if (!why.isEmpty() || learnt == null || profile == null) {
      tell("no calibration was kept. " + why);
      return false;
    }
    Path beside = CalibrationFile.beside(profile);
    CalibrationFile.write(beside, learnt);
    if (!output.json) {
      print(List.of("Calibration kept in " + beside + "; --uncalibrated leaves it out."));
    }
    return true;
  }

  private int plan(
      Rig read,
      LoadedLip lip,
      PlanOptions.Asked asked,
      RunOptions options,
      @Nullable ResultFolder folder,
      long start)
      throws InputException {
    TestPlan plan = new TestPlan(read);
    SealSection base =
        new SealSection(
            lip.profile(),
            asked.gaps().get(0),
            asked.suctions().get(0),
            new GroundMotion(0, 0),
            Air.STANDARD,
            List.of());
    List<PlannedPoint> points = new ArrayList<>();
    List<SolveStatus> statuses = new ArrayList<>();
    for (double gap : asked.gaps()) {
      RelativeSweep sweep =
          watched(
              p ->
                  kept.studies(desk, false)
                      .against(
                          asked.other(),
                          Swept.SUCTION,
                          base.withGap(gap),
                          asked.suctions(),
                          options,
                          desk.cancel(),
                          p));
      for (PlanOptions.Pair pair : PlanOptions.pairs(sweep)) {
        statuses.add(pair.one().status());
        statuses.add(pair.other().status());
        if (pair.ratio() != null && pair.ratio().value() > 0) {
          points.add(plan.at(pair.one(), pair.other(), pair.ratio(), asked.repeats()));
        }
      }
    }
    int code = exitCode(statuses, false);
    if (code == ExitCode.CANCELLED) {
      tell("stopped on request before the plan was complete; there is no result.");
      return code;
    }
    String one = lip.profile().name();
    String other = asked.other().name();
    double seconds = desk.secondsSince(start);
    String document =
        PlanDocument.text(one, other, points, asked.repeats(), plan.scatter(), seconds);
    if (output.json) {
      print(document);
    } else {
      print(
          PageText.lines(
              PlanPage.of(one, other, read.name(), points, asked.repeats(), plan.scatter())));
      effort(points.size() + " points", seconds);
    }
    if (folder != null) {
      folder.write("plan.json", document);
      return tellFiles(folder, "JSON", output.json, code);
    }
    return code;
  }

  private @Nullable Rig rig(Wanted wanted) {
    if (rig == null) {
      wanted.fault("RIG", "a rig file is needed; compare --template prints one to fill in");
      return null;
    }
    try {
      return planning.plan ? RigFile.readInstruments(rig) : RigFile.read(rig);
    } catch (InputException e) {
      wanted.addAll(e);
      return null;
    }
  }
}
