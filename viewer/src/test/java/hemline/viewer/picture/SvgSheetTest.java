package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.Test;

final class SvgSheetTest {

  @Test
  void textIsEscapedAndSubscriptsAreLowered() throws Exception {
    SvgSheet sheet = new SvgSheet(100, 50);
    sheet.text(1, 2, "a<b & \"c\"_d", Lettering.of(10, 0x123456));
    sheet.text(1, 2, "C_pr 0.7", Lettering.of(10, 0x123456).symbols());
    String svg = sheet.text();
    String text = SectionPictureTest.parse(svg).getDocumentElement().getTextContent();
    assertThat(text).contains("a<b & \"c\"_d").contains("Cpr").doesNotContain("C_pr");
    assertThat(svg).contains("<tspan font-size=\"7.2\" dy=\"2.2\">pr</tspan>").contains("#123456");
  }

  @Test
  void numbersAreShort() {
    SvgSheet sheet = new SvgSheet(100, 50);
    sheet.stroke(new Line2D.Double(1.0 / 3, -0.001, 10, 2.5), new Pen(0, 1, 1, 3, 2));
    sheet.fill(new Rectangle2D.Double(0, 0, 1, 1), 0xFF, 0.5);
    assertThat(sheet.text())
        .contains("d=\"M0.33 0L10 2.5\"")
        .contains("stroke-dasharray=\"3 2\"")
        .contains("fill=\"#0000ff\"")
        .contains("fill-opacity=\"0.5\"");
  }
}
