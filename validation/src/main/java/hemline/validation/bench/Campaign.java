package hemline.validation.bench;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.SectionSetup;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.MeshLevel;
import hemline.solver.measure.SectionMeter;
import hemline.solver.refine.FamilySolver;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/**
 * Solves sections on the three grids of a family and, on the medium level, started from the finest,
 * on one twice as fine, and keeps a table of what each gave: {@code CampaignBandsTest} judges bands
 * by it.
 *
 * <p>A section's rows are added to the table when all of them are there, so that a run that was
 * broken off goes on where it stopped.
 */
final class Campaign {
  /** Cells for each base cell of the family. */
  private static final int[] FAMILY = {2, 3, 4};

  /** The same with the grid at the end that bands of all levels are judged by. */
  private static final int[] JUDGED = {2, 3, 4, 8};

  private static final List<Figure> FIGURES =
      List.of(
          Figure.DISCHARGE_COEFFICIENT, Figure.LEAK_FLOW, Figure.LIP_FORCE_Y, Figure.GROUND_DRAG);

  static final String HEAD =
      "lip,gap_mm,suction_Pa,ground_m_s,closure,multiplier,cells,status,passes,cpu_s,"
          + "discharge,leak_m2_s,lip_force_y_N_m,ground_drag_N_m";

  private final Path table;
  private final MeshLevel level;
  private final int[] multipliers;
  private final Consumer<String> progress;

  /**
   * Prepares a run.
   *
   * @param table file that is written and gone on with
   * @param level of the family
   * @param progress hears a line for each section
   */
  Campaign(Path table, MeshLevel level, Consumer<String> progress) {
    this.table = table;
    this.level = level;
    multipliers = level == MeshLevel.MEDIUM ? JUDGED : FAMILY;
    this.progress = progress;
  }

  /** Solves the sections that the table lacks, on some threads. */
  void run(List<CampaignSection> sections, int threads) throws IOException, InterruptedException {
    Map<String, List<String>> kept = kept();
    StringBuilder text = new StringBuilder(HEAD).append('\n');
    kept.values().forEach(rows -> rows.forEach(row -> text.append(row).append('\n')));
    Files.writeString(table, text);
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<?>> running = new ArrayList<>();
      for (CampaignSection one : sections) {
        if (!kept.containsKey(one.name())) {
          running.add(pool.submit(() -> add(one)));
        }
      }
      for (Future<?> future : running) {
        future.get();
      }
    } catch (ExecutionException e) {
      throw new IOException("the campaign stopped: " + e.getCause(), e);
    } finally {
      pool.shutdownNow();
    }
    sort(sections);
  }

  /** Puts the table into the order of the sections, whichever was solved first. */
  private void sort(List<CampaignSection> sections) throws IOException {
    Map<String, List<String>> kept = kept();
    StringBuilder text = new StringBuilder(HEAD).append('\n');
    for (CampaignSection one : sections) {
      kept.getOrDefault(one.name(), List.of()).forEach(row -> text.append(row).append('\n'));
    }
    Files.writeString(table, text);
  }

  /** Whole sections of the table, by name. */
  private Map<String, List<String>> kept() throws IOException {
    Map<String, List<String>> kept = new LinkedHashMap<>();
    if (Files.exists(table)) {
      List<String> lines = Files.readAllLines(table);
      if (!lines.isEmpty() && !lines.get(0).equals(HEAD)) {
        throw new IOException(table + " is the table of another campaign; move it away");
      }
      for (String line : lines.subList(Math.min(1, lines.size()), lines.size())) {
        String[] cell = line.split(",", -1);
        if (cell.length == HEAD.split(",").length) {
          String name = String.join(",", List.of(cell).subList(0, 4));
          kept.computeIfAbsent(name, n -> new ArrayList<>()).add(line);
        }
      }
      kept.values().removeIf(rows -> rows.size() != multipliers.length);
    }
    return kept;
  }

  private Void add(CampaignSection one) throws IOException {
    List<String> rows = rows(one);
    String text = String.join("\n", rows) + "\n";
    synchronized (this) {
      Files.writeString(table, text, StandardCharsets.UTF_8, StandardOpenOption.APPEND);
      progress.accept(rows.get(rows.size() - 1));
    }
    return null;
  }

  private List<String> rows(CampaignSection one) {
    SealSection section = one.section();
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = FamilySolver.design(setup, level);
    Closure closure = FamilySolver.choose(setup);
    CpuClock clock = CpuClock.start();
    List<Double> seconds = new ArrayList<>();
    List<FlowSolution> flows =
        SequencedSolver.solve(
            grid -> setup.problem(design.lines(multipliers[grid]), closure),
            multipliers.length,
            -section.suction() / section.fluid().density(),
            0,
            StoppingLimits.LEAK,
            new CancelToken(),
            (done, what) -> seconds.add(clock.seconds()));
    List<GridRun> grids = flows.stream().map(flow -> SectionMeter.measure(setup, flow)).toList();
    List<String> rows = new ArrayList<>();
    for (int g = 0; g < multipliers.length; g++) {
      rows.add(one.name() + "," + closure.key() + "," + grid(g, grids, seconds));
    }
    return rows;
  }

  /** Multiplier, what was spent and the figures of one grid; a grid that was not reached failed. */
  private String grid(int g, List<GridRun> grids, List<Double> seconds) {
    if (g >= grids.size()) {
      return multipliers[g] + ",0," + SolveStatus.FAILED + ",0,0" + ",".repeat(FIGURES.size());
    }
    GridRun run = grids.get(g);
    StringBuilder text = new StringBuilder();
    double spent = seconds.get(g) - (g > 0 ? seconds.get(g - 1) : 0);
    text.append(
        String.format(
            Locale.ROOT,
            "%d,%d,%s,%d,%.2f",
            multipliers[g],
            run.cells(),
            run.status(),
            run.iterations(),
            spent));
    for (Figure figure : FIGURES) {
      Double value = run.figures().scalars().get(figure);
      text.append(value == null ? "," : String.format(Locale.ROOT, ",%.7g", value));
    }
    return text.toString();
  }
}
