package hemline.validation.bench;

import hemline.shared.problem.InputException;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Measures the solver on this machine and writes tables and plots; validation/README.md tells how
 * to start it.
 *
 * <ul>
 *   <li>{@code speed [FOLDER]}: counts.csv, speed.csv and speed.svg of the whole set of sections
 *   <li>{@code growth [FOLDER [CELLS]]}: growth.csv, growth-fit.csv and growth.svg of one section
 *       up to so many cells
 *   <li>{@code campaign [FOLDER [THREADS]]}: campaign-coarse.csv and campaign.csv, sections on the
 *       grids of two levels and a finer one for judging bands; a run that was broken off goes on
 * </ul>
 */
public final class Main {
  private static final Path PROFILES = Path.of("..", "profiles");
  private static final Path CAMPAIGN =
      Path.of("src", "main", "resources", "hemline", "validation", "campaign");
  private static final int LARGEST = 300_000;

  /** The direct solution of Newton's method needs gigabytes beyond this. */
  private static final int LARGEST_LAMINAR = 80_000;

  private final PrintStream out;
  private final Path folder;

  private Main(PrintStream out, Path folder) {
    this.out = out;
    this.folder = folder;
  }

  /** Starts a measurement. */
  public static void main(String[] args) throws IOException, InputException, InterruptedException {
    String job = args.length > 0 ? args[0] : "";
    Main main = new Main(System.out, Path.of(args.length > 1 ? args[1] : "bench"));
    switch (job) {
      case "speed" -> main.speed();
      case "growth" -> main.growth(args.length > 2 ? Integer.parseInt(args[2]) : LARGEST);
      case "campaign" -> main.campaign(args.length > 2 ? Integer.parseInt(args[2]) : 2);
      default -> System.err.println("say what to measure: speed, growth or campaign");
    }
  }

  /** Machines are told apart roughly only: few processors are a light machine. */
  private static String machineClass() {
    int processors = Runtime.getRuntime().availableProcessors();
    return processors <= 4 ? "light" : processors <= 16 ? "medium" : "heavy";
  }

  private void speed() throws IOException, InputException {
    SpeedRun run = new SpeedRun(BenchSection.all(PROFILES), out::println);
    write("counts.csv", CountTable.text(run.counts()));
    write("speed.csv", SpeedRow.text(run.rows(), machineClass()));
    write("speed.svg", SpeedChart.of(run.rows()));
  }

  private void campaign(int threads) throws IOException, InputException, InterruptedException {
    Files.createDirectories(folder);
    List<CampaignSection> all = CampaignSection.all(List.of(PROFILES, CAMPAIGN));
    new Campaign(folder.resolve("campaign-coarse.csv"), MeshLevel.COARSE, out::println)
        .run(all, threads);
    new Campaign(folder.resolve("campaign.csv"), MeshLevel.MEDIUM, out::println).run(all, threads);
  }

  private void growth(int largest) throws IOException, InputException {
    Yardstick yardstick = new Yardstick(Triad.bandwidth());
    List<GrowthFit> fits = new ArrayList<>();
    fits.add(family(BenchSection.FAINT, Closure.LAMINAR, Math.min(largest, LARGEST_LAMINAR)));
    write(fits, yardstick);
    fits.add(family(BenchSection.CRAWLER, Closure.SST, largest));
    write(fits, yardstick);
    for (GrowthFit fit : fits) {
      out.println(
          String.format(
              Locale.ROOT,
              "%s: cost grows as cells^%.2f, asked %.2f, striven for %.2f",
              fit.rows().get(0).flow().closure().key(),
              fit.cost().exponent(),
              GrowthFit.TARGET,
              GrowthFit.STRETCH));
    }
  }

  private void write(List<GrowthFit> fits, Yardstick yardstick) throws IOException {
    List<GrowthRow> rows = fits.stream().flatMap(f -> f.rows().stream()).toList();
    write("growth.csv", GrowthRow.text(rows, yardstick, machineClass()));
    write("growth-fit.csv", GrowthFit.text(fits));
    write("growth.svg", GrowthChart.of(fits));
  }

  private GrowthFit family(double suction, Closure closure, int largest) throws InputException {
    // once on small grids before it counts, to have compiled code
    new GrowthRun(BenchSection.of(PROFILES, "plain-flat-8", suction), closure, row -> {})
        .run(10_000);
    List<GrowthRow> rows =
        new GrowthRun(BenchSection.of(PROFILES, "plain-flat-8", suction), closure, this::tell)
            .run(largest);
    return GrowthFit.of(rows);
  }

  private void tell(GrowthRow row) {
    out.println(
        String.format(
            Locale.ROOT,
            "%s, %d cells: %s, %d passes, %.2f s",
            row.flow().closure().key(),
            row.work().cells(),
            row.work().status(),
            row.work().passes(),
            row.seconds()));
  }

  private void write(String name, String text) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve(name), text);
    out.println("wrote " + folder.resolve(name));
  }
}
