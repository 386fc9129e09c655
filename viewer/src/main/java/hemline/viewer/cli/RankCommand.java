package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.rig.CalibratedRanking;
import hemline.solver.rig.Calibrations;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.page.PageText;
import hemline.viewer.page.RankingPage;
import hemline.viewer.project.StudyRoom;
import hemline.viewer.report.RankingDocument;
import hemline.viewer.report.RankingFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Ranks lips by their leak against a baseline. */
@Command(
    name = "rank",
    description = {
      "Rank lips by their leak against a baseline lip, at one gap or over a range of gaps.",
      "Without --json the files go to hemline-results unless --out names another folder."
    },
    customSynopsis = "hemline rank DIR|FILES... --gaps 1mm..6mm --suction Q [options]",
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class RankCommand extends Job {
  static final String USUAL_FOLDER = "hemline-results";

  @Parameters(
      arity = "0..*",
      paramLabel = "DIR|FILES",
      description = "Folders of lip files, lip files, or SVG or DXF drawings of a lip.")
  List<Path> places = new ArrayList<>();

  @Option(
      names = "--suction",
      paramLabel = "Q",
      description = "Ambient minus plenum pressure, such as 600Pa.")
  @Nullable String suction;

  @Option(
      names = "--baseline",
      paramLabel = "NAME",
      description = "Lip to compare with: a name or a lip file (default: plain flat 8).")
  @Nullable String baseline;

  @Option(
      names = "--every-gap",
      description = "Draw every lip at every gap and write its fields, not only the middle gap.")
  boolean everyGap;

  @Mixin GapOptions gaps = new GapOptions(6);
  @Mixin GapWeights weights = new GapWeights();
  @Mixin GroundOptions ground = new GroundOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin KeepOptions keep = new KeepOptions();
  @Mixin CalibrationOptions calibration = new CalibrationOptions();
  @Mixin OutputOptions output = new OutputOptions();

  RankCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    List<LoadedLip> lips = Lips.all(places, wanted);
    LoadedLip against = Lips.baseline(lips, baseline, wanted);
    List<Double> asked = gaps.read(wanted);
    double atSuction = wanted.suction("--suction", suction);
    GapDistribution spread = weights.read(asked, wanted);
    RunOptions options = solve.read(wanted);
    var motion = ground.motion(wanted);
    var air = ground.air(wanted);
    boolean added = against != null && !lips.contains(against);
    StudyRoom.ranking(
            "rank",
            lips.size() + (added ? 1 : 0),
            asked.size(),
            options,
            Runtime.getRuntime().maxMemory())
        .forEach(problem -> wanted.fault("rank", problem.text()));
    List<LipProfile> ranked = new ArrayList<>(lips.stream().map(LoadedLip::profile).toList());
    if (against != null && !ranked.contains(against.profile())) {
      ranked.add(against.profile());
    }
    Calibrations calibrations = calibration.read(places, ranked, wanted);
    keep.check(wanted);
    wanted.check();
    if (against == null) {
      throw new IllegalStateException("a baseline that cannot be found is a problem");
    }
    List<LipProfile> profiles = lips.stream().map(LoadedLip::profile).toList();
    ResultFolder folder = output.folder(output.json ? null : USUAL_FOLDER);
    SealSection conditions =
        new SealSection(against.profile(), asked.get(0), atSuction, motion, air, List.of());
    long start = desk.clock().getAsLong();
    RankingAnswer answer =
        watched(
            progress ->
                keep.studies(desk, folder != null)
                    .rank(
                        profiles,
                        against.profile(),
                        spread,
                        conditions,
                        options,
                        desk.cancel(),
                        progress));
    return finish(
        Lips.withNotices(CalibratedRanking.of(answer, ranked, calibrations), lips),
        ranked,
        conditions,
        folder,
        desk.secondsSince(start));
  }

  private int finish(
      RankingAnswer answer,
      List<LipProfile> profiles,
      SealSection conditions,
      @Nullable ResultFolder folder,
      double seconds)
      throws InputException {
    List<SolveStatus> statuses = answer.answers().stream().map(a -> a.result().status()).toList();
    boolean complete = !statuses.contains(SolveStatus.CANCELLED);
    if (!complete) {
      return stopped(answer, folder);
    }
    Ranking ranking = answer.ranking();
    String document = RankingDocument.text(ranking, true, seconds);
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(RankingPage.of(ranking)));
      effort(ranking.rows().size() + " lips", seconds);
    }
    int code = exitCode(statuses, false);
    if (folder == null) {
      return code;
    }
    watched(
        progress -> {
          RankingFiles.write(folder, document, answer, profiles, conditions, everyGap, progress);
          return document;
        });
    return tellFiles(folder, "Pictures, tables and JSON", output.json, code);
  }

  /** A ranking cut short says nothing of the order, but the sections solved so far are kept. */
  private int stopped(RankingAnswer answer, @Nullable ResultFolder folder) {
    List<SectionResult> done =
        answer.answers().stream()
            .map(SectionAnswer::result)
            .filter(r -> r.status() != SolveStatus.CANCELLED)
            .toList();
    String kept = "";
    if (folder != null && !done.isEmpty()) {
      RankingFiles.writePartial(folder, done);
      folder.problems().forEach(problem -> tell(problem.toString()));
      if (folder.kept() > 0) {
        kept = " their figures are in " + folder.path().resolve("figures.csv") + ".";
      }
    }
    tell(
        "stopped on request; "
            + done.size()
            + " of "
            + answer.answers().size()
            + " sections were solved, too few for a ranking;"
            + (kept.isEmpty() ? " nothing was written." : kept));
    return ExitCode.CANCELLED;
  }
}
