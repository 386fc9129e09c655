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
 * another mesh; {@code target/random-outlines.txt} then has a line for each.
 */
class RandomOutlinesTest {
  private static final int FEW = 60;

  /** Share of sections that may be without a steady flow. */
  private static final double UNSTEADY = 0.1;

  @Test
  void everyValidOutlineGivesFigures() throws Exception {
    int count = Integer.getInteger("hemline.outlines", FEW);
    int grids = Integer.getInteger("hemline.grids", 1);
    MeshLevel level =
        MeshLevel.valueOf(System.getProperty("hemline.mesh", "coarse").toUpperCase(Locale.ROOT));
    Map<SolveStatus, Integer> counts = new EnumMap<>(SolveStatus.class);
    List<String> lines =
        LongStream.range(0, count)
            .parallel()
            .mapToObj(seed -> line(seed, level, grids, counts))
            .toList();
    List<String> bad = lines.stream().filter(line -> line.contains("FAILED")).toList();
    Files.writeString(
        Path.of("target", "random-outlines.txt"),
        counts + "\n" + String.join("\n", lines) + "\n",
        StandardCharsets.UTF_8);
    assertThat(bad).as("%s", counts).isEmpty();
    assertThat(counts.getOrDefault(SolveStatus.UNSTEADY, 0).doubleValue())
        .as("%s", counts)
        .isLessThanOrEqualTo(UNSTEADY * count);
  }

  private static String line(
      long seed, MeshLevel level, int grids, Map<SolveStatus, Integer> counts) {
    SealSection section = RandomLips.section(seed);
    GridFamily family =
        new FamilySolver()
            .solve(
                SolveRequest.cold(section, level, grids, Closure.AUTO),
                new CancelToken(),
                ProgressListener.NONE);
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
              run.termination().words()));
    }
    return String.format(
        Locale.ROOT,
        "seed %d, %.2f mm, %.0f Pa, %.1f m/s: %s | %s",
        seed,
        1e3 * section.gap(),
        section.suction(),
        section.ground().speed(),
        status,
        String.join(" | ", words));
  }
}
