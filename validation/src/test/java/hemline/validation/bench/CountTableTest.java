package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class CountTableTest {
  private static GridCount row(int cells, SolveStatus status, int passes) {
    return new GridCount(
        new SolvedFlow("plain-flat-8", 600, Closure.SST),
        1,
        new GridWork(cells, status, passes, (long) cells * passes),
        2 * passes);
  }

  private static final GridCount KEPT = row(1000, SolveStatus.CONVERGED, 100);

  private static List<String> against(GridCount now) {
    return CountChanges.changes(List.of(KEPT), List.of(now));
  }

  @Test
  void theTableIsReadAsItWasWritten() {
    List<GridCount> rows =
        List.of(
            KEPT,
            new GridCount(
                new SolvedFlow("knife-fin", 20, Closure.LAMINAR),
                2,
                new GridWork(4321, SolveStatus.UNSTEADY, 7, 123456),
                40));
    String text = CountTable.text(rows);
    assertThat(text.lines().toList().get(2))
        .isEqualTo("knife-fin,20,laminar,2,4321,unsteady,7,40,123456,28.6");
    assertThat(CountChanges.parse(text)).isEqualTo(rows);
  }

  @Test
  void smallChangesPass() {
    assertThat(against(row(1000, SolveStatus.CONVERGED, 110))).isEmpty();
    assertThat(against(row(1000, SolveStatus.CONVERGED, 90))).isEmpty();
  }

  @Test
  void largerChangesAreToldEitherWay() {
    assertThat(against(row(1000, SolveStatus.CONVERGED, 111)))
        .contains("plain-flat-8 at 600 Pa, grid 1: passes went from 100 to 111 (+11 %)");
    assertThat(against(row(1000, SolveStatus.CONVERGED, 89)))
        .contains("plain-flat-8 at 600 Pa, grid 1: work units went from 100 to 89 (-11 %)");
    assertThat(against(row(1101, SolveStatus.CONVERGED, 100)))
        .containsExactly("plain-flat-8 at 600 Pa, grid 1: cells went from 1000 to 1101 (+10 %)");
    assertThat(against(row(1000, SolveStatus.UNSTEADY, 100)))
        .containsExactly(
            "plain-flat-8 at 600 Pa, grid 1 ended UNSTEADY with sst, the table has CONVERGED with"
                + " sst");
  }

  @Test
  void aFewStepsMayChangeByOne() {
    List<GridCount> kept = List.of(row(1000, SolveStatus.CONVERGED, 6));
    assertThat(CountChanges.changes(kept, List.of(row(1000, SolveStatus.CONVERGED, 7)))).isEmpty();
    assertThat(CountChanges.changes(kept, List.of(row(1000, SolveStatus.CONVERGED, 8)))).hasSize(3);
  }

  @Test
  void aMissingRowIsTold() {
    assertThat(CountChanges.changes(List.of(), List.of(KEPT)))
        .containsExactly("plain-flat-8 at 600 Pa, grid 1 is not in the table");
  }

  @Test
  void otherTextIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> CountChanges.parse("lip,cells\n"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CountChanges.parse(CountTable.text(List.of()) + "knife-fin,20\n"));
  }

  /** Keeps the committed table in step with the set of sections. */
  @Test
  void theKeptTableHoldsTheWholeSet() throws Exception {
    List<GridCount> kept = CountChanges.parse(Files.readString(Path.of("bench", "counts.csv")));
    List<String> names = kept.stream().map(GridCount::name).toList();
    for (BenchSection one : BenchSection.all(Path.of("..", "profiles"))) {
      for (int grid = 1; grid <= 3; grid++) {
        assertThat(names)
            .contains("%s at %.0f Pa, grid %d".formatted(one.lip(), one.section().suction(), grid));
      }
    }
  }
}
