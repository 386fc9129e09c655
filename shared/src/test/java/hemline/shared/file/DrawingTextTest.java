package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drawings letter by letter, arcs by their formulas, coupons by their normals. */
class DrawingTextTest {
  private static Outline rectangle(double x, double y) {
    return new Outline(
        List.of(
            new Vertex(x, y),
            new Vertex(x + 8e-3, y),
            new Vertex(x + 8e-3, y + 0.01),
            new Vertex(x, y + 0.01)));
  }

  /** A margin of 1 mm on all sides; y is down on the page. */
  @Test
  void aPageOfAnOutline() {
    String text = SvgFile.text(List.of(rectangle(2e-3, 3e-3)), "a < b & c > d");
    assertThat(text)
        .contains("width=\"10mm\" height=\"12mm\" viewBox=\"1 -14 10 12\"")
        .contains("<title>a &lt; b &amp; c &gt; d</title>")
        .contains("d=\"M 2 -3 L 10 -3 L 10 -13 L 2 -13 Z\"");
    String two = SvgFile.text(List.of(rectangle(0, 0), rectangle(-0.02, 0.005)), "two");
    assertThat(two).contains("width=\"30mm\" height=\"17mm\" viewBox=\"-21 -16 30 17\"");
  }

  /** Half a circle, its other side, and three quarters and more. */
  @ParameterizedTest
  @CsvSource({"1, A 2 2 0 0 0 4 0", "-1, A 2 2 0 0 1 4 0", "2, A 2.5 2.5 0 1 0 4 0"})
  void arcsOfAPath(double bulge, String arc) {
    Outline outline =
        new Outline(List.of(new Vertex(0, 0, bulge), new Vertex(4e-3, 0), new Vertex(2e-3, -9e-3)));
    assertThat(SvgFile.path(outline)).isEqualTo("M 0 0 " + arc + " L 2 9 Z");
  }

  @Test
  void anArcThatCloses() {
    Outline outline =
        new Outline(List.of(new Vertex(0, 0), new Vertex(4e-3, 0), new Vertex(4e-3, 4e-3, -1)));
    assertThat(SvgFile.path(outline)).startsWith("M 0 0 L 4 0 L 4 -4 A ").endsWith(" 0 0 Z");
  }

  @Test
  void aDrawingInPairs() {
    String text =
        DxfFile.text(List.of(new Outline(List.of(new Vertex(0, 0, 1), new Vertex(4e-3, 0, 1)))));
    assertThat(text.replace("\n", "|").replace(" ", ""))
        .isEqualTo(
            "0|SECTION|2|HEADER|9|$INSUNITS|70|4|0|ENDSEC|0|SECTION|2|ENTITIES|"
                + "0|POLYLINE|8|0|66|1|10|0|20|0|30|0|70|1|"
                + "0|VERTEX|8|0|10|0|20|0|30|0|42|1.0|0|VERTEX|8|0|10|4|20|0|30|0|42|1.0|"
                + "0|SEQEND|8|0|0|ENDSEC|0|EOF|");
  }

  private static String dxf(String entities) {
    return "0\nSECTION\n2\nENTITIES\n"
        + entities.strip().replace(' ', '\n')
        + "\n0\nENDSEC\n0\nEOF\n";
  }

  private static List<Vertex> only(String text) throws InputException {
    List<Outline> all = DxfFile.parse(text, "d.dxf").outlines();
    assertThat(all).hasSize(1);
    return all.get(0).vertices();
  }

  private static void assertVertex(Vertex v, double x, double y, double bulge) {
    assertThat(v.x()).isCloseTo(1e-3 * x, within(1e-12));
    assertThat(v.y()).isCloseTo(1e-3 * y, within(1e-12));
    assertThat(v.bulge()).isCloseTo(bulge, within(1e-9));
  }

  /** From 30° counter-clockwise to 210° about (5, 2), closed by its chord. */
  @Test
  void anArcOfADrawing() throws InputException {
    double c = 3 * Math.cos(Math.toRadians(30));
    double s = 1.5;
    List<Vertex> v =
        only(
            dxf(
                " 0 ARC 8 0 10 5 20 2 40 3 50 30 51 210 0 LINE 8 0 10 "
                    + (5 - c)
                    + " 20 "
                    + (2 - s)
                    + " 11 "
                    + (5 + c)
                    + " 21 "
                    + (2 + s)));
    assertThat(v).hasSize(2);
    int first = v.get(0).bulge() != 0 ? 0 : 1;
    assertVertex(v.get(first), 5 + c, 2 + s, 1);
    assertVertex(v.get(1 - first), 5 - c, 2 - s, 0);
  }

