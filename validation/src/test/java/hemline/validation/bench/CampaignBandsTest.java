package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.Estimate;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.GridClass;
import hemline.solver.refine.GridValues;
import hemline.solver.refine.ThreeGrid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Numerical bands of turbulent lips on medium and on coarse grids against grids twice as fine as
 * the medium ones: {@code bench/campaign.csv} and {@code campaign-coarse.csv}, made by {@link
 * Campaign}. The widths of {@link GridClass} were fitted on the sections at even places; those at
 * odd places prove them.
 */
class CampaignBandsTest {
  private static final int GRIDS = 3;
  private static final Path GUIDE = Path.of("README.md");
  private static final double ROUND_OFF = 1e-12;

  /**
   * One band against the answer of the finer grid.
   *
   * @param place of the section in the campaign
   * @param miss distance over the half-width
   * @param width half-width over the value
   */
  private record Judged(int place, String name, double miss, double width) {}

  private static final List<Judged> LEAKS = new ArrayList<>();
  private static final List<Judged> FORCES = new ArrayList<>();
  private static final List<Judged> DRAGS = new ArrayList<>();
  private static final List<Judged> COARSE_LEAKS = new ArrayList<>();
  private static final List<Judged> COARSE_FORCES = new ArrayList<>();
  private static final List<Judged> COARSE_DRAGS = new ArrayList<>();

  /** The rows of a section: three grids of one level, then the grid that they are judged by. */
  private record Rows(int place, CampaignSection one, List<String[]> grids) {
    Judged judged(String figure, double least, double scale) {
      double[] value = new double[GRIDS];
      double[] size = new double[GRIDS];
      for (int k = 0; k < GRIDS; k++) {
        value[k] = value(grids, k, figure);
        size[k] = 1 / Math.sqrt(value(grids, k, "cells"));
      }
      double natural = Math.max(Math.abs(value[GRIDS - 1]), scale);
      Estimate e =
          ThreeGrid.calibrated(
              new GridValues(value, size, new double[GRIDS]), scale, least * natural);
      double miss = Math.abs(e.value() - value(grids, GRIDS, figure)) / e.numerical();
      return new Judged(place, one.name(), miss, e.numerical() / natural);
    }

    void judge(MeshLevel level, List<Judged> leaks, List<Judged> forces, List<Judged> drags) {
      if (grids.stream().anyMatch(cell -> cell[column("status")].equals("FAILED"))) {
        return;
      }
      double least = GridClass.leastWidth(one.section(), level, Closure.SA);
      double h = one.section().gap();
      double speed = value(grids, GRIDS, "leak_m2_s") / h;
      double force = 0.5 * one.section().fluid().density() * speed * speed * h;
      leaks.add(judged("discharge", least, 0));
      forces.add(judged("lip_force_y_N_m", 2 * least, force));
      drags.add(judged("ground_drag_N_m", 2 * least, force));
    }
  }

  @BeforeAll
  static void judge() throws Exception {
    Map<String, List<String[]>> medium = rows("campaign.csv");
    Map<String, List<String[]>> coarse = rows("campaign-coarse.csv");
    List<CampaignSection> sections =
        CampaignSection.all(
            List.of(
                Path.of("..", "profiles"),
                Path.of("src", "main", "resources", "hemline", "validation", "campaign")));
    List<String> names = sections.stream().map(CampaignSection::name).toList();
    assertThat(List.of(medium.keySet(), coarse.keySet()))
        .as("sections of the tables; make them anew with the campaign command")
        .allSatisfy(kept -> assertThat(kept).containsExactlyElementsOf(names));
    for (int place = 0; place < sections.size(); place++) {
      CampaignSection one = sections.get(place);
      List<String[]> grids = medium.get(one.name());
      List<String[]> coarser = new ArrayList<>(coarse.get(one.name()));
      coarser.add(grids.get(GRIDS));
      new Rows(place, one, grids).judge(MeshLevel.MEDIUM, LEAKS, FORCES, DRAGS);
      new Rows(place, one, coarser)
          .judge(MeshLevel.COARSE, COARSE_LEAKS, COARSE_FORCES, COARSE_DRAGS);
    }
  }

