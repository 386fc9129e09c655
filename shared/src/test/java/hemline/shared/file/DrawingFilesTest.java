package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrawingFilesTest {
  private static final Path PROFILES = Path.of("..", "profiles");

  @TempDir Path folder;

  private static String dxf(String entities) {
    return "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n"
        + entities.strip().replace(' ', '\n')
        + "\n0\nENDSEC\n0\nEOF\n";
  }

  private static String line(double x1, double y1, double x2, double y2) {
    return " 0 LINE 8 0 10 " + x1 + " 20 " + y1 + " 11 " + x2 + " 21 " + y2;
  }

  private static String svg(String body) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"20mm\" height=\"20mm\""
        + " viewBox=\"0 0 20 20\">"
        + body
        + "</svg>";
  }

  private static double area(ImportedOutlines found) {
    assertThat(found.outlines()).hasSize(1);
    return Math.abs(Polygons.signedArea(found.outlines().get(0).vertices()));
  }

  private static InputException dxfFault(String text) {
    return catchThrowableOfType(InputException.class, () -> DxfFile.parse(text, "d.dxf"));
  }

  private static InputException svgFault(String text) {
    return catchThrowableOfType(InputException.class, () -> SvgFile.parse(text, "d.svg"));
  }

  // ---- out and in again

  @ParameterizedTest
  @ValueSource(strings = {"svg", "dxf"})
  void profilesComeBackAsTheyWere(String kind) throws InputException {
    for (LoadedLip lip : LipFile.loadFolder(PROFILES)) {
      String name = lip.profile().name();
      Path file = folder.resolve(name + "." + kind);
      List<Outline> bodies = new ArrayList<>(List.of(lip.profile().outline()));
      bodies.addAll(lip.profile().detached());
      if (kind.equals("svg")) {
        SvgFile.write(file, bodies, name);
      } else {
        DxfFile.write(file, bodies);
      }
      LipImport.Imported imported = LipImport.read(file);
      assertThat(imported.notices()).as(name).isEmpty();
      assertThat(imported.drawing().name()).isEqualTo(name);
      LipProfile back = LipResolver.resolve(imported.drawing());
      assertThat(back.mountEdge()).as(name).isEqualTo(lip.profile().mountEdge());
      assertSame(name, back.outline(), lip.profile().outline(), 2e-9);
    }
  }

  private static void assertSame(String name, Outline a, Outline b, double tolerance) {
    assertThat(a.vertices()).as(name).hasSameSizeAs(b.vertices());
    for (int i = 0; i < a.vertices().size(); i++) {
      Vertex v = a.vertices().get(i);
      Vertex w = b.vertices().get(i);
      assertThat(v.x()).as(name).isCloseTo(w.x(), within(tolerance));
      assertThat(v.y()).as(name).isCloseTo(w.y(), within(tolerance));
      assertThat(v.bulge()).as(name).isCloseTo(w.bulge(), within(1e-5));
    }
  }

  @Test
  void randomOutlinesSurviveDxf() throws InputException {
    for (int seed = 0; seed < 200; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      List<Vertex> v = new ArrayList<>();
      for (int i = 3 + random.nextInt(10); i > 0; i--) {
        v.add(
            new Vertex(
                random.nextInt(-20000, 20000) / 1e6,
                random.nextInt(-20000, 20000) / 1e6,
                random.nextBoolean() ? 0 : random.nextDouble(-2, 2)));
      }
      Outline outline = new Outline(v);
      assertThat(DxfFile.parse(DxfFile.text(List.of(outline)), "d.dxf").outlines())
          .as("seed %d", seed)
          .containsExactly(outline);
    }
  }

  // ---- DXF

  @Test
  void joinsLooseLinesAndArcsInAnyOrder() throws InputException {
    // 8 x 10 with a half circle of radius 4 below, lines drawn every which way, ends 1 µm off
    String text =
        dxf(
            line(0, 10, 8, 10.001)
                + line(8, 0, 8, 10)
                + " 0 ARC 8 0 10 4 20 0 40 4 50 180 51 0"
                + line(0, 10, 0.001, 0));
    ImportedOutlines found = DxfFile.parse(text, "d.dxf");
    assertThat(found.notices()).isEmpty();
    // 1 µm along a perimeter of 41 mm
    assertThat(area(found)).isCloseTo((80 + 8 * Math.PI) * 1e-6, within(4.1e-8));
  }

  @Test
  void readsPolylinesCirclesAndUnits() throws InputException {
    String light = " 0 LWPOLYLINE 8 0 90 4 70 1 10 0 20 0 10 8 20 0 10 8 20 10 42 1 10 0 20 10";
    assertThat(area(DxfFile.parse(dxf(light), "d.dxf")))
        .isCloseTo((80 + 8 * Math.PI) * 1e-6, within(1e-15));
    assertThat(area(DxfFile.parse(dxf(" 0 CIRCLE 8 0 10 1 20 2 40 3"), "d.dxf")))
        .isCloseTo(9e-6 * Math.PI, within(1e-15));
    String inches = dxf(" 0 CIRCLE 8 0 10 0 20 0 40 1").replace("70\n4\n", "70\n1\n");
    assertThat(area(DxfFile.parse(inches, "d.dxf")))
        .isCloseTo(Math.PI * 0.0254 * 0.0254, within(1e-12));
    String none = "0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\n0\n20\n0\n40\n1\n0\nENDSEC\n0\nEOF\n";
    ImportedOutlines found = DxfFile.parse(none, "d.dxf");
    assertThat(found.notices()).containsExactly(NoticeKind.DXF_UNIT.of());
    assertThat(area(found)).isCloseTo(1e-6 * Math.PI, within(1e-15));
  }

  @Test
  void turnsTheAxisOfEntitiesSeenFromBelow() throws InputException {
    String half = " 0 LWPOLYLINE 8 0 70 1 230 -1 10 2 20 0 42 1 10 6 20 0";
    Outline outline = DxfFile.parse(dxf(half), "d.dxf").outlines().get(0);
    assertThat(outline.vertices())
        .containsExactly(new Vertex(-0.002, 0, -1), new Vertex(-0.006, 0, 0));
  }

  @Test
  void passesOverBlocksAndPaperAndSaysSo() throws InputException {
    String text =
        dxf(
            " 0 CIRCLE 8 0 10 1 20 2 40 3 0 SPLINE 8 0 0 INSERT 2 A 10 0 20 0"
                + " 0 CIRCLE 67 1 10 1 20 2 40 5");
    ImportedOutlines found = DxfFile.parse(text, "d.dxf");
    assertThat(found.outlines()).hasSize(1);
    assertThat(found.notices())
        .containsExactly(
            NoticeKind.DXF_SKIPPED.of("INSERT", 1), NoticeKind.DXF_SKIPPED.of("SPLINE", 1));
  }

  @Test
  void dropsEdgesDrawnTwice() throws InputException {
    String text = dxf(line(0, 0, 8, 0) + line(8, 0, 8, 9) + line(8, 9, 0, 0) + line(8, 9, 8, 0));
    ImportedOutlines found = DxfFile.parse(text, "d.dxf");
    assertThat(area(found)).isCloseTo(36e-6, within(1e-15));
    assertThat(found.notices()).containsExactly(NoticeKind.DRAWING_TWINS.of(1));
  }

  @Test
  void namesOpenAndBranchingOutlines() {
    InputException open = dxfFault(dxf(line(0, 0, 8, 0) + line(8, 0, 8, 9) + line(8, 9, 0, 0.5)));
    assertThat(open.problems()).hasSize(1);
    assertThat(open.getMessage())
        .contains("is open", "(0, 0) mm", "(0, 0.5) mm", "0.5 mm apart", "0.01 mm");
    InputException branch =
        dxfFault(dxf(line(0, 0, 8, 0) + line(8, 0, 8, 9) + line(8, 9, 0, 0) + line(8, 0, 9, 0)));
    assertThat(branch.getMessage()).contains("3 edges meet at (8, 0) mm", "LINE in line");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | no plain-text DXF",
        "hello | no plain-text DXF",
        "0;SECTION;2;ENTITIES;0;EOF | no outline in this drawing",
        "0;SECTION;2;ENTITIES;0;LINE;10;0;20;0;11;1;0;EOF | LINE lacks its group 21",
        "0;SECTION;2;ENTITIES;0;CIRCLE;10;x;20;0;40;1;0;EOF | line 8",
        "0;SECTION;2;ENTITIES;0;CIRCLE;ten;0;20;0;40;1;0;EOF | group code",
        "9;$INSUNITS;70;17;0;EOF | drawing unit has the code 17",
      })
  void explainsBadDxf(String text, String hint) {
    InputException e = dxfFault(text.replace(';', '\n') + "\n");
    assertThat(e).isNotNull();
    assertThat(e.getMessage()).startsWith("d.dxf").contains(hint);
  }

  // ---- SVG

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<path d='M0 0H8V10H0Z'/> | 80",
        "<path d='m 1 1 l 8 0 0 10 -8 0 z'/> | 80",
        "<path d='M0 0H8V10H0'/><path d='M0 10V0'/> | 80",
        "<path d='M0 4A4 4 0 0 1 8 4V10H0Z'/> | 73.13274122871835",
        "<path d='M0 4a4 4 0 0 0 8 0V10H0Z'/> | 22.86725877128166",
        "<path d='M0 4a1 1 0 0 1 8 0V10H0Z'/> | 73.13274122871835",
        "<path d='M4 0a4 2 0 1 1 -0.001 0z'/> | 25.132741228718345",
        "<polygon points='0,0 8,0 8,10 0,10'/> | 80",
        "<polyline points='0,0 8,0 8,10 0,10 0,0'/> | 80",
        "<line x1='0' y1='0' x2='8' y2='0'/><polyline points='8 0 8 10 0 0'/> | 40",
        "<rect x='1' y='1' width='8' height='10'/> | 80",
        "<rect width='8' height='10' rx='1'/> | 79.14159265358979",
        "<rect width='8' height='10' rx='1' ry='2'/> | 78.28318530717959",
        "<circle cx='5' cy='5' r='4'/> | 50.26548245743669",
        "<ellipse cx='5' cy='5' rx='4' ry='2'/> | 25.132741228718345",
        "<g transform='rotate(30) scale(2, 1)'><circle r='4'/></g> | 100.53096491487338",
        "<g transform='translate(3,4)'><g transform='scale(-1,1)'><rect width='8'"
            + " height='10'/></g></g> | 80",
        "<path d='M0 0Q4 8 8 0Z'/> | 21.333333333333332",
        "<path d='M0 0C0 8 8 8 8 0Z'/> | 38.4",
        "<path d='M0 0q2 4 4 0t4 0v-9h-8z'/> | 72",
        "<path d='M0 0c0 4 4 4 4 0s4 -4 4 0v-9h-8z'/> | 72",
        "<defs><circle r='4'/></defs><circle r='1'/> | 3.141592653589793",
        "<g style='display: none'><circle r='4'/></g><circle r='1'/> | 3.141592653589793",
      })
  void readsShapes(String body, double squareMillimetres) throws InputException {
    // a perimeter below 40 mm times the tolerance of 1 µm
    assertThat(1e6 * area(SvgFile.parse(svg(body), "d.svg")))
        .isCloseTo(squareMillimetres, within(0.04));
  }

  @Test
  void circularArcsStayExact() throws InputException {
    Outline nose =
        SvgFile.parse(svg("<path d='M0 14 L0 8 H8 V14 A4 4 0 0 1 0 14'/>"), "d").outlines().get(0);
    assertThat(nose.vertices()).hasSize(4);
    assertThat(nose.vertices().get(3).bulge()).isCloseTo(-1, within(1e-9));
    assertThat(nose.vertices().get(3))
        .extracting(Vertex::x, Vertex::y)
        .containsExactly(0.008, 0.006);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "width='80mm' height='80mm' viewBox='0 0 80 80' | 1",
        "width='8cm' height='8cm' viewBox='0 0 800 800' | 0.1",
        "width='1in' height='1in' viewBox='0 0 25.4 25.4' | 1",
        "width='96' height='96' | 0.264583333333333",
        "width='72pt' height='1in' viewBox='0 0 96 96' | 0.264583333333333",
        "width='100%' viewBox='0 0 5 5' | 0.264583333333333",
        "viewBox='0 0 5 5' | 0.264583333333333",
      })
  void unitsComeFromTheSize(String size, double millimetresPerUnit) throws InputException {
    String text = "<svg xmlns='http://www.w3.org/2000/svg' " + size + "><circle r='1'/></svg>";
    double radius = Math.sqrt(area(SvgFile.parse(text, "d.svg")) / Math.PI);
    assertThat(1000 * radius).isCloseTo(millimetresPerUnit, within(1e-9));
  }

  @Test
  void yIsTurnedUp() throws InputException {
    Outline outline =
        SvgFile.parse(svg("<polygon points='0,20 8,20 4,10'/>"), "d.svg").outlines().get(0);
    assertThat(outline.vertices())
        .containsExactly(new Vertex(0, 0), new Vertex(0.008, 0), new Vertex(0.004, 0.01));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<svg | no sound SVG",
        "<html/> | begins with <html>",
        "<svg viewBox='0 0 0 1'/> | viewBox",
        "<svg width='3 furlongs'/> | such as 80mm",
        "<svg/> | no outline",
        "<svg><path d='M0 0 L5 5 L9 0'/></svg> | is open",
        "<svg><path d='M0 0 L5 oops'/></svg> | data of <path>",
        "<svg><g transform='tilt(3)'/></svg> | transform of <g>",
        "<svg><circle r='-1'/></svg> | radius must be positive",
        "<svg><rect width='1cm' height='3'/></svg> | plain number in user units",
        "<svg><g transform='scale(1e30)'><circle r='1e9'/></g></svg> | too large",
      })
  void explainsBadSvg(String text, String hint) {
    InputException e = svgFault(text);
    assertThat(e).isNotNull();
    assertThat(e.getMessage()).startsWith("d.svg").contains(hint);
  }

  @Test
  void neverFetchesAnything() throws Exception {
    Path secret = folder.resolve("secret.txt");
    TextFiles.write(secret, "M0 0H8V10H0Z");
    String text =
        "<!DOCTYPE svg [<!ENTITY x SYSTEM \""
            + secret.toUri()
            + "\">]>"
            + "<svg><path d='M0 0H1V1H0Z'/><title>&x;</title></svg>";
    assertThat(SvgFile.parse(text, "d.svg").outlines()).hasSize(1);
    StringBuilder bomb = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 \"aaaaaaaaaa\">");
    for (int i = 1; i < 12; i++) {
      bomb.append("<!ENTITY a" + i + " \"");
      bomb.append(("&a" + (i - 1) + ";").repeat(10)).append("\">");
    }
    bomb.append("]><svg><title>&a11;</title></svg>");
    assertThat(svgFault(bomb.toString())).isNotNull();
  }

  @Test
  void anOldStyleDoctypeIsHarmless() throws InputException {
    String text =
        "<?xml version='1.0'?><!DOCTYPE svg PUBLIC '-//W3C//DTD SVG 1.1//EN'"
            + " 'http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd'><svg><circle r='1'/></svg>";
    assertThat(SvgFile.parse(text, "d.svg").outlines()).hasSize(1);
  }

  @Test
  @Tag("many")
  void fuzzedDrawingsGiveOutlinesOrProblems() throws InputException {
    List<Outline> nose =
        List.of(
            LipFile.load(PROFILES.resolve("round-nose.json")).profile().outline(),
            LipFile.load(PROFILES.resolve("knife-fin.json")).profile().outline());
    String dxf = DxfFile.text(nose);
    String loose = dxf(line(0, 0, 8, 0) + line(8, 0, 8, 9) + line(8, 9, 0, 0));
    String svg = SvgFile.text(nose, "two");
    String curves =
        svg("<g transform='rotate(3)'><path d='M0 0C0 8 8 8 8 0q2 4 4 0t4 0a1 2 3 1 0 3 3z'/></g>");
    List<String> valid = List.of(dxf, loose, svg, curves);
    for (int seed = 0; seed < 2000; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      String text = TextMutation.mutate(valid.get(seed / 10 % 4), random);
      try {
        ImportedOutlines found =
            seed / 10 % 4 < 2 ? DxfFile.parse(text, "f") : SvgFile.parse(text, "f");
        assertThat(found.outlines()).isNotEmpty();
        if (seed % 20 == 0) {
          LipResolver.check(LipImport.drawing("f", "", found.outlines(), "f"));
        }
      } catch (InputException e) {
        assertThat(e.problems()).as("seed %d", seed).isNotEmpty();
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError("seed " + seed + "\n" + text, e);
      }
    }
  }
}
