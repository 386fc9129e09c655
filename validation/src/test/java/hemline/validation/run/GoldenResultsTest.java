package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.DuctFile;
import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures.Vortex;
import hemline.shared.section.DuctSection;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SolveRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * All figures of a dozen sections on a coarse grid, against a file that a person has approved: a
 * change of the solver that moves a figure shows as a difference of lines.
 */
class GoldenResultsTest {
  private static final Path SECTIONS = Path.of("golden", "sections.csv");
  private static final Path FIGURES = Path.of("golden", "figures.csv");
  private static final String HEAD = "section,figure,unit,value";

  /** Same bits on one machine; on another one only elementary functions may end otherwise. */
  private static final double RELATIVE = 1e-6;

  /** Below this, SI units, a figure is nothing but round-off. */
  private static final double NOTHING = 1e-12;

  private static final String CURE =
      "if that is meant, write the file anew with mvn -pl validation -am test"
          + " -Dtest=GoldenResultsTest -Dsurefire.failIfNoSpecifiedTests=false"
          + " -Dhemline.golden=write, look at its differences and tell the change in the changelog";

  @Test
  void figuresAreThoseApproved() throws Exception {
    Map<String, String> computed = new LinkedHashMap<>();
    List<String> sections = Files.readAllLines(SECTIONS);
    for (String line : sections.subList(1, sections.size())) {
      String[] cell = line.split(",", -1);
      record(computed, cell[0], solved(cell));
    }
    if ("write".equals(System.getProperty("hemline.golden"))) {
      StringBuilder text = new StringBuilder(HEAD + "\n");
      computed.forEach((key, value) -> text.append(key).append(',').append(value).append('\n'));
      Files.writeString(FIGURES, text.toString());
    }
    Map<String, String> kept = new LinkedHashMap<>();
    List<String> lines = Files.readAllLines(FIGURES);
    assertThat(lines.get(0)).isEqualTo(HEAD);
    for (String line : lines.subList(1, lines.size())) {
      int comma = line.lastIndexOf(',');
      kept.put(line.substring(0, comma), line.substring(comma + 1));
    }
    assertThat(differences(kept, computed))
        .as("figures that differ from %s (- approved, + computed); %s", FIGURES, CURE)
        .isEmpty();
    assertThat(kept).hasSizeGreaterThan(200);
  }

  private static GridFamily solved(String[] cell) throws InputException {
    Path file = Path.of(cell[1]);
    Closure closure = Closure.valueOf(cell[6].toUpperCase(Locale.ROOT));
    if (cell[2].isEmpty()) {
      DuctSection duct = DuctFile.read(file);
      return new FamilySolver()
          .solve(
              SolveRequest.cold(duct, MeshLevel.COARSE, 1, closure),
              new CancelToken(),
              ProgressListener.NONE);
    }
    SealSection section =
        new SealSection(
            LipFile.load(file).profile(),
            1e-3 * Double.parseDouble(cell[2]),
            Double.parseDouble(cell[3]),
            new GroundMotion(Double.parseDouble(cell[4]), Double.parseDouble(cell[5])),
            Air.STANDARD,
            List.of());
    return new FamilySolver()
        .solve(
            SolveRequest.cold(section, MeshLevel.COARSE, 1, closure),
            new CancelToken(),
            ProgressListener.NONE);
  }

  private static void record(Map<String, String> to, String name, GridFamily family) {
    assertThat(family.grids()).as(name).hasSize(1);
    GridRun run = family.runs().get(0);
    String at = name + ",";
    to.put(at + "closure,", family.closure().name().toLowerCase(Locale.ROOT));
    to.put(at + "status,", run.status().name().toLowerCase(Locale.ROOT));
    to.put(at + "cells,1", Integer.toString(run.cells()));
    for (Figure figure : Figure.values()) {
      Double value = run.figures().scalars().get(figure);
      if (value != null) {
        to.put(at + figure.key() + "," + figure.unit(), number(value));
      }
    }
    int k = 0;
    for (double share : run.figures().stageShares()) {
      to.put(at + "stageShare " + ++k + ",1", number(share));
    }
    k = 0;
    for (double carried : run.figures().carryOver()) {
      to.put(at + "carryOver " + ++k + ",1", number(carried));
    }
    k = 0;
    for (Vortex vortex : run.figures().vortices()) {
      k++;
      to.put(at + "vortex " + k + " strength,1", number(vortex.strength()));
      to.put(at + "vortex " + k + " x,m", number(vortex.x()));
      to.put(at + "vortex " + k + " y,m", number(vortex.y()));
    }
  }

  /** Ten digits, so that the file can be read and no tie is left to rounding. */
  private static String number(double value) {
    return Math.abs(value) < NOTHING ? "0" : String.format(Locale.ROOT, "%.9e", value);
  }

  private static List<String> differences(Map<String, String> kept, Map<String, String> computed) {
    List<String> differences = new ArrayList<>();
    kept.forEach(
        (key, value) -> {
          String now = computed.get(key);
          if (now == null) {
            differences.add("\n- " + key + "," + value);
          } else if (!same(value, now)) {
            differences.add("\n- " + key + "," + value + "\n+ " + key + "," + now);
          }
        });
    computed.forEach(
        (key, value) -> {
          if (!kept.containsKey(key)) {
            differences.add("\n+ " + key + "," + value);
          }
        });
    return differences;
  }

  private static boolean same(String kept, String now) {
    if (kept.equals(now)) {
      return true;
    }
    if (!Character.isDigit(kept.charAt(kept.length() - 1))
        || !Character.isDigit(now.charAt(now.length() - 1))) {
      return false;
    }
    double a = Double.parseDouble(kept);
    double b = Double.parseDouble(now);
    return Math.abs(a - b) <= RELATIVE * Math.max(Math.abs(a), Math.abs(b)) + NOTHING;
  }

  /** The comparison itself notices what it should, and nothing else. */
  @Test
  void differencesAreTold() {
    Map<String, String> kept = Map.of("a,leakFlow,m2/s", "2.000000000e-02");
    assertThat(differences(kept, kept)).isEmpty();
    assertThat(differences(kept, Map.of("a,leakFlow,m2/s", "2.000001000e-02"))).isEmpty();
    assertThat(differences(kept, Map.of("a,leakFlow,m2/s", "2.000004000e-02")))
        .containsExactly("\n- a,leakFlow,m2/s,2.000000000e-02\n+ a,leakFlow,m2/s,2.000004000e-02");
    assertThat(differences(kept, Map.of())).containsExactly("\n- a,leakFlow,m2/s,2.000000000e-02");
    assertThat(differences(Map.of(), Map.of("a,status,", "failed")))
        .containsExactly("\n+ a,status,,failed");
    assertThat(differences(Map.of("a,status,", "converged"), Map.of("a,status,", "failed")))
        .hasSize(1);
  }
}
