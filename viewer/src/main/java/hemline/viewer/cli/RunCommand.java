package hemline.viewer.cli;

import hemline.shared.file.DuctFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.flow.FlowField;
import hemline.solver.improve.CornerEffect;
import hemline.solver.rig.Calibrations;
import hemline.solver.study.RelativeAnswer;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.page.CornerBlocks;
import hemline.viewer.page.Page;
import hemline.viewer.page.PageHtml;
import hemline.viewer.page.PageText;
import hemline.viewer.page.SectionPage;
import hemline.viewer.picture.CornerPicture;
import hemline.viewer.report.ResultDocument;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SectionFiles;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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
      names = "--sensitivities",
      description = {
        "Tell what moving each corner of the lip by 0.1 mm does to the leak, by differences on"
            + " coarse",
        "grids."
      })
  boolean sensitivities;

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description = {
        "Write a page (.html) with inputs, figures, pictures, mesh, warnings; needs no other file."
      })
  @Nullable Path report;

  @Mixin GroundOptions ground = new GroundOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin KeepOptions keep = new KeepOptions();
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
    keep.check(wanted);
    wanted.check();
    if (lip == null) {
      throw new IllegalStateException("a lip that cannot be read is a problem");
    }
    SealSection section = new SealSection(lip.profile(), atGap, atSuction, motion, air, List.of());
    return solve(
        section,
        sensitivities ? lip.drawing() : null,
        options,
        progress -> {
          RelativeAnswer answer =
              relative
                  ? studies().relativeLeak(section, options, desk.cancel(), progress)
                  : alone(studies().run(section, options, desk.cancel(), progress));
          SectionAnswer solved = Lips.withNotices(answer.lip(), lip);
          SectionResult known = calibrations.applied(solved.result(), lip.profile());
          return new RelativeAnswer(
              new SectionAnswer(known, solved.field()),
              answer.flat(),
              calibrations.appliedTo(answer.relativeLeak(), solved.result(), lip.profile()));
        });
  }

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
    if (!report.toString().toLowerCase(Locale.ROOT).matches(".*\\.html?")) {
      throw new InputException(
          "out.write", report.toString(), "is no page; give the file a name that ends in .html");
    }
    return ResultFolder.at(folder);
  }

  private static RelativeAnswer alone(SectionAnswer answer) {
    return new RelativeAnswer(answer, answer, null);
  }

  private int runDuct(Path file) throws InputException {
    Wanted wanted = new Wanted();
    if (profile != null) {
      wanted.fault("--duct", "a duct file takes the place of a lip file; leave out " + profile);
    }
    if (gap != null || suction != null || relative || sensitivities || ground.given()) {
      wanted.fault(
          "--duct",
          "the duct file itself says what drives the flow; leave out --gap, --suction,"
              + " --relative, --sensitivities, the ground speeds and --temperature");
    }
    RunOptions options = solve.read(wanted);
    DuctSection section = null;
    try {
      section = DuctFile.read(file);
    } catch (InputException e) {
      wanted.addAll(e);
    }
    keep.check(wanted);
    wanted.check();
    if (section == null) {
      throw new IllegalStateException("a duct that cannot be read is a problem");
    }
    DuctSection read = section;
    return solve(
        read,
        null,
        options,
        progress -> alone(studies().run(read, options, desk.cancel(), progress)));
  }

  private Studies studies() {
    return keep.studies(desk, output.out != null || report != null);
  }

  private List<CornerEffect> effects(
      SectionResult solved, LipDrawing lip, SealSection section, RunOptions options)
      throws InputException {
    return solved.status() == SolveStatus.CANCELLED
        ? List.of()
        : watched(p -> studies().corners(lip, section, options, keep.figures(), desk.cancel(), p));
  }

  /** Solves and tells; a lip as drawn is given where its sensitivities are wanted. */
  private int solve(
      Section section, @Nullable LipDrawing lip, RunOptions options, Watched<RelativeAnswer> study)
      throws InputException {
    ResultFolder folder = output.folder(null);
    ResultFolder reportFolder = reportFolder();
    long start = desk.clock().getAsLong();
    RelativeAnswer answer = watched(study);
    SectionResult result = answer.lip().result();
    boolean asked = lip != null && section instanceof SealSection;
    List<CornerEffect> effects =
        asked && lip != null ? effects(result, lip, (SealSection) section, options) : List.of();
    double seconds = desk.secondsSince(start);
    FlowField field = answer.lip().field();
    Estimate relativeLeak = answer.relativeLeak();
    if (result.status() == SolveStatus.CANCELLED || asked && effects.isEmpty()) {
      tell("stopped on request before " + result.name() + " was solved; there is no result.");
      return ExitCode.CANCELLED;
    }
    boolean isDuct = section instanceof DuctSection;
    String document = ResultDocument.text(result, relativeLeak, effects, isDuct, seconds);
    Page page = SectionPage.of(section, result, field, relativeLeak, options, "");
    if (lip != null) {
      CornerBlocks.add(page, lip, effects);
    }
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(page));
      effort(grids(result.grids()), seconds);
    }
    int code = exitCode(List.of(result.status()), true);
    if (reportFolder != null && report != null) {
      reportFolder.write(String.valueOf(report.getFileName()), () -> PageHtml.bytes(page));
      code = tellProblems(reportFolder, code);
      if (!output.json && reportFolder.problems().isEmpty()) {
        print(List.of("Page in " + report + "."));
      }
    }
    if (folder != null) {
      SectionFiles.write(folder, document, section, result, field);
      if (lip != null && !effects.isEmpty()) {
        SectionFiles.picture(folder, "corners", () -> CornerPicture.of(lip, effects));
      }
      return tellFiles(folder, "Files", output.json, code);
    }
    if (!output.json) {
      print(List.of("Add --out DIR for the picture, tables and fields."));
    }
    return code;
  }

  private static String grids(List<GridRun> grids) {
    return grids.isEmpty()
        ? "no grid"
        : "%d %s, %d cells on the finest"
            .formatted(
                grids.size(),
                grids.size() == 1 ? "grid" : "grids",
                grids.get(grids.size() - 1).cells());
  }
}
