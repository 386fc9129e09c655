package hemline.viewer.cli;

import hemline.shared.file.DuctFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.study.RelativeAnswer;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.SectionPicture;
import hemline.viewer.report.ResultDocument;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SectionFiles;
import hemline.viewer.report.SectionReport;
import java.nio.file.Path;
import java.util.List;
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
    wanted.check();
    if (lip == null) {
      throw new IllegalStateException("a lip that cannot be read is a problem");
    }
    ResultFolder folder = output.folder(null);
    SealSection section = new SealSection(lip.profile(), atGap, atSuction, motion, air, List.of());
    long start = desk.clock().getAsLong();
    RelativeAnswer answer =
        watched(
            progress ->
                relative
                    ? desk.bench().relativeLeak(section, options, desk.cancel(), progress)
                    : alone(desk.bench().run(section, options, desk.cancel(), progress)));
    SectionAnswer known = Lips.withNotices(answer.lip(), lip);
    FlowField field = known.field();
    Picture picture = field == null ? null : SectionPicture.of(section, known.result(), field);
    String page =
        report == null
            ? null
            : SectionReport.page(
                section, known.result(), field, answer.relativeLeak(), options, "");
    return finish(
        known, answer.relativeLeak(), picture, page, false, folder, desk.secondsSince(start));
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
    long start = desk.clock().getAsLong();
    SectionAnswer answer =
        watched(progress -> desk.bench().run(read, options, desk.cancel(), progress));
    FlowField field = answer.field();
    Picture picture = field == null ? null : SectionPicture.of(read, answer.result(), field);
    String page =
        report == null ? null : SectionReport.page(read, answer.result(), field, options, "");
    return finish(answer, null, picture, page, true, folder, desk.secondsSince(start));
  }

  private int finish(
      SectionAnswer answer,
      @Nullable Estimate relativeLeak,
      @Nullable Picture picture,
      @Nullable String page,
      boolean isDuct,
      @Nullable ResultFolder folder,
      double seconds)
      throws InputException {
    SectionResult result = answer.result();
    if (result.status() == SolveStatus.CANCELLED) {
      tell("stopped on request before " + result.name() + " was solved; there is no result.");
      return ExitCode.CANCELLED;
    }
    String document = ResultDocument.text(result, relativeLeak, isDuct, seconds);
    if (folder != null) {
      SectionFiles.write(folder, document, result, answer.field(), picture);
    }
    if (report != null && page != null) {
      TextFiles.write(report, page);
    }
    if (output.json) {
      print(document);
    } else {
      print(ResultText.lines(result, relativeLeak, isDuct, seconds));
      print(
          List.of(
              folder == null
                  ? "Add --out DIR for the picture, tables and fields."
                  : "Files in " + folder.path() + "."));
    }
    return exitCode(List.of(result.status()), true);
  }
}
