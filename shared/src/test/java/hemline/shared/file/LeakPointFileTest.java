package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import java.util.List;
import org.junit.jupiter.api.Test;

class LeakPointFileTest {
  private static final LeakPoint POINT =
      new LeakPoint(
          "plain \"flat\" 8",
          1.7320508e-3,
          300,
          -0.2,
          1.0 / 3,
          SolveStatus.UNSTEADY,
          Regime.TRANSITIONAL,
          new Estimate(0.7123456789012345, 1e-3, 2e-7, 0.1, 0, Estimate.Trend.OSCILLATING),
          new Estimate(-0.0101, 3e-4, 0, 0, 1e-5, Estimate.Trend.MONOTONE),
          List.of(new Notice("regime.transition", "May be either.")),
          List.of(
              new GridLeak(0, 840, 0.7000000000000001, 1e-9, -0.0102),
              new GridLeak(2, 3360, 0.71, 0, -0.0101)),
          List.of(new GridLeak(0, 840, 0.8, 2e-3, -0.0102)));

  @Test
  void readsWhatItWrites() throws InputException {
    assertThat(LeakPointFile.parse(LeakPointFile.text(POINT), "p.json")).isEqualTo(POINT);
  }

  @Test
  void refusesAPartOfAPoint() {
    String text = LeakPointFile.text(POINT);
    for (String cut :
        List.of("\"discharge\"", "\"status\": \"unsteady\"", "\"value\"", "\"numerical\"")) {
      assertThatThrownBy(
              () -> LeakPointFile.parse(text.replace(cut, cut.replaceFirst("\"", "\"un")), "p"))
          .as(cut)
          .isInstanceOf(InputException.class);
    }
    assertThatThrownBy(() -> LeakPointFile.parse("{}", "p")).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> LeakPointFile.parse(text.substring(0, 200), "p"))
        .isInstanceOf(InputException.class);
  }
}
