package hemline.solver.study;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Simulates a batch of a million sections on many cores and holds the table of {@code PLAN.md} to
 * it; {@code -Dhemline.plan=write} writes the table anew.
 *
 * <p>Sections take the times measured on the lips of the campaign: the three grids of a medium
 * section, and a quarter more for the second flow model. Each free core takes the next section of
 * the list; the machine that asks keeps one result after the other.
 */
final class MakespanTest {
  private static final long SEED = 23;
  private static final int SECTIONS = 1_000_000;
  private static final double SECOND_MODEL = 1.25;

  /** What keeping a result costs the machine that asks, s: twice what 16,000 results took. */
  private static final double KEEPING = 0.0006;

  private static final Path PLAN = Path.of("PLAN.md");
  private static final String BEGIN = "<!-- makespan: written by MakespanTest -->\n";
  private static final String END = "<!-- makespan: end -->\n";

  /** Seconds of CPU time of each section of the campaign. */
  private static double[] measured() throws Exception {
    Map<String, Double> times = new LinkedHashMap<>();
    List<String> lines = Files.readAllLines(Path.of("../validation/bench/campaign.csv"));
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",");
      // the grid of multiplier 8 is the reference, which no section has
      if (Integer.parseInt(cells[5]) <= 4) {
        String section = String.join(",", Arrays.copyOf(cells, 4));
        times.merge(section, Double.parseDouble(cells[9]), Double::sum);
      }
    }
    return times.values().stream().mapToDouble(t -> t * SECOND_MODEL).toArray();
  }

  /**
   * Time to the last kept result.
   *
   * @param times of the sections in the order in which they start
   * @param keeping time that each result takes the machine that asks; one at a time
   */
  private static double makespan(double[] times, int cores, double keeping) {
    PriorityQueue<Double> ends = new PriorityQueue<>();
    double kept = 0;
    for (int i = 0; i < times.length + cores; i++) {
      if (i >= cores && !ends.isEmpty()) {
        double free = ends.remove();
        kept = Math.max(kept, free) + keeping;
        if (i < times.length) {
          ends.add(free + times[i]);
        }
      } else if (i < times.length) {
        ends.add(times[i]);
      }
    }
    return kept;
  }

  private static double[] drawn(double[] measured, int count) {
    SplittableRandom random = new SplittableRandom(SEED);
    double[] times = new double[count];
    Arrays.setAll(times, i -> measured[random.nextInt(measured.length)]);
    return times;
  }

  private static String hours(double seconds) {
    double hours = seconds / 3600;
    return hours >= 100
        ? String.format(Locale.ROOT, "%.0f d", hours / 24)
        : String.format(Locale.ROOT, "%.1f h", hours);
  }

  private static String table(double[] measured) {
    double[] times = drawn(measured, SECTIONS);
    double whole = Arrays.stream(times).sum();
    List<String> lines = new ArrayList<>();
    lines.add("| cores | solving alone | efficiency | results kept one by one | efficiency |");
    lines.add("| --- | --- | --- | --- | --- |");
    for (int cores : new int[] {1, 10, 100, 1000}) {
      double free = makespan(times, cores, 0);
      double kept = makespan(times, cores, KEEPING);
      lines.add(
          String.format(
              Locale.ROOT,
              "| %d | %s | %.1f %% | %s | %.1f %% |",
              cores,
              hours(free),
              100 * whole / cores / free,
              hours(kept),
              100 * whole / cores / kept));
    }
    return String.join("\n", lines) + "\n";
  }

  @Test
  void thePlanShowsWhatIsSimulated() throws Exception {
    String page = Files.readString(PLAN);
    int from = page.indexOf(BEGIN) + BEGIN.length();
    int to = page.indexOf(END);
    String table = table(measured());
    if ("write".equals(System.getProperty("hemline.plan"))) {
      Files.write(PLAN, (page.substring(0, from) + table + page.substring(to)).getBytes(UTF_8));
    } else {
      assertThat(page.substring(from, to))
          .as("the table of PLAN.md, which -Dhemline.plan=write writes anew")
          .isEqualTo(table);
    }
  }

  /** List scheduling by hand. */
  @Test
  void freeCoresTakeTheNextSection() {
    double[] times = {3, 1, 1, 2, 2};
    assertThat(makespan(times, 1, 0)).isEqualTo(9);
    assertThat(makespan(times, 2, 0)).isEqualTo(5);
    assertThat(makespan(times, 9, 0)).isEqualTo(3);
    assertThat(makespan(times, 9, 2)).as("the first is kept at 3, the last at 11").isEqualTo(11);
  }
}
