package hemline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.picture.Ink;
import hemline.viewer.picture.OkLab;
import org.junit.jupiter.api.Test;

final class NightSheetTest {

  /** Relative luminance, WCAG 2.2. */
  private static double luminance(int rgb) {
    return 0.2126 * OkLab.linear((rgb >> 16 & 255) / 255.0)
        + 0.7152 * OkLab.linear((rgb >> 8 & 255) / 255.0)
        + 0.0722 * OkLab.linear((rgb & 255) / 255.0);
  }

  /** Contrast ratio, WCAG 2.2. */
  private static double contrast(int a, int b) {
    double x = luminance(a);
    double y = luminance(b);
    return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
  }

  @Test
  void lettersOfChartsAreReadableByDayAndByNight() {
    int night = NightSheet.night(Ink.PAPER);
    for (int ink : new int[] {Ink.TEXT, Ink.QUIET, Ink.SERIES}) {
      assertThat(contrast(ink, Ink.PAPER)).isGreaterThan(4.5);
      assertThat(contrast(NightSheet.night(ink), night)).isGreaterThan(4.5);
    }
    assertThat(luminance(night)).isLessThan(0.03);
  }

  @Test
  void lightnessTurnsOverAndOrderIsKeptTheOtherWayRound() {
    double before = Double.POSITIVE_INFINITY;
    for (double light = 0.3; light <= 1; light += 0.1) {
      double turned = OkLab.of(NightSheet.night(new OkLab(light, 0, 0).rgb())).light();
      assertThat(turned).isLessThan(before);
      before = turned;
    }
  }
}
