package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigFile;
import hemline.shared.rig.RigReading;
import hemline.shared.rig.RigTemplate;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.ComparisonStudy;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.RigPoint;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.ComparePage;
import hemline.viewer.report.CompareDocument;
import hemline.viewer.report.CompareFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
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
      "Compare a lip measured at a test rig with its prediction: do they agree, differ, or does"
          + " the",
      "measurement not tell?"
    },
    customSynopsis = {
      "hemline compare RIG PROFILE [options]",
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

  @Mixin SolveOptions solve = new SolveOptions();
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
    wanted.check();
    if (lip == null || read == null) {
      throw new IllegalStateException("what cannot be read is a problem");
    }
    ResultFolder folder = output.folder(null);
    long start = desk.clock().getAsLong();
    List<RigPoint> points = ComparisonStudy.points(read);
    List<Prediction> predictions =
        watched(p -> desk.studies().predict(points, base(read, lip), options, desk.cancel(), p));
    if (predictions.stream().anyMatch(p -> p.status() == SolveStatus.CANCELLED)) {
      tell("stopped on request before all points were predicted; there is no result.");
      return ExitCode.CANCELLED;
    }
    Comparison comparison = ComparisonStudy.of(read, predictions, share);
    return finish(
        read,
        lip.profile().name(),
        comparison,
        exitCode(predictions.stream().map(Prediction::status).toList(), false),
        folder,
        desk.secondsSince(start));
  }

  private int finish(
      Rig read,
      String lip,
      Comparison comparison,
      int code,
      @Nullable ResultFolder folder,
      double seconds) {
    String document = CompareDocument.text(lip, read, comparison, seconds);
    if (output.json) {
      print(document);
    } else {
      print(
          CompareText.lines(
              ComparePage.title(lip, read), ComparePage.of(read, comparison), seconds));
    }
    if (folder != null) {
      CompareFiles.write(folder, document, comparison);
      return tellFiles(folder, "Report, chart, table and JSON", output.json, code);
    }
    if (!output.json) {
      print(List.of("Add --out DIR for the report, chart and table."));
    }
    return code;
  }

  private @Nullable Rig rig(Wanted wanted) {
    if (rig == null) {
      wanted.fault("RIG", "a rig file is needed; compare --template prints one to fill in");
      return null;
    }
    try {
      return RigFile.read(rig);
    } catch (InputException e) {
      wanted.addAll(e);
      return null;
    }
  }

  /** The lip at rest in the mean air of the rig; gap and suction are those of the first reading. */
  private static SealSection base(Rig rig, LoadedLip lip) {
    List<RigReading> readings = rig.of(RigReading.Kind.LIP);
    double temperature =
        readings.stream().mapToDouble(RigReading::temperature).average().orElseThrow();
    double pressure = readings.stream().mapToDouble(RigReading::barometer).average().orElseThrow();
    return new SealSection(
        lip.profile(),
        readings.get(0).gap(),
        readings.get(0).suction(),
        new GroundMotion(0, 0),
        Air.at(temperature, pressure),
        List.of());
  }
}
