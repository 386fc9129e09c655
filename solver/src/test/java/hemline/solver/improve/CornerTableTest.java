package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * What corners of six lips do to the leak, by the way of the command (a tenth of a millimetre on
 * coarse grids) and by another one: half that step on grids twice as fine, differences taken here.
 * {@code -Dhemline.corners=write} solves both and writes the table anew (some ten minutes on two
 * cores); without it rows of two lips are solved again by the way of the command.
 */
final class CornerTableTest {
  private static final Path TABLE =
      Path.of("src", "test", "resources", "hemline", "solver", "improve", "corners.csv");
  private static final String HEAD =
      "lip,gap_mm,suction_Pa,corner,axis,effect,numerical,iteration,finer,finerNumerical";

  /** Share by which both ways may differ beyond their bands. */
  private static final double AGREED = 0.05;

  /** Same bits on one machine; on another one only elementary functions may end otherwise. */
  private static final double SAME = 1e-5;

  private record Case(String lip, double gap, double suction, List<Integer> corners) {
    LipDrawing drawing() throws Exception {
      return LipFile.load(Path.of("..", "profiles", lip + ".json")).drawing();
    }

    SealSection section(LipProfile profile) {
      return new SealSection(
          profile, gap, suction, new GroundMotion(0, 0), Air.STANDARD, List.of());
    }
  }

  private static final List<Case> CASES =
      List.of(
          new Case("plain-flat-8", 0.3e-3, 20, List.of(0, 1)),
          new Case("labyrinth-two-teeth", 0.3e-3, 20, List.of(1, 4)),
          new Case("knife-fin", 2e-3, 600, List.of(0, 1)),
          new Case("vortex-trap-one-pocket", 2e-3, 600, List.of(1, 2)),
          new Case("chamfered-flat", 2e-3, 600, List.of(0, 1)),
          new Case("undercut-hook", 2e-3, 600, List.of(0, 8)));

  /** Lips that every build solves again: one laminar, one turbulent. */
  private static final List<Case> AGAIN =
      List.of(
          new Case("plain-flat-8", 0.3e-3, 20, List.of(1)),
          new Case("knife-fin", 2e-3, 600, List.of(1)));

  private static List<CornerEffect> effects(Case c) throws Exception {
    LipDrawing lip = c.drawing();
    return new CornerStudy(new FamilySolver(), ResultStore.none())
        .of(
            lip,
            c.section(LipResolver.resolve(lip)),
            Closure.AUTO,
            c.corners(),
            2,
            new CancelToken(),
            (done, what) -> {});
  }

  private static LipProfile moved(LipDrawing lip, int corner, boolean upwards, double by)
      throws Exception {
    Vertex v = lip.body().at(corner);
    return LipResolver.resolve(
        new CornerSpace(lip, List.of(corner), 1)
            .drawing(
                upwards ? new double[] {v.x(), v.y() + by} : new double[] {v.x() + by, v.y()}));
  }

  private static double leak(SectionResult result, int grid) {
    GridRun run = result.grids().get(grid);
    return run.figures().scalars().getOrDefault(Figure.LEAK_FLOW, Double.NaN);
  }

  /**
   * The effect of 0.1 mm by half steps on medium grids, and the largest difference between its
   * grids; a lowest corner goes up by the whole step, since its effect is not linear. Not a number
   * where fewer than two grids have a flow of both lips: one alone shows no convergence.
   */
  private static double[] finer(Case c, CornerEffect effect, boolean upwards, Closure closure)
      throws Exception {
    LipDrawing lip = c.drawing();
    boolean whole = upwards && effect.lowest();
    double step = whole ? CornerEffect.STEP : 0.5 * CornerEffect.STEP;
    List<SealSection> pair =
        List.of(
            c.section(moved(lip, effect.corner(), upwards, step)),
            c.section(moved(lip, effect.corner(), upwards, whole ? 0 : -step)));
    List<SectionResult> solved =
        new BatchStudy(new PoolRunner(new FamilySolver()), ResultStore.none())
            .run(
                pair,
                new RunOptions(MeshLevel.MEDIUM, closure, false, 2),
                new CancelToken(),
                (done, what) -> {})
            .results();
    List<Double> byGrid = new ArrayList<>();
    int n = Math.min(solved.get(0).grids().size(), solved.get(1).grids().size());
    for (int k = 0; k < n; k++) {
      double slope = Math.log(leak(solved.get(0), k) / leak(solved.get(1), k));
      if (Double.isFinite(slope)) {
        byGrid.add(slope);
      }
    }
    if (byGrid.size() < 2) {
      return new double[] {Double.NaN, Double.NaN};
    }
    double value = byGrid.get(byGrid.size() - 1);
    double apart = byGrid.stream().mapToDouble(slope -> Math.abs(slope - value)).max().orElse(0);
    return new double[] {value, apart};
  }

