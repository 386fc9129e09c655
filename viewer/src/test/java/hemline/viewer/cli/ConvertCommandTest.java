package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.file.DxfFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class ConvertCommandTest {
  /** Two rounded corners, a half-round bottom on the plenum side, and a vane beside it. */
  private static final String LIP =
      """
      {"schema": "hemline.lip/1", "name": "rounded", "family": "flat", "notes": "kept",
       "outline": [[0, 0], [6, 0, 0.41421356], [8, 2], [8, 10], [0, 10]], "mountEdge": 3,
       "roundings": [{"vertex": 0, "radius": 0.5}],
       "detached": [[[10, 1], [12, 1], [12, 5], [10, 5]]]}
      """;

  private static final String FLAT =
      """
      {"schema": "hemline.lip/1", "name": "plain flat 8",
       "outline": [[0, 0], [8, 0], [8, 10], [0, 10]], "mountEdge": 2}
      """;

  @TempDir Path dir;
  private final FakeStudies studies = new FakeStudies();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private String lip = "";

  @BeforeEach
  void writeLip() throws Exception {
    lip = Files.writeString(dir.resolve("rounded.json"), LIP).toString();
  }

  private int hemline(String... args) {
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            new CancelToken(),
            studies,
            () -> 0L);
    return Commands.execute(desk, file -> {}, args);
  }

  private String in(String name) {
    return dir.resolve(name).toString();
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private void done(String... args) {
    assertThat(hemline(args)).as(err()).isZero();
    assertThat(err()).isEmpty();
  }

  private static void assertSame(Outline a, Outline b) {
    assertThat(a.vertices()).hasSameSizeAs(b.vertices());
    for (int i = 0; i < a.vertices().size(); i++) {
      Vertex v = a.vertices().get(i);
      Vertex w = b.vertices().get(i);
      assertThat(v.x()).isCloseTo(w.x(), within(1e-6));
      assertThat(v.y()).isCloseTo(w.y(), within(1e-6));
      // an arc's rise is half its chord times its bulge, and no chord here is over 10 mm
      assertThat(v.bulge()).isCloseTo(w.bulge(), within(2e-4));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"dxf", "svg", "DXF"})
  void lipComesBackFromADrawing(String kind) throws Exception {
    done("convert", lip, in("drawn." + kind));
    assertThat(out()).contains("\"rounded\", 12 mm wide and 10 mm high").contains("drawn." + kind);
    done("convert", in("drawn." + kind), in("back.json"), "--name", "came back");
    LoadedLip there = LipFile.load(Path.of(lip));
    LoadedLip back = LipFile.load(dir.resolve("back.json"));
    assertThat(back.profile().name()).isEqualTo("came back");
    assertThat(back.drawing().source()).isEqualTo("imported from drawn." + kind);
    assertThat(back.profile().mountEdge()).isEqualTo(there.profile().mountEdge());
    assertSame(back.profile().outline(), there.profile().outline());
    assertThat(back.profile().detached()).hasSize(1);
    assertSame(back.profile().detached().get(0), there.profile().detached().get(0));
  }

  @Test
  void importedLipStandsOnTheGroundLine() throws Exception {
    Outline high =
        new Outline(
            List.of(
                new Vertex(0.1, 0.2),
                new Vertex(0.108, 0.2),
                new Vertex(0.108, 0.21),
                new Vertex(0.1, 0.21)));
    DxfFile.write(dir.resolve("high.dxf"), List.of(high));
    done("convert", in("high.dxf"), in("high.json"));
    assertThat(LipFile.read(dir.resolve("high.json")).body().vertices())
        .containsExactly(
            new Vertex(0, 0), new Vertex(0.008, 0), new Vertex(0.008, 0.01), new Vertex(0, 0.01));
    assertThat(LipFile.read(dir.resolve("high.json")).name()).isEqualTo("high");
  }

  @Test
  void lipFileKeepsItsRoundingsUnderANewName() throws Exception {
    done("convert", lip, in("other.json"), "--name", "my lip");
    assertThat(LipFile.read(dir.resolve("other.json")).body())
        .isEqualTo(LipFile.read(Path.of(lip)).body());
    assertThat(LipFile.read(dir.resolve("other.json")).name()).isEqualTo("my lip");
    assertThat(LipFile.read(dir.resolve("other.json")).notes()).isEqualTo("kept");
  }

  @Test
  void svgCarriesTheName() throws Exception {
    done("convert", lip, in("a.svg"), "--name", "my <lip>");
    assertThat(dir.resolve("a.svg")).content().contains("<title>my &lt;lip&gt;</title>");
  }

  @ParameterizedTest
  @CsvSource({"'', 40, 40 mm", "6cm, 60, 60 mm", "0.5in, 12.7, 12.7 mm"})
  void couponHasTheLengthAsked(String length, double millimetres, String told) throws Exception {
    String flat = Files.writeString(dir.resolve("flat.json"), FLAT).toString();
    if (length.isEmpty()) {
      done("convert", flat, in("coupon.stl"));
    } else {
      done("convert", flat, in("coupon.stl"), "--length", length);
    }
    ByteBuffer stl =
        ByteBuffer.wrap(Files.readAllBytes(dir.resolve("coupon.stl")))
            .order(ByteOrder.LITTLE_ENDIAN);
    // a box: two triangles for each of its six sides
    assertThat(stl.getInt(80)).isEqualTo(12);
    assertThat(stl.capacity()).isEqualTo(84 + 12 * 50);
    double[] high = new double[3];
    for (int triangle = 0; triangle < 12; triangle++) {
      for (int k = 0; k < 9; k++) {
        float c = stl.getFloat(84 + 50 * triangle + 12 + 4 * k);
        assertThat(c).isNotNegative();
        high[k % 3] = Math.max(high[k % 3], c);
      }
    }
    assertThat(high).containsExactly(new double[] {8, 10, millimetres}, within(1e-5));
    assertThat(out()).contains("8 mm wide, 10 mm high and " + told + " long");
  }

  @Test
  void fileThatIsThereIsReplacedAndNothingIsLeftBeside() throws Exception {
    Files.writeString(dir.resolve("a.dxf"), "old");
    done("convert", lip, in("a.dxf"));
    assertThat(dir.resolve("a.dxf")).content().contains("POLYLINE").doesNotContain("old");
    try (var entries = Files.list(dir)) {
      assertThat(entries).hasSize(2);
    }
  }

  @Test
  void inputIsNeverOverwritten() throws Exception {
    assertThat(hemline("convert", lip, dir + "/../" + dir.getFileName() + "/rounded.json"))
        .isEqualTo(2);
    assertThat(err()).contains("is the file that is read").hasLineCount(1);
    Files.createSymbolicLink(dir.resolve("link.json"), Path.of(lip));
    assertThat(hemline("convert", lip, in("link.json"))).isEqualTo(2);
    assertThat(Path.of(lip)).hasContent(LIP);
  }

  @Test
  void whatIsToBeKnownIsShown() throws Exception {
    Path thin = Files.writeString(dir.resolve("thin.json"), FLAT.replace("[8,", "[0.3,"));
    done("convert", thin.toString(), in("thin.stl"));
    assertThat(out()).contains("To know").contains("thinner");
    out.reset();
    Files.writeString(
        dir.resolve("pixels.svg"),
        "<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"M0 0H30V30H0Z\"/></svg>");
    done("convert", in("pixels.svg"), in("pixels.json"));
    assertThat(out()).contains("96 to the inch");
  }

  @Test
  void mountEdgeThatADrawingWouldLoseIsTold() throws Exception {
    String two =
        FLAT.replace(
            "[8, 10], [0, 10]], \"mountEdge\": 2",
            "[8, 10], [6, 10], [6, 8], [4, 8]," + " [4, 10], [0, 10]], \"mountEdge\": 2");
    Path file = Files.writeString(dir.resolve("two.json"), two);
    done("convert", file.toString(), in("two.dxf"));
    assertThat(out()).contains("does not keep the mount edge");
    out.reset();
    done("convert", file.toString(), in("copy.json"));
    assertThat(out()).doesNotContain("To know");
  }

  @ParameterizedTest
  @CsvSource({
    "rounded.txt, a.dxf, a lip to convert must end in",
    "a.stl, a.dxf, a lip to convert must end in",
    "nowhere.json, a.dxf, there is no such file",
    "nowhere.dxf, a.json, there is no such file",
    "rounded.json, a.png, a file to write must end in",
    "rounded.json, json, a file to write must end in",
    "rounded.json, nowhere/a.dxf, folder of this file does not exist",
    "rounded.json, full.dxf, is a folder",
    "open.dxf, a.json, an outline is open",
    "crossed.svg, a.json, 'crossed.svg, outline'"
  })
  void badFilesAreToldInOneSentence(String from, String to, String fault) throws Exception {
    Files.createDirectory(dir.resolve("full.dxf"));
    Files.writeString(
        dir.resolve("open.dxf"),
        "0 SECTION 2 ENTITIES 0 LINE 8 0 10 0 20 0 11 8 21 0 0 ENDSEC 0 EOF ".replace(' ', '\n'));
    Files.writeString(
        dir.resolve("crossed.svg"),
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"20mm\" height=\"20mm\""
            + " viewBox=\"0 0 20 20\"><path d=\"M0 0L8 10H0L8 0Z\"/></svg>");
    assertThat(hemline("convert", in(from), in(to))).isEqualTo(2);
    assertThat(err()).contains(fault).doesNotContain("Exception").hasLineCount(1);
    assertThat(out()).isEmpty();
    assertThat(dir.resolve("a.dxf")).doesNotExist();
    assertThat(dir.resolve("a.json")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource({
    "a.stl, --length, 0mm",
    "a.stl, --length, 2m",
    "a.stl, --length, 40",
    "a.stl, --length, 40Pa",
    "a.stl, --name, fin",
    "a.dxf, --name, fin",
    "a.dxf, --length, 40mm",
    "a.json, --name, ' '"
  })
  void optionsThatCannotHoldAreRefused(String to, String option, String value) {
    assertThat(hemline("convert", lip, in(to), option, value)).isEqualTo(2);
    assertThat(err()).contains(option).doesNotContain("Exception").hasLineCount(1);
    assertThat(dir.resolve(to)).doesNotExist();
  }

  @Test
  void missingFilesAreAskedFor() {
    assertThat(hemline("convert")).isEqualTo(2);
    assertThat(err()).contains("IN: ").hasLineCount(1);
    assertThat(hemline("convert", lip)).isEqualTo(2);
    assertThat(err()).contains("OUT: ").hasLineCount(2);
  }

  @Test
  void studiesTakeDrawings() throws Exception {
    done("convert", lip, in("drawn.dxf"));
    done("run", in("drawn.dxf"), "--gap", "2mm", "--suction", "600Pa");
    Outline drawn = LipFile.load(Path.of(lip)).profile().outline();
    assertSame(((SealSection) studies.asked.get(0)).profile().outline(), drawn);
    studies.asked.clear();
    done("sweep", in("drawn.dxf"), "--gap", "1mm..2mm", "--suction", "600Pa");
    studies.asked.clear();
    done(
        "rank",
        lip,
        "--baseline",
        in("drawn.dxf"),
        "--gaps",
        "2mm",
        "--suction",
        "600Pa",
        "--json");
    assertThat(studies.asked.get(1)).isEqualTo("drawn");
    studies.asked.clear();
    done(
        "rank",
        lip,
        in("drawn.dxf"),
        "--baseline",
        "rounded",
        "--gaps",
        "2mm",
        "--suction",
        "600Pa",
        "--json");
    assertThat(studies.asked.get(0)).isEqualTo(List.of("rounded", "drawn"));
  }
}
