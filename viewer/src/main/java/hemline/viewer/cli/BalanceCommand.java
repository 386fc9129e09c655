package hemline.viewer.cli;

import hemline.shared.file.LoadedLip;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.plenum.HoldVerdict;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.rig.Calibrations;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.page.BalancePage;
import hemline.viewer.page.PageText;
import hemline.viewer.project.Engine;
import hemline.viewer.project.InventedLeaks;
import hemline.viewer.project.KeptFolder;
import hemline.viewer.project.KeptResults;
import hemline.viewer.report.BalanceDocument;
import hemline.viewer.report.BalanceFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Balances a whole machine. */
@Command(
    name = "balance",
    description = {
      "Balance a machine: suction, downforce, ride height, relief valve, hold and grip.",
      "Sections solved once are kept and found again."
    },
    customSynopsis = "hemline balance MACHINE [options]",
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class BalanceCommand extends Job {
  /** Set by the launcher when it makes its archive of classes. */
  private static final String REHEARSAL = "hemline.rehearsal";

  private static final double USUAL_FACTOR = 1.5;

  @Parameters(index = "0", arity = "0..1", paramLabel = "MACHINE", description = "Machine file.")
  @Nullable Path machine;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = {
        "Another value in place of the file's, such as fan.speed=22000rpm or",
        "axles.front.stiffness=80N/mm; valve= leaves a key out. May be repeated."
      })
  Map<String, String> changed = new LinkedHashMap<>();

  @Option(
      names = "--lips",
      arity = "1..*",
      paramLabel = "DIR|FILES",
      description = "Lips to try all round in place of the machine's own.")
  List<Path> lips = new ArrayList<>();

  @Option(
      names = "--factor",
      paramLabel = "N",
      description = {
        "How many times softer tyres and frame may be before a lip touches;",
        "the relief valve is set for it (default: 1.5)."
      })
  double factor = USUAL_FACTOR;

  @Option(
      names = "--mesh",
      paramLabel = "LEVEL",
      defaultValue = "coarse",
      description = "Finest grid of the sections: coarse, medium or fine (default: coarse).")
  String mesh = "coarse";

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Solves running at once; results do not depend on it (default: all cores).")
  int threads = Runtime.getRuntime().availableProcessors();

  @Mixin KeepOptions keep = new KeepOptions();

  @Mixin CalibrationOptions calibration = new CalibrationOptions();
  @Mixin OutputOptions output = new OutputOptions();

  BalanceCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    Machine read = read(wanted);
    List<LipProfile> others = new ArrayList<>();
    if (!lips.isEmpty()) {
      Lips.all(lips, wanted).stream().map(LoadedLip::profile).forEach(others::add);
    }
    double atLeast = wanted.factor("--factor", factor);
    RunOptions options =
        new RunOptions(
            wanted.choice("--mesh", mesh, MeshLevel.values(), MeshLevel::key),
            Closure.AUTO,
            false,
            wanted.threads("--threads", threads));
    Calibrations calibrations = calibrations(read, others, wanted);
    keep.check(wanted);
    wanted.check();
    if (read == null) {
      throw new IllegalStateException("a machine that cannot be read is a problem");
    }
    ResultStore<LeakPoint> store = keep.anew ? ResultStore.none() : kept();
    Studies studies = Boolean.getBoolean(REHEARSAL) ? desk.studies() : keep.studies(desk, false);
    ResultFolder folder = output.folder(null);
    long start = desk.clock().getAsLong();
    MachineBalance balance;
    try {
      balance =
          watched(
              progress ->
                  studies.balance(
                      read,
                      others,
                      atLeast,
                      options,
                      store,
                      calibrations,
                      desk.cancel(),
                      progress));
    } catch (KeptOnly.MissingException e) {
      return ExitCode.AGAIN;
    }
    return finish(balance, options, folder, desk.secondsSince(start));
  }

  private Calibrations calibrations(
      @Nullable Machine read, List<LipProfile> others, Wanted wanted) {
    if (read == null || machine == null) {
      return Calibrations.NONE;
    }
    List<Path> places = new ArrayList<>(MachineFile.lipFiles(machine));
    places.addAll(lips);
    List<LipProfile> used = new ArrayList<>(others);
    read.floor().edges().forEach(edge -> used.add(edge.lip()));
    return calibration.read(places, used, wanted);
  }

  private ResultStore<LeakPoint> kept() {
    boolean rehearsal = Boolean.getBoolean(REHEARSAL);
    if (rehearsal) {
      tell("this is a rehearsal with invented leaks; its figures mean nothing.");
    }
    return KeptResults.leaks(
        keep.keep == null ? KeptFolder.LEAKS.place() : keep.keep,
        rehearsal ? InventedLeaks.SOLVER : Engine.fingerprint());
  }

  private @Nullable Machine read(Wanted wanted) {
    Path file = machine;
    if (file == null) {
      wanted.fault(
          "MACHINE", "name a machine file, such as profiles/machines/silo-wall-crawler.json");
      return null;
    }
    try {
      return MachineFile.read(file, changed);
    } catch (InputException e) {
      wanted.addAll(e);
      return null;
    }
  }

  private int finish(
      MachineBalance balance, RunOptions options, @Nullable ResultFolder folder, double seconds) {
    if (!balance.complete()) {
      tell(NoticeWords.of(balance.notices().get(0)));
      return desk.cancel().isCancelled() ? ExitCode.CANCELLED : ExitCode.NOT_USABLE;
    }
    String document =
        folder == null && !output.json
            ? ""
            : BalanceDocument.text(balance, options.level().key(), seconds);
    if (output.json) {
      print(document);
    } else {
      print(PageText.lines(BalancePage.of(balance, options.level().key())));
      int sections = balance.leakPoints().size();
      effort(sections + " sections on " + options.level().key() + " grids", seconds);
    }
    boolean shown =
        balance.operation().rest() != null
            && balance.holding().holds().stream()
                .noneMatch(h -> h.judgement().verdict() == HoldVerdict.NOT_SHOWN);
    int code = shown ? ExitCode.DONE : ExitCode.NOT_USABLE;
    if (folder != null) {
      BalanceFiles.write(folder, balance, document, options.level().key());
      return tellFiles(folder, "Report, plots, tables and JSON", output.json, code);
    }
    if (!output.json) {
      print(List.of("Add --out DIR for the report, plots and tables."));
    }
    return code;
  }
}
