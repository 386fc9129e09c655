package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class PressureColoursTest {
  private static final int STEPS = 32;

  /**
   * Linear-light matrices of dichromatic vision: Machado, Oliveira and Fernandes, "A
   * physiologically-based model for simulation of color vision deficiency" (2009), severity 1.0;
   * values from memory.
   */
  private enum Eyes {
    PROTAN(
        0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116,
        1.051998),
    DEUTAN(
        0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
    TRITAN(
        1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367,
        0.303900);

    private final double[] m;

    Eyes(double... m) {
      this.m = m;
    }

    OkLab see(int rgb) {
      double r = OkLab.linear((rgb >> 16 & 255) / 255.0);
      double g = OkLab.linear((rgb >> 8 & 255) / 255.0);
      double b = OkLab.linear((rgb & 255) / 255.0);
      int seen = 0;
      for (int row = 0; row < 3; row++) {
        double c = m[3 * row] * r + m[3 * row + 1] * g + m[3 * row + 2] * b;
        double clipped = Math.max(0, Math.min(1, c));
        double shown =
            clipped <= 0.0031308 ? 12.92 * clipped : 1.055 * Math.pow(clipped, 1 / 2.4) - 0.055;
        seen = seen << 8 | (int) Math.round(255 * shown);
      }
      return OkLab.of(seen);
    }
  }

  @Test
  void stepsLookEqual() {
    double[] steps = new double[STEPS];
    for (int k = 0; k < STEPS; k++) {
      OkLab here = OkLab.of(PressureColours.at((double) k / STEPS));
      OkLab next = OkLab.of(PressureColours.at((k + 1.0) / STEPS));
      steps[k] = here.distance(next);
      assertThat(next.light()).isGreaterThan(here.light());
    }
    double mean = Arrays.stream(steps).sum() / STEPS;
    // colours have 8 bits a channel, which moves each end of a step by up to 0.002
    for (double step : steps) {
      assertThat(step).isCloseTo(mean, within(0.004));
    }
  }

  /** Independent check in CIELAB (CIE 15): the measure printers use. */
  @Test
  void lightnessRisesInCielabToo() {
    double before = -1;
    for (int k = 0; k <= STEPS; k++) {
      double light = cielabLightness(PressureColours.at((double) k / STEPS));
      assertThat(light).isGreaterThan(before + 0.8);
      before = light;
    }
  }

  @ParameterizedTest
  @EnumSource(Eyes.class)
  void orderIsPlainToColourBlindEyes(Eyes eyes) {
    for (int k = 0; k < STEPS; k++) {
      OkLab here = eyes.see(PressureColours.at((double) k / STEPS));
      OkLab next = eyes.see(PressureColours.at((k + 1.0) / STEPS));
      assertThat(next.light()).isGreaterThan(here.light());
      assertThat(here.distance(next)).isGreaterThan(0.007);
    }
  }

  @Test
  void bothKindsOfStreamlinesStandOutEverywhere() {
    for (int k = 0; k <= STEPS; k++) {
      OkLab ground = OkLab.of(PressureColours.at((double) k / STEPS));
      assertThat(ground.light() - OkLab.of(Ink.THROUGH).light()).isGreaterThan(0.2);
      assertThat(ground.distance(OkLab.of(Ink.VORTEX))).isGreaterThan(0.25);
    }
  }

  @Test
  void colourSpaceGoesThereAndBack() {
    assertThat(OkLab.of(0xFFFFFF).light()).isCloseTo(1, within(1e-6));
    assertThat(OkLab.of(0x808080).a()).isCloseTo(0, within(1e-6));
    assertThat(OkLab.of(0x808080).b()).isCloseTo(0, within(1e-6));
    for (int rgb : new int[] {0x000000, 0x123456, 0xFF0000, 0x00FF00, 0x0000FF, 0xABCDEF}) {
      assertThat(OkLab.of(rgb).rgb()).isEqualTo(rgb);
    }
  }

  private static double cielabLightness(int rgb) {
    double y =
        0.2126 * OkLab.linear((rgb >> 16 & 255) / 255.0)
            + 0.7152 * OkLab.linear((rgb >> 8 & 255) / 255.0)
            + 0.0722 * OkLab.linear((rgb & 255) / 255.0);
    return 116 * Math.cbrt(y) - 16;
  }
}
