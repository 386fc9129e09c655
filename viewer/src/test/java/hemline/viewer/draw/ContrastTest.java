package hemline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.app.HemlineWindow;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Text stands out: contrast of 4.5 to 1 by WCAG 2.1, 1.4.3 (W3C 2018), in both themes. */
final class ContrastTest {
  private static final double LEAST = 4.5;

  @Test
  void boardTextStandsOutFromThePaper() {
    for (Palette ink : List.of(Palette.LIGHT, Palette.DARK)) {
      for (int rgb :
          new int[] {
            ink.text(),
            ink.quiet(),
            ink.marks().chosen(),
            ink.marks().wrong(),
            ink.marks().caution(),
            ink.lines().leak()
          }) {
        assertThat(contrast(rgb, ink.paper()))
            .as("%06x on %06x", rgb, ink.paper())
            .isGreaterThanOrEqualTo(LEAST);
      }
    }
  }

  @Test
  void windowTextStandsOutFromItsGround() throws IOException {
    String css = read();
    Map<String, Integer> light = colours(css, "\\.window \\{");
    Map<String, Integer> dark = new HashMap<>(light);
    dark.putAll(colours(css, "\\.window\\.dark \\{"));
    for (Map<String, Integer> theme : List.of(light, dark)) {
      for (String text : List.of("-hl-text", "-hl-quiet", "-hl-wrong", "-hl-caution", "-hl-run")) {
        for (String ground : List.of("-hl-paper", "-hl-raised")) {
          assertThat(contrast(theme.get(text), theme.get(ground)))
              .as("%s on %s", text, ground)
              .isGreaterThanOrEqualTo(LEAST);
        }
      }
      assertThat(contrast(theme.get("-hl-run-text"), theme.get("-hl-run")))
          .as("letters on the Run button")
          .isGreaterThanOrEqualTo(LEAST);
    }
  }

  private static String read() throws IOException {
    try (InputStream in = HemlineWindow.class.getResourceAsStream("window.css")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static Map<String, Integer> colours(String css, String selector) {
    Matcher block = Pattern.compile(selector + "([^}]*)\\}").matcher(css);
    assertThat(block.find()).as(selector).isTrue();
    Map<String, Integer> colours = new HashMap<>();
    Matcher line = Pattern.compile("(-hl-[a-z-]+):\\s*#([0-9a-fA-F]{6});").matcher(block.group(1));
    while (line.find()) {
      colours.put(line.group(1), Integer.parseInt(line.group(2), 16));
    }
    return colours;
  }

  private static double contrast(int a, int b) {
    double la = luminance(a);
    double lb = luminance(b);
    return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
  }

  private static double luminance(int rgb) {
    double sum = 0;
    double[] weight = {0.2126, 0.7152, 0.0722};
    for (int k = 0; k < 3; k++) {
      double c = (rgb >> 16 - 8 * k & 255) / 255.0;
      sum += weight[k] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }
}
