package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.RandomLips;
import hemline.solver.grid.MeshLevel;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * Every valid outline gives figures.
 *
 * <p>{@code -Dhemline.outlines=500} takes that many instead of {@value #FEW}, {@code
 * -Dhemline.grids=3} all grids instead of the coarsest, {@code -Dhemline.mesh=coarse|medium|fine}
 * another mesh; {@code target/random-outlines.txt} then has a line for each, and {@code
 * -Dhemline.hard=write} puts the counts into the table of what was tried.
 */
class RandomOutlinesTest {
  private static final int FEW = 60;

  /** Seconds of a processor after which a section counts as hung. */
  private static final double HUNG = 60;

  private static final Path TABLE = Path.of("..", "validation", "hard", "hard.csv");

  /** Share of sections that may be without a steady flow. */
  private static final double UNSTEADY = 0.1;

  @Test
  void everyValidOutlineGivesFigures() throws Exception {
    int count = Integer.getInteger("hemline.outlines", FEW);
    int grids = Integer.getInteger("hemline.grids", 1);
    MeshLevel level =
        MeshLevel.valueOf(System.getProperty("hemline.mesh", "coarse").toUpperCase(Locale.ROOT));
    Map<SolveStatus, Integer> counts = new EnumMap<>(SolveStatus.class);
    List<Tried> tried =
        LongStream.range(0, count)
            .parallel()
            .mapToObj(seed -> line(seed, level, grids, counts))
            .toList();
    List<String> lines = tried.stream().map(Tried::line).toList();
    List<String> bad = lines.stream().filter(line -> line.contains("FAILED")).toList();
    double longest = tried.stream().mapToDouble(Tried::seconds).max().orElse(0);
    Files.writeString(
        Path.of("target", "random-outlines.txt"),
        counts + "\n" + String.join("\n", lines) + "\n",
        StandardCharsets.UTF_8);
    if ("write".equals(System.getProperty("hemline.hard"))) {
      write(tried, bad.size(), longest);
    }
    assertThat(bad).as("%s", counts).isEmpty();
    assertThat(longest).isLessThan(HUNG);
    assertThat(counts.getOrDefault(SolveStatus.UNSTEADY, 0).doubleValue())
        .as("%s", counts)
        .isLessThanOrEqualTo(UNSTEADY * count);
  }

  /** One outline: its line and the processor's seconds. */
  private record Tried(String line, double seconds) {}

  /** The line of the table that {@code hemline.viewer.hard} keeps for its own parts. */
  private static void write(List<Tried> tried, int failed, double longest) throws IOException {
    String part = "random outlines through the solver";
    List<String> rows = new ArrayList<>(Files.readAllLines(TABLE));
    rows.removeIf(row -> row.startsWith(part));
    long hung = tried.stream().filter(t -> t.seconds() >= HUNG).count();
    rows.add(
        String.format(
            Locale.ROOT,
            "%s,0,%d,0,0,%d,%d,%d,0,%.2f",
            part,
            tried.size(),
            tried.size() - failed,
            hung,
            failed,
            longest));
    Files.writeString(TABLE, String.join("\n", rows) + "\n");
  }

  private static GridFamily solve(SealSection section, MeshLevel level, int grids) {
    return new FamilySolver()
        .solve(
            SolveRequest.cold(section, level, grids, Closure.AUTO),
            new CancelToken(),
            ProgressListener.NONE);
  }

  private static Tried line(
      long seed, MeshLevel level, int grids, Map<SolveStatus, Integer> counts) {
    SealSection section = RandomLips.section(seed);
    long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    GridFamily family = solve(section, level, grids);
    if (family.finestUsable() == null) {
      // a coarse grid may lose the flow; a section has three
      family = solve(section, level, SectionFamily.GRIDS);
    }
    GridSolution finest = family.finestUsable();
    SolveStatus status = finest == null ? SolveStatus.FAILED : finest.run().status();
    synchronized (counts) {
      counts.merge(status, 1, Integer::sum);
    }
    List<String> words = new ArrayList<>();
    for (GridRun run : family.runs()) {
      run.figures()
          .scalars()
          .forEach((figure, value) -> assertThat(value).as("%s of %d", figure, seed).isFinite());
      double leak = run.figures().scalars().getOrDefault(Figure.DISCHARGE_COEFFICIENT, Double.NaN);
      words.add(
          String.format(
              Locale.ROOT,
              "%d cells %d passes C_d %.4f %s",
              run.cells(),
              run.iterations(),
              leak,
              run.termination()));
    }
    double seconds = 1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start);
    String line =
        String.format(
            Locale.ROOT,
            "seed %d, %.2f mm, %.0f Pa, %.1f m/s, %.1f s: %s | %s",
            seed,
            1e3 * section.gap(),
            section.suction(),
            section.ground().speed(),
            seconds,
            status,
            String.join(" | ", words));
    return new Tried(line, seconds);
  }
}