  /** Across the zero of angles: 300° to 60° is a third of a circle, tan 30° of bulge. */
  @Test
  void anArcAcrossZero() throws InputException {
    double h = 4 * Math.sin(Math.toRadians(60));
    List<Vertex> v =
        only(
            dxf(
                " 0 ARC 8 0 10 0 20 0 40 4 50 300 51 60 0 LINE 8 0 10 2 20 "
                    + h
                    + " 11 2 21 "
                    + -h));
    int first = v.get(0).bulge() != 0 ? 0 : 1;
    assertVertex(v.get(first), 2, -h, Math.tan(Math.toRadians(30)));
    assertVertex(v.get(1 - first), 2, h, 0);
  }

  @Test
  void anArcAllRoundIsACircle() throws InputException {
    List<Vertex> v = only(dxf(" 0 ARC 8 0 10 1 20 2 40 3 50 45 51 405"));
    assertThat(v).hasSize(2);
    assertVertex(v.get(0), -2, 2, 1);
    assertVertex(v.get(1), 4, 2, 1);
  }

  /** Each triangle's stored normal is that of its corners, of length 1. */
  @Test
  void couponsHaveUnitNormals() {
    Outline slanted =
        new Outline(
            List.of(new Vertex(1e-3, 2e-3), new Vertex(8e-3, 4e-3), new Vertex(3e-3, 9e-3)));
    ByteBuffer in =
        ByteBuffer.wrap(StlFile.bytes(List.of(slanted), 0.01)).order(ByteOrder.LITTLE_ENDIAN);
    int n = in.getInt(80);
    assertThat(n).isEqualTo(8);
    double[] outward = new double[3];
    for (int k = 0; k < n; k++) {
      double[] t = new double[12];
      for (int i = 0; i < 12; i++) {
        t[i] = in.getFloat(84 + 50 * k + 4 * i);
      }
      double[] u = {t[6] - t[3], t[7] - t[4], t[8] - t[5]};
      double[] v = {t[9] - t[3], t[10] - t[4], t[11] - t[5]};
      double[] c = {
        u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]
      };
      double length = Math.sqrt(c[0] * c[0] + c[1] * c[1] + c[2] * c[2]);
      for (int i = 0; i < 3; i++) {
        assertThat(t[i]).as("triangle %d", k).isCloseTo(c[i] / length, within(1e-6));
        outward[i] += 0.5 * c[i];
      }
    }
    // over a closed surface they add up to nothing
    assertThat(outward).containsExactly(new double[3], within(1e-3));
  }

  private static Outline square(double x, double y, double size) {
    return new Outline(
        List.of(
            new Vertex(x, y),
            new Vertex(x + size, y),
            new Vertex(x + size, y + size),
            new Vertex(x, y + size)));
  }

  /** What reaches highest is the lip; of those as high, the largest; the rest hangs beside it. */
  @Test
  void theHighestOutlineIsTheLip() throws InputException {
    Outline low = square(0, 0, 5e-3);
    Outline high = square(0.01, 2e-3, 4e-3);
    Outline large = square(0.02, 0, 6e-3);
    assertThat(main(low, high)).isEqualTo(high.vertices());
    assertThat(main(high, low)).isEqualTo(high.vertices());
    assertThat(main(high, large, low)).isEqualTo(large.vertices());
    assertThat(main(large, high)).isEqualTo(large.vertices());
    LipDrawing d = LipImport.drawing("a", "by hand", List.of(low, large, high), "d.svg");
    assertThat(d.detached())
        .extracting(o -> o.vertices())
        .containsExactly(low.vertices(), high.vertices());
    assertThat(d.mountEdge()).isEqualTo(2);
    assertThat(d.source()).isEqualTo("by hand");
  }

  private static List<Vertex> main(Outline... outlines) throws InputException {
    return LipImport.drawing("a", "", List.of(outlines), "d.svg").body().vertices();
  }

  @Test
  void drawingsAreToldByTheirEnding() {
    assertThat(LipImport.isDrawing(Path.of("a", "lip.SVG"))).isTrue();
    assertThat(LipImport.isDrawing(Path.of("lip.dxf"))).isTrue();
    assertThat(LipImport.isDrawing(Path.of("svg.json"))).isFalse();
  }
}
