package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakOrigin;
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

  private static final LeakOrigin ORIGIN =
      new LeakOrigin(
          "abc", 1.7320508e-3, 300, -0.2, 1.0 / 3, 1.204, 1.51e-5, "coarse", "auto", false);

  private static String text() {
    return LeakPointFile.text(POINT, ORIGIN, "f00d", false);
  }

  private static String resealed(String text) {
    return Seal.close(
        text.replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.BLANK + "\""));
  }

  @Test
  void readsWhatItWrites() throws InputException {
    assertThat(LeakPointFile.parse(text(), "p.json"))
        .isEqualTo(new LeakPointFile.Kept(POINT, ORIGIN, "f00d", false));
    String invented = LeakPointFile.text(POINT, ORIGIN, "f00d", true);
    assertThat(LeakPointFile.parse(invented, "p.json").invented()).isTrue();
  }

  @Test
  void refusesWhatWasChangedByHand() {
    String text = text();
    for (int k = 0; k < text.length(); k += 7) {
      char c = text.charAt(k);
      String changed = text.substring(0, k) + (c == '1' ? '2' : '1') + text.substring(k + 1);
      assertThatThrownBy(() -> LeakPointFile.parse(changed, "p"))
          .isInstanceOf(InputException.class);
    }
    assertThatThrownBy(() -> LeakPointFile.parse(text().replace("0.7123", "0.3123"), "p.json"))
        .hasMessageContaining("p.json")
        .hasMessageContaining("changed or damaged");
  }

  @Test
  void refusesAPartOfAPoint() {
    for (String cut :
        List.of(
            "\"discharge\"",
            "\"status\": \"unsteady\"",
            "\"value\"",
            "\"numerical\"",
            "\"origin\"",
            "\"solver\"")) {
      String part = resealed(text().replaceFirst(cut, cut.replaceFirst("\"", "\"un")));
      assertThatThrownBy(() -> LeakPointFile.parse(part, "p"))
          .as(cut)
          .isInstanceOf(InputException.class);
    }
    assertThatThrownBy(() -> LeakPointFile.parse("{}", "p")).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> LeakPointFile.parse(text().substring(0, 200), "p"))
        .isInstanceOf(InputException.class);
  }
}
