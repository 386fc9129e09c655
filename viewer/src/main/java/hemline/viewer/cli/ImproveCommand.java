package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.result.SolveStatus;
import hemline.solver.grid.MeshLevel;
import hemline.solver.improve.Goal;
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.SearchSpace;
import hemline.solver.study.RunOptions;
import hemline.viewer.page.ImprovePage;
import hemline.viewer.page.PageText;
import hemline.viewer.report.ImproveDocument;
import hemline.viewer.report.ImproveFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Searches for a lip that leaks less. */
@Command(
    name = "improve",
    description = {
      "Search for a lip that leaks less than PROFILE, and prove what is found.",
      "What is found is solved anew on finer grids. Each evaluation is kept: the same command goes",
      "on after a stop. Without --json the files go to hemline-results unless --out names another"
          + " folder."
    },
    customSynopsis = {
      "hemline improve PROFILE --gaps Q..Q --suction Q [options]",
      "       hemline improve PROFILE --machine FILE [options]"
    },
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class ImproveCommand extends Job {
  private static final int MOST_EVALUATIONS = 2000;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "PROFILE",
      description = "The lip to be better than: lip file, or SVG or DXF drawing of a lip.")
  @Nullable Path profile;

  @Mixin GoalOptions goals = new GoalOptions();
  @Mixin ShapeOptions shape = new ShapeOptions();

  @Option(
      names = "--evaluations",
      paramLabel = "N",
      defaultValue = "60",
      description = "Lips to try at most (default: ${DEFAULT-VALUE}).")
  int evaluations = 60;

  @Option(
      names = "--minutes",
      paramLabel = "N",
      description = "Minutes for the search at most; the proof comes on top.")
  @Nullable Double minutes;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Another one searches along another way (default: ${DEFAULT-VALUE}).")
  long seed = 1;

  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin KeepOptions keep = new KeepOptions();
  @Mixin OutputOptions output = new OutputOptions();

  ImproveCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    LoadedLip lip = Lips.one(profile, wanted);
    Goal goal = goals.read(lip, wanted);
    SearchSpace space = shape.space(lip, wanted);
    RunOptions options = solve.read(wanted);
    budget(options, wanted);
    keep.check(wanted);
    wanted.check();
    if (lip == null || space == null || goal == null) {
      throw new IllegalStateException("what cannot be read is a problem");
    }
    ResultFolder folder = output.folder(output.json ? null : RankCommand.USUAL_FOLDER);
    if (profile != null) {
      CalibrationOptions.tellLeftOut(this, "improve", List.of(profile));
    }
    ImproveStudy.Asked question =
        new ImproveStudy.Asked(
            lip.profile(), space.space(), space.limits(), goal, evaluations, seed);
    long start = desk.clock().getAsLong();
    double most = minutes == null ? Double.POSITIVE_INFINITY : 60 * minutes;
    Improvement found =
        watched(
            progress ->
                keep.studies(desk, folder != null)
                    .improve(
                        question,
                        options,
                        keep.figures(),
                        () -> desk.secondsSince(start) > most,
                        desk.cancel(),
                        progress));
    return finish(found, folder, desk.secondsSince(start));
  }

  private void budget(RunOptions options, Wanted wanted) {
    if (evaluations < 2 || evaluations > MOST_EVALUATIONS) {
      wanted.fault(
          "--evaluations", "2 to " + MOST_EVALUATIONS + " lips can be tried, got " + evaluations);
    }
    if (minutes != null && !(minutes > 0)) {
      wanted.fault("--minutes", "the time must be above 0, got " + minutes);
    }
    if (options.level() == MeshLevel.COARSE) {
      wanted.fault(
          "--mesh",
          "the search goes over coarse grids already; the proof needs others, medium or fine");
    }
  }

  private int finish(Improvement found, @Nullable ResultFolder folder, double seconds)
      throws InputException {
    if (found.status() == SolveStatus.CANCELLED) {
      tell(
          "stopped on request after "
              + found.history().size()
              + " evaluations, which are kept: the same command goes on from there. There is no"
              + " result.");
      return ExitCode.CANCELLED;
    }
    if (found.history().isEmpty()) {
      tell(
          "no lip was found that can be built within the limits"
              + (found.refusal().isEmpty() ? "" : ", most often because " + found.refusal())
              + "; widen them.");
      return ExitCode.BAD_INPUT;
    }
    String document = ImproveDocument.text(found, seconds);
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(ImprovePage.of(found)));
      effort(found.history().size() + " evaluations", seconds);
    }
    int code = found.proof().lips().isEmpty() ? ExitCode.NOT_USABLE : ExitCode.DONE;
    if (folder == null) {
      return code;
    }
    ImproveFiles.write(folder, found, document);
    return tellFiles(folder, "Lips, coupons, pictures, tables and JSON", output.json, code);
  }
}
