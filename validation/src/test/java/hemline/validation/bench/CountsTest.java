package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.refine.SectionFamily;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds the work of a few sections to the kept table: a slower solver is noticed. */
class CountsTest {
  private static final Path PROFILES = Path.of("..", "profiles");
  private static final Path TABLE = Path.of("bench", "counts.csv");
  private static final String CURE =
      "if that is meant, rewrite the table with mvn -pl validation -am test -Dtest=CountsTest"
          + " -Dsurefire.failIfNoSpecifiedTests=false -Dhemline.bench=write and tell the change in"
          + " the changelog";

  @Test
  void countsStandWithinTenPercentOfTheTable() throws Exception {
    if ("write".equals(System.getProperty("hemline.bench"))) {
      List<GridCount> all = new ArrayList<>();
      for (BenchSection section : BenchSection.all(PROFILES)) {
        all.addAll(GridCount.of(section, SectionFamily.GRIDS));
      }
      Files.writeString(TABLE, CountTable.text(all));
    }
    List<GridCount> counted = new ArrayList<>();
    for (String lip : List.of("plain-flat-8", "labyrinth-three-teeth", "vortex-trap-one-pocket")) {
      counted.addAll(GridCount.of(BenchSection.of(PROFILES, lip, BenchSection.CRAWLER), 2));
    }
    counted.addAll(GridCount.of(BenchSection.of(PROFILES, "plain-flat-8", BenchSection.FAINT), 2));
    assertThat(counted).hasSize(8);
    List<GridCount> kept = CountChanges.parse(Files.readString(TABLE));
    assertThat(CountChanges.changes(kept, counted)).as("changes of work; " + CURE).isEmpty();
  }
}