  private static void write() throws Exception {
    List<String> lines = new ArrayList<>(List.of(HEAD));
    for (Case c : CASES) {
      Closure closure = c.gap() < 1e-3 ? Closure.LAMINAR : Closure.SA;
      for (CornerEffect effect : effects(c)) {
        for (boolean upwards : new boolean[] {false, true}) {
          Estimate e = upwards ? effect.dy() : effect.dx();
          if (e != null) {
            double[] finer = finer(c, effect, upwards, closure);
            lines.add(head(c, effect.corner(), upwards) + told(e) + "," + number(finer));
          }
        }
      }
    }
    Files.write(TABLE, lines);
  }

  private static String head(Case c, int corner, boolean upwards) {
    return String.format(
        Locale.ROOT,
        "%s,%s,%s,%d,%s,",
        c.lip(),
        1e3 * c.gap(),
        c.suction(),
        corner,
        upwards ? "y" : "x");
  }

  private static String told(Estimate e) {
    return number(e.value(), e.numerical(), e.iteration());
  }

  private static String number(double... values) {
    List<String> cells = new ArrayList<>();
    for (double value : values) {
      cells.add(String.format(Locale.ROOT, "%.7g", value));
    }
    return String.join(",", cells);
  }

  /** Both ways agree within a twentieth or their bands, flow models left out of them. */
  @Test
  void bothWaysAgreeOnSixLips() throws Exception {
    if ("write".equals(System.getProperty("hemline.corners"))) {
      write();
    }
    List<String> lines = Files.readAllLines(TABLE);
    assertThat(lines.get(0)).isEqualTo(HEAD);
    List<String> rows = lines.subList(1, lines.size());
    assertThat(rows.stream().map(row -> row.split(",")[0]).distinct()).hasSize(6);
    int without = 0;
    for (String row : rows) {
      String[] cell = row.split(",");
      double[] v = new double[5];
      for (int k = 0; k < v.length; k++) {
        v[k] = Double.parseDouble(cell[5 + k]);
      }
      if (Double.isNaN(v[3])) {
        without++;
        continue;
      }
      double allowed = Math.max(AGREED * Math.abs(v[3]), v[1] + v[2] + v[4]);
      assertThat(Math.abs(v[0] - v[3])).as(row).isLessThanOrEqualTo(allowed);
    }
    assertThat(without).as("rows without a second opinion").isLessThanOrEqualTo(1);
  }

  @Test
  void theTableIsThatOfTheCommand() throws Exception {
    List<String> rows = Files.readAllLines(TABLE);
    for (Case c : AGAIN) {
      for (CornerEffect effect : effects(c)) {
        same(rows, head(c, effect.corner(), false), effect.dx());
        same(rows, head(c, effect.corner(), true), effect.dy());
      }
    }
  }

  private static void same(List<String> rows, String head, @Nullable Estimate e) {
    String row = rows.stream().filter(r -> r.startsWith(head)).findFirst().orElseThrow();
    assertThat(e).as(row).isNotNull();
    double kept = Double.parseDouble(row.split(",")[5]);
    assertThat(Math.abs(e.value() - kept)).as(row).isLessThanOrEqualTo(SAME);
  }
}
