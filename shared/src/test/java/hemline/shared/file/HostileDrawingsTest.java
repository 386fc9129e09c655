package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import hemline.shared.problem.InputException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drawings that once took minutes or gigabytes. Times are of the processor, not of the clock. */
final class HostileDrawingsTest {
  /** Twice the bar of 3 s for joining and 2 s for SVG: a cold start on a slow machine. */
  private static final double SECONDS_OF_DXF = 6;

  private static final double SECONDS_OF_SVG = 4;

  @TempDir Path folder;

  /** Runs a drawing through, and answers its fault or null. */
  private static InputException within(double seconds, Path file) {
    long before = cpu();
    InputException fault = catchThrowableOfType(InputException.class, () -> LipImport.read(file));
    assertThat(1e-9 * (cpu() - before)).as(file.toString()).isLessThan(seconds);
    return fault;
  }

  private static long cpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static void line(StringBuilder out, double x1, double y1, double x2, double y2) {
    out.append("0\nLINE\n8\n0\n10\n").append(x1).append("\n20\n").append(y1);
    out.append("\n11\n").append(x2).append("\n21\n").append(y2).append('\n');
  }

  @Test
  @Tag("many")
  void manyLinesOneAboveTheOtherAreJoined() throws Exception {
    // a rectangle whose sides are cut into short lines: most ends share their x
    StringBuilder text = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
    int n = 99_999;
    double step = 0.02;
    for (int k = 0; k < n; k++) {
      line(text, 0, step * k, 0, step * (k + 1));
      line(text, 10, step * k, 10, step * (k + 1));
    }
    line(text, 0, 0, 10, 0);
    line(text, 0, step * n, 10, step * n);
    text.append("0\nENDSEC\n0\nEOF\n");
    assertThat(text.length()).isLessThan(16 << 20);
    Path file = Files.writeString(folder.resolve("tall.dxf"), text);
    InputException fault = within(SECONDS_OF_DXF, file);
    assertThat(fault.problems().get(0).text()).contains("200000 corners");
  }

  @Test
  @Tag("many")
  void manyEndsAtOnePlaceAreABranch() throws Exception {
    StringBuilder text = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
    for (int k = 0; k < 60_000; k++) {
      line(text, 1e-7 * k, 1e-7 * (k % 7), 10 + k, k % 100);
    }
    Path file = Files.writeString(folder.resolve("star.dxf"), text);
    InputException fault = within(SECONDS_OF_DXF, file);
    assertThat(fault.problems().get(0).code()).isEqualTo("drawing.branch");
  }

  @Test
  @Tag("many")
  void manyOutlinesAreCounted() throws Exception {
    StringBuilder text = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
    for (int k = 0; k < 50_000; k++) {
      text.append("0\nCIRCLE\n10\n").append(k).append("\n20\n0\n40\n0.3\n");
    }
    Path file = Files.writeString(folder.resolve("circles.dxf"), text);
    InputException fault = within(SECONDS_OF_DXF, file);
    assertThat(fault.problems().get(0).text()).contains("50000 outlines");
  }

  private static String svg(String body) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 20 20\" width=\"20mm\">"
        + body
        + "</svg>";
  }

  @Test
  void curvesThatWouldBecomeMillionsOfArcsAreRefused() throws Exception {
    String wave = "c1e6 9e8 -9e8 3e7 8e8 7e8 ".repeat(40_000);
    Path file =
        Files.writeString(folder.resolve("waves.svg"), svg("<path d=\"M0 0 " + wave + "z\"/>"));
    assertThat(Files.size(file)).isLessThan(1_100_000);
    assertThat(within(SECONDS_OF_SVG, file).problems().get(0).text()).contains("100000 corners");
    String many = "<path d=\"M0 0 c1e6 9e8 -9e8 3e7 8e8 7e8 z\"/>".repeat(20_000);
    Files.writeString(file, svg(many));
    assertThat(within(SECONDS_OF_SVG, file).problems().get(0).text()).contains("100000 corners");
  }

  @Test
  void deepAndUnfoldingTextsAreRefused() throws Exception {
    Path deep = Files.writeString(folder.resolve("deep.svg"), svg("<g>".repeat(3_000_000)));
    assertThat(within(SECONDS_OF_SVG, deep).problems().get(0).text()).contains("100 deep");
    StringBuilder entities = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 \"M0 0 L1 1 \">");
    for (int k = 1; k < 12; k++) {
      entities.append("<!ENTITY a" + k + " \"" + ("&a" + (k - 1) + ";").repeat(10) + "\">");
    }
    String laughs = entities + "]>" + svg("<path d=\"&a11;\"/>");
    Path file = Files.writeString(folder.resolve("laughs.svg"), laughs);
    assertThat(within(SECONDS_OF_SVG, file).problems().get(0).text()).contains("no sound SVG");
  }

  @Test
  void largeHonestDrawingsAreRead() throws Exception {
    StringBuilder path = new StringBuilder("M0 0 ");
    for (int k = 1; k < 1900; k++) {
      path.append("L").append(k * 0.01).append(' ').append(k % 2 * 0.3).append(' ');
    }
    String text = svg("<path d=\"" + path + "L18.99 10 L0 10 z\"/>");
    assertThat(SvgFile.parse(text, "d.svg").outlines().get(0).vertices()).hasSize(1902);
  }

  @Test
  void aPipeIsNotWaitedFor() throws Exception {
    Path pipe = folder.resolve("pipe.svg");
    Process made = new ProcessBuilder("mkfifo", pipe.toString()).start();
    assertThat(made.waitFor()).isZero();
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          for (Path file : List.of(pipe, Path.of("/dev/zero"))) {
            assertThatThrownBy(() -> TextFiles.read(file)).hasMessageContaining("pipe or a device");
          }
          assertThatThrownBy(() -> LipImport.read(pipe)).hasMessageContaining("pipe or a device");
        });
  }
}
