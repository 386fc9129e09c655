package hemline.viewer.cli;

import hemline.shared.file.DuctFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.rig.Calibrations;
import hemline.solver.study.RelativeAnswer;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.SectionPicture;
import hemline.viewer.report.ResultDocument;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SectionFiles;
import hemline.viewer.report.SectionReport;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Solves one section. */
@Command(
    name = "run",
    description = "Solve one section: a lip at a gap and suction, or a duct.",
    customSynopsis = {
      "hemline run PROFILE --gap Q --suction Q [options]",
      "       hemline run --duct FILE [options]"
    },
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class RunCommand extends Job {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "PROFILE",
      description = "Lip file, or SVG or DXF drawing of a lip.")
  @Nullable Path profile;

  @Option(
      names = "--gap",
      paramLabel = "Q",
      description = "Clearance between lip and ground, such as 2mm.")
  @Nullable String gap;

  @Option(
      names = "--suction",
      paramLabel = "Q",
      description = "Ambient minus plenum pressure, such as 600Pa.")
  @Nullable String suction;

  @Option(
      names = "--duct",
      paramLabel = "FILE",
      description = "Duct file to solve instead of a lip.")
  @Nullable Path duct;

  @Option(
      names = "--relative",
      description = {
        "Solve the plain flat lip as wide as this one too, and tell the leak relative to it."
      })
  boolean relative;

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description = {
        "Write a page (.html) with inputs, figures, pictures, mesh, warnings; needs no other file."
      })
  @Nullable Path report;

  @Mixin GroundOptions ground = new GroundOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin CalibrationOptions calibration = new CalibrationOptions();
  @Mixin OutputOptions output = new OutputOptions();

  RunCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    return duct == null ? runLip() : runDuct(duct);
  }

  private int runLip() throws InputException {
    Wanted wanted = new Wanted();
    LoadedLip lip = Lips.one(profile, wanted);
    double atGap = wanted.gap("--gap", gap);
    double atSuction = wanted.suction("--suction", suction);
    RunOptions options = solve.read(wanted);
    var motion = ground.motion(wanted);
    var air = ground.air(wanted);
    Calibrations calibrations =
        lip == null || profile == null
            ? Calibrations.NONE
            : calibration.read(List.of(profile), List.of(lip.profile()), wanted);
    wanted.check();
    if (lip == null) {
      throw new IllegalStateException("a lip that cannot be read is a problem");
    }
    ResultFolder folder = output.folder(null);
    ResultFolder reportFolder = reportFolder();
    SealSection section = new SealSection(lip.profile(), atGap, atSuction, motion, air, List.of());
    long start = desk.clock().getAsLong();
    RelativeAnswer answer =
        watched(
            progress ->
                relative
                    ? desk.studies().relativeLeak(section, options, desk.cancel(), progress)
                    : alone(desk.studies().run(section, options, desk.cancel(), progress)));
    SectionAnswer solved = Lips.withNotices(answer.lip(), lip);
    SectionAnswer known =
        new SectionAnswer(calibrations.applied(solved.result(), lip.profile()), solved.field());
    Estimate relativeLeak =
        calibrations.appliedTo(answer.relativeLeak(), solved.result(), lip.profile());
    FlowField field = known.field();
    Pages pages =
        new Pages(
            reportFolder,
            () -> SectionPicture.of(section, known.result(), need(field)),
            () -> SectionReport.page(section, known.result(), field, relativeLeak, options, ""));
    return finish(known, relativeLeak, pages, false, folder, desk.secondsSince(start));
  }

  /**
   * What is drawn and written once the figures are on the screen.
   *
   * @param reportFolder place of the page; null when none is wanted
   * @param picture of the flow, where there is one
   * @param report text of the page
   */
  private record Pages(
      @Nullable ResultFolder reportFolder, Supplier<Picture> picture, Supplier<String> report) {}

  /** The place of the page, tried before anything is solved; null when no page is wanted. */
  private @Nullable ResultFolder reportFolder() throws InputException {
    if (report == null) {
      return null;
    }
    Path folder = report.toAbsolutePath().getParent();
    if (folder == null || Files.isDirectory(report)) {
      throw new InputException(
          "out.write", report.toString(), "is a folder; name a file to write the page to");
    }
    return ResultFolder.at(folder);
  }

  private static FlowField need(@Nullable FlowField field) {
    if (field == null) {
      throw new IllegalStateException("a picture is asked only of a flow");
    }
    return field;
  }

  private static RelativeAnswer alone(SectionAnswer answer) {
    return new RelativeAnswer(answer, answer, null);
  }

  private int runDuct(Path file) throws InputException {
    Wanted wanted = new Wanted();
    if (profile != null) {
      wanted.fault("--duct", "a duct file takes the place of a lip file; leave out " + profile);
    }
    if (gap != null || suction != null || relative || ground.given()) {
      wanted.fault(
          "--duct",
          "the duct file itself says what drives the flow; leave out --gap, --suction,"
              + " --relative, the ground speeds and --temperature");
    }
    RunOptions options = solve.read(wanted);
    DuctSection section = null;
    try {
      section = DuctFile.read(file);
    } catch (InputException e) {
      wanted.addAll(e);
    }
    wanted.check();
    if (section == null) {
      throw new IllegalStateException("a duct that cannot be read is a problem");
    }
    DuctSection read = section;
    ResultFolder folder = output.folder(null);
    ResultFolder reportFolder = reportFolder();
    long start = desk.clock().getAsLong();
    SectionAnswer answer =
        watched(progress -> desk.studies().run(read, options, desk.cancel(), progress));
    FlowField field = answer.field();
    Pages pages =
        new Pages(
            reportFolder,
            () -> SectionPicture.of(read, answer.result(), need(field)),
            () -> SectionReport.page(read, answer.result(), field, options, ""));
    return finish(answer, null, pages, true, folder, desk.secondsSince(start));
  }

  private int finish(
      SectionAnswer answer,
      @Nullable Estimate relativeLeak,
      Pages pages,
      boolean isDuct,
      @Nullable ResultFolder folder,
      double seconds) {
    SectionResult result = answer.result();
    if (result.status() == SolveStatus.CANCELLED) {
      tell("stopped on request before " + result.name() + " was solved; there is no result.");
      return ExitCode.CANCELLED;
    }
    String document = ResultDocument.text(result, relativeLeak, isDuct, seconds);
    if (output.json) {
      print(document);
    } else {
      print(ResultText.lines(result, relativeLeak, isDuct, seconds));
    }
    int code = exitCode(List.of(result.status()), true);
    if (pages.reportFolder() != null && report != null) {
      pages
          .reportFolder()
          .write(
              String.valueOf(report.getFileName()),
              () -> pages.report().get().getBytes(StandardCharsets.UTF_8));
      code = tellProblems(pages.reportFolder(), code);
    }
    if (folder != null) {
      SectionFiles.write(folder, document, result, answer.field(), pages.picture());
      return tellFiles(folder, "Files", output.json, code);
    }
    if (!output.json) {
      print(List.of("Add --out DIR for the picture, tables and fields."));
    }
    return code;
  }
}
