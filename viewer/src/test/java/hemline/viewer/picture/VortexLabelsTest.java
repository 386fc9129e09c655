package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.hard.SampleResults;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.junit.jupiter.api.Test;

class VortexLabelsTest {
  private static final Projection VIEW =
      new Projection(new SectionWindow(-5e-3, 5e-3, -5e-3, 5e-3), 0, 200, 2e4);

  private static String painted(Rectangle2D words) {
    SvgSheet sheet = new SvgSheet(200, 200);
    VortexLabels.paint(sheet, VIEW, SampleResults.whole(), 0, 0, List.of(words));
    return sheet.text();
  }

  @Test
  void keepOffOtherWords() {
    double x = VIEW.x(1e-3);
    double y = VIEW.y(2e-3);
    assertThat(painted(new Rectangle2D.Double(0, 0, 20, 20))).contains("\u0393 0.3");
    assertThat(painted(new Rectangle2D.Double(x + 10, y, 40, 15)))
        .doesNotContain("\u0393")
        .as("the centre stays")
        .contains("<path");
  }
}
