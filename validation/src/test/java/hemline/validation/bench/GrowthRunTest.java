package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.Closure;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GrowthRunTest {
  @Test
  void eachGridIsSolvedAndTimed() throws Exception {
    List<GrowthRow> heard = new ArrayList<>();
    List<GrowthRow> rows =
        new GrowthRun(
                BenchSection.of(Path.of("..", "profiles"), "plain-flat-8", BenchSection.FAINT),
                Closure.LAMINAR,
                heard::add)
            .run(5_000);
    assertThat(heard).isEqualTo(rows);
    assertThat(rows).hasSize(2).allMatch(GrowthRow::settled);
    assertThat(rows.get(0).work().cells()).isBetween(1_300, 2_300);
    assertThat(rows.get(1).work().cells()).isBetween(3_500, 6_500);
    assertThat(rows.get(1).allSeconds())
        .isEqualTo(rows.get(0).seconds() + rows.get(1).seconds())
        .isPositive();
    assertThat(rows.get(1).leak()).isBetween(0.98 * rows.get(0).leak(), 1.02 * rows.get(0).leak());
  }
}