  private static int column(String name) {
    return List.of(Campaign.HEAD.split(",")).indexOf(name);
  }

  private static double value(List<String[]> grids, int k, String name) {
    return Double.parseDouble(grids.get(k)[column(name)]);
  }

  private static Map<String, List<String[]>> rows(String table) throws IOException {
    List<String> lines = Files.readAllLines(Path.of("bench", table));
    assertThat(lines.get(0)).isEqualTo(Campaign.HEAD);
    Map<String, List<String[]>> rows = new LinkedHashMap<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cell = line.split(",", -1);
      String name = String.join(",", List.of(cell).subList(0, 4));
      rows.computeIfAbsent(name, n -> new ArrayList<>()).add(cell);
    }
    return rows;
  }

  private static double held(List<Judged> all, Predicate<Judged> of) {
    List<Judged> some = all.stream().filter(of).toList();
    return some.stream().filter(j -> j.miss() <= 1).count() / (double) some.size();
  }

  private static double medianWidth(List<Judged> all) {
    return all.stream().mapToDouble(Judged::width).sorted().toArray()[all.size() / 2];
  }

  private static boolean proves(Judged judged) {
    return judged.place() % 2 == 1;
  }

  @Test
  void theTableHasEnoughSections() {
    assertThat(LEAKS).hasSizeGreaterThanOrEqualTo(120);
  }

  @Test
  void bandsOfLeaksHoldTheFineAnswer() {
    List<Judged> proving = LEAKS.stream().filter(CampaignBandsTest::proves).toList();
    assertThat(held(LEAKS, CampaignBandsTest::proves)).isBetween(0.93, 0.99);
    assertThat(medianWidth(proving)).isLessThanOrEqualTo(0.012 * (1 + ROUND_OFF));
    assertThat(LEAKS).allSatisfy(judged -> assertThat(judged.miss()).isLessThanOrEqualTo(1.5));
  }

  /** The same on the coarse level, whose errors are twice as large. */
  @Test
  void bandsOfCoarseGridsHoldTheFineAnswer() {
    List<Judged> proving = COARSE_LEAKS.stream().filter(CampaignBandsTest::proves).toList();
    assertThat(held(COARSE_LEAKS, CampaignBandsTest::proves)).isBetween(0.93, 0.99);
    assertThat(medianWidth(proving)).isLessThanOrEqualTo(0.026);
    assertThat(held(COARSE_FORCES, CampaignBandsTest::proves)).isGreaterThanOrEqualTo(0.93);
    assertThat(held(COARSE_DRAGS, CampaignBandsTest::proves)).isGreaterThanOrEqualTo(0.93);
  }

  /** Forces and drag of the ground, whose bands are twice as wide in their natural scale. */
  @Test
  void bandsOfForcesHoldTheFineAnswer() {
    assertThat(held(FORCES, CampaignBandsTest::proves)).isGreaterThanOrEqualTo(0.93);
    assertThat(held(DRAGS, CampaignBandsTest::proves)).isGreaterThanOrEqualTo(0.93);
  }

  @Test
  void theGuideTellsThis() throws IOException {
    List<Judged> worst =
        LEAKS.stream().sorted((a, b) -> Double.compare(b.miss(), a.miss())).toList();
    String text =
        String.format(
            Locale.ROOT,
            "bands of the leak hold the fine answer in %.1f %% of the half not fitted on"
                + " (%.1f %% of the other), at a median half-width of %.1f %%; the worst misses are"
                + " %.2f (%s) and %.2f bands (%s)",
            100 * held(LEAKS, CampaignBandsTest::proves),
            100 * held(LEAKS, j -> !proves(j)),
            100 * medianWidth(LEAKS),
            worst.get(0).miss(),
            worst.get(0).name(),
            worst.get(1).miss(),
            worst.get(1).name());
    assertThat(Files.readString(GUIDE).replaceAll("\\s+", " ")).contains(text);
  }
}
