package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.BatchRunner;
import hemline.solver.study.LeakKey;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import hemline.viewer.page.BatchPage;
import hemline.viewer.page.PageText;
import hemline.viewer.project.Engine;
import hemline.viewer.report.BatchDocument;
import hemline.viewer.report.BatchFiles;
import hemline.viewer.report.BatchRow;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Solves many sections for one table. */
@Command(
    name = "batch",
    description = {
      "Solve many sections for one table.",
      "The sections of a CSV file, or every lip at every gap, suction and ground speed. Each"
          + " section is kept once solved: the same command goes on after a stop.",
      "Without --json the files go to hemline-results unless --out names another folder."
    },
    customSynopsis = {
      "hemline batch TABLE.csv [options]",
      "       hemline batch DIR|FILES... --gaps 1mm..6mm --suctions 200Pa..1kPa [options]"
    },
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class BatchCommand extends Job {
  @Parameters(
      arity = "0..*",
      paramLabel = "STUDY",
      description = {
        "One table of sections with the head line lip, gap (mm), suction (Pa), ground speed (m/s),",
        "or folders of lip files, lip files and drawings of a lip."
      })
  List<Path> study = new ArrayList<>();

  @Option(names = "--suctions", paramLabel = "Q", description = "Suction or range of suctions.")
  @Nullable String suctions;

  @Option(
      names = "--suction-steps",
      paramLabel = "N",
      defaultValue = "3",
      description = "Suctions in the range (default: ${DEFAULT-VALUE}).")
  int suctionSteps = 3;

  @Option(
      names = "--ground-speed-steps",
      paramLabel = "N",
      defaultValue = "3",
      description = "Speeds where --ground-speed is a range (default: ${DEFAULT-VALUE}).")
  int speedSteps = 3;

  @Option(
      names = "--spark",
      paramLabel = "MASTER",
      description = {
        "Solve on a cluster of Apache Spark, such as spark://host:7077; results and what is kept",
        "are the same. Small batches are solved on this machine all the same."
      })
  @Nullable String spark;

  @Mixin GapOptions gaps = new GapOptions(6);
  @Mixin GroundOptions ground = new GroundOptions();
  @Mixin SolveOptions solve = new SolveOptions();
  @Mixin KeepOptions keep = new KeepOptions();
  @Mixin OutputOptions output = new OutputOptions();

  BatchCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    BatchSections batch = sections(wanted);
    RunOptions options = solve.read(wanted);
    BatchRunner cluster = spark == null ? null : Cluster.of(spark, wanted);
    keep.check(wanted);
    wanted.check();
    ResultFolder folder = output.folder(output.json ? null : RankCommand.USUAL_FOLDER);
    CalibrationOptions.tellLeftOut(this, "batch", study);
    String solver = Engine.fingerprint();
    ResultStore<SectionResult> store = keep.figures();
    long start = desk.clock().getAsLong();
    BatchAnswer answer = answer(batch.sections(), options, store, cluster);
    if (!answer.complete()) {
      return stopped(answer, batch.sections().size());
    }
    List<BatchRow> rows = new ArrayList<>();
    for (int i = 0; i < batch.sections().size(); i++) {
      SealSection section = batch.sections().get(i);
      rows.add(
          new BatchRow(
              Lips.withNotices(answer.results().get(i), batch.lips().get(i)),
              LeakKey.of(section, options),
              solver));
    }
    return finish(answer, rows, options, folder, desk.secondsSince(start));
  }

  private BatchAnswer answer(
      List<SealSection> sections,
      RunOptions options,
      ResultStore<SectionResult> store,
      @Nullable BatchRunner cluster)
      throws InputException {
    Studies studies = keep.studies(desk, false);
    if (cluster == null) {
      return watched(
          progress ->
              studies.batch(sections, options, store, here -> here, desk.cancel(), progress));
    }
    try {
      return watched(
          progress ->
              studies.batch(
                  sections,
                  options,
                  store,
                  here -> new Cluster(here, cluster, this::tell),
                  desk.cancel(),
                  progress));
    } catch (IllegalStateException e) {
      String goOn = keep.anew ? "" : "; what it solved is kept, and the same command goes on";
      throw new InputException("cluster", "--spark", e.getMessage() + goOn);
    }
  }

  private BatchSections sections(Wanted wanted) {
    var air = ground.air(wanted);
    boolean table =
        study.size() == 1 && study.get(0).toString().toLowerCase(Locale.ROOT).endsWith(".csv");
    if (table) {
      boolean more =
          gaps.gaps != null
              || suctions != null
              || ground.groundSpeed != null
              || ground.air.spanwiseSpeed != null;
      if (more) {
        wanted.fault(
            "STUDY", "a table names gaps, suctions and speeds itself; leave the options out");
      }
      return BatchSections.table(study.get(0), air, wanted);
    }
    List<LoadedLip> lips = Lips.all(study, wanted);
    List<GroundMotion> motions = new ArrayList<>();
    GroundMotion along = ground.alongOnly(wanted);
    for (double speed :
        ground.groundSpeed == null
            ? List.of(0.0)
            : wanted.speeds(
                "--ground-speed",
                ground.groundSpeed,
                wanted.steps("--ground-speed-steps", speedSteps))) {
      motions.add(new GroundMotion(speed, along.spanwiseSpeed()));
    }
    return BatchSections.product(
        lips,
        gaps.read(wanted),
        wanted.suctions("--suctions", suctions, wanted.steps("--suction-steps", suctionSteps)),
        motions,
        air,
        wanted);
  }

  private int finish(
      BatchAnswer answer,
      List<BatchRow> rows,
      RunOptions options,
      @Nullable ResultFolder folder,
      double seconds) {
    String document = BatchDocument.text(answer, rows, options, solverOf(rows), seconds);
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(BatchPage.of(answer)));
      effort(rows.size() + " sections", seconds);
    }
    List<SolveStatus> statuses = rows.stream().map(row -> row.result().status()).toList();
    int code = exitCode(statuses, false);
    if (folder == null) {
      return code;
    }
    BatchFiles.write(folder, rows, document);
    return tellFiles(folder, "Table as CSV and Arrow and its JSON", output.json, code);
  }

  private static String solverOf(List<BatchRow> rows) {
    return rows.isEmpty() ? Engine.UNKNOWN : rows.get(0).solver();
  }

  private int stopped(BatchAnswer answer, int asked) {
    tell(
        "stopped on request; "
            + answer.results().size()
            + " of "
            + asked
            + " sections are solved"
            + (keep.anew ? " and let go." : " and kept; the same command goes on from here."));
    return ExitCode.CANCELLED;
  }
}
