package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.Set;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

final class SectionPictureTest {

  private static SectionScene scene(SolveStatus status, GroundMotion motion) {
    return SectionScene.of(
        InventedFlow.section(motion), InventedFlow.result(status, motion), InventedFlow.field());
  }

  private static SectionPicture picture(SolveStatus status, GroundMotion motion) {
    return SectionPicture.of(scene(status, motion));
  }

  static Document parse(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)));
  }

  @Test
  void svgIsWellFormedAndSaysWhatItShows() throws Exception {
    String svg = picture(SolveStatus.CONVERGED, new GroundMotion(-15, 5)).svg();
    Document document = parse(svg);
    assertThat(document.getDocumentElement().getTagName()).isEqualTo("svg");
    String text = document.getDocumentElement().getTextContent();
    assertThat(text)
        .contains("one pocket 8")
        .contains("gap 2 mm \u00b7 suction 600 Pa")
        .contains("leak 43.0 \u00b1 0.5 L/s per m")
        .contains("ground 15 m/s")
        .contains("towards you 5 m/s")
        .contains("\u0393 0.22 q")
        .contains("a tenth of it flows between two lines");
    assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity");
  }

  @Test
  void sameFlowGivesTheSameText() {
    assertThat(picture(SolveStatus.CONVERGED, GroundMotion.STILL).svg())
        .isEqualTo(picture(SolveStatus.CONVERGED, GroundMotion.STILL).svg());
  }

  @Test
  void scaleIsTheSameBothWaysAndTheLipIsWhereItShould() throws Exception {
    SectionPicture picture = picture(SolveStatus.CONVERGED, GroundMotion.STILL);
    Projection view = picture.view();
    assertThat(view.width() / view.window().width())
        .isEqualTo(view.height() / view.window().height());
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture.png()));
    assertThat(image.getWidth()).isEqualTo((int) Math.ceil(2 * picture.width()));
    Set<Integer> inLip = coloursAround(image, view, 1e-3, 10e-3);
    assertThat(inLip).contains(Ink.LIP);
    Set<Integer> inPocket = coloursAround(image, view, 3e-3, 4.2e-3);
    assertThat(inPocket).doesNotContain(Ink.LIP);
    Set<Integer> inSkirt = coloursAround(image, view, 4e-3, 22e-3);
    assertThat(inSkirt).contains(Ink.WALL).doesNotContain(Ink.LIP);
  }

  @Test
  void unsteadyFlowIsMarked() throws Exception {
    String svg = picture(SolveStatus.UNSTEADY, GroundMotion.STILL).svg();
    assertThat(parse(svg).getDocumentElement().getTextContent()).contains("no steady flow");
  }

  @Test
  void leakTheOtherWayIsDrawnToo() throws Exception {
    SectionScene s = scene(SolveStatus.CONVERGED, GroundMotion.STILL);
    GridField f = s.field();
    double[] psi = f.streamfunction().clone();
    for (int k = 0; k < psi.length; k++) {
      psi[k] = -psi[k];
    }
    GridField turned = new GridField(f.px(), f.py(), f.pressure(), f.wet(), f.sx(), f.sy(), psi);
    Streamlines forth = new Streamlines(f, s.through(), 50);
    Streamlines back = new Streamlines(turned, -s.through(), 50);
    assertThat(back.leaking()).isTrue();
    assertThat(back.throughLines()).isEqualTo(forth.throughLines());
  }

  @Test
  void cavityHasVorticesAndNoLeak() {
    double[] x = {0, 1, 2, 3, 4};
    double[] psi = new double[25];
    psi[12] = -1;
    GridField field = new GridField(x, x, new double[25], new boolean[25], x, x, psi);
    Streamlines lines = new Streamlines(field, 0, 100);
    assertThat(lines.leaking()).isFalse();
    assertThat(lines.anyVortex()).isTrue();
  }

  private static Set<Integer> coloursAround(
      BufferedImage image, Projection view, double x, double y) {
    Set<Integer> colours = new TreeSet<>();
    int px = (int) Math.round(2 * view.x(x));
    int py = (int) Math.round(2 * view.y(y));
    for (int j = -6; j <= 6; j++) {
      for (int i = -6; i <= 6; i++) {
        colours.add(image.getRGB(px + i, py + j) & 0xFFFFFF);
      }
    }
    return colours;
  }
}
