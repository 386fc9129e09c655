package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Drawings that once took minutes or gigabytes, each read by a program of its own from a cold
 * start: DXF within 3 s of processor time, hostile SVG within 2 s and 256 MB of the whole process.
 */
@Tag("hard")
final class LargeDrawingsTest {
  private static final double DXF_SECONDS = 3;
  private static final double SVG_SECONDS = 2;
  private static final long SVG_BYTES = 256L << 20;

  @TempDir Path dir;

  private final List<String> failures = new ArrayList<>();

  @Test
  void largeAndHostileDrawingsEndInTime() throws Exception {
    HardTable.Tally dxf = new HardTable.Tally("DXF of up to 200000 lines", 0);
    for (Map.Entry<String, String> one : dxf().entrySet()) {
      assertThat(one.getValue().length()).isLessThan(16 << 20);
      read(dxf, one, ".dxf", "-Xmx512m", DXF_SECONDS, Long.MAX_VALUE);
    }
    HardTable.Tally svg = new HardTable.Tally("hostile SVG", 0);
    for (Map.Entry<String, String> one : svg().entrySet()) {
      read(svg, one, ".svg", "-Xmx160m", SVG_SECONDS, SVG_BYTES);
    }
    HardTable.write(List.of(dxf, svg));
    assertThat(failures).isEmpty();
  }

  private void read(
      HardTable.Tally tally,
      Map.Entry<String, String> drawing,
      String ending,
      String heap,
      double seconds,
      long bytes)
      throws IOException, InterruptedException {
    Path file = Files.writeString(dir.resolve(drawing.getKey() + ending), drawing.getValue());
    Path words = dir.resolve("told");
    Process reader =
        Victim.java(List.of(heap), List.of(TimedRead.class.getName(), file.toString()), words);
    int code = reader.waitFor();
    tally.tried++;
    List<String> told = Victim.told(words);
    if (code != 0 || told.size() != 1) {
      tally.crashed++;
      failures.add(drawing.getKey() + " ended with " + code);
      return;
    }
    String[] parts = told.get(0).split(" ", 3);
    System.out.println(drawing.getKey() + ": " + told.get(0));
    double time = Double.parseDouble(parts[0]);
    tally.longest = Math.max(tally.longest, time);
    if (time > seconds || Long.parseLong(parts[1]) > bytes) {
      tally.hung++;
      failures.add(drawing.getKey() + " took " + told.get(0));
    }
    if (parts[2].equals("read")) {
      tally.read++;
    } else {
      tally.refused++;
    }
  }

  private static void line(StringBuilder out, double x1, double y1, double x2, double y2) {
    out.append("0\nLINE\n8\n0\n10\n").append(x1).append("\n20\n").append(y1);
    out.append("\n11\n").append(x2).append("\n21\n").append(y2).append('\n');
  }

  private static Map<String, String> dxf() {
    Map<String, String> all = new LinkedHashMap<>();
    StringBuilder tall = new StringBuilder();
    int n = 99_999;
    for (int k = 0; k < n; k++) {
      line(tall, 0, 0.02 * k, 0, 0.02 * (k + 1));
      line(tall, 10, 0.02 * k, 10, 0.02 * (k + 1));
    }
    line(tall, 0, 0, 10, 0);
    line(tall, 0, 0.02 * n, 10, 0.02 * n);
    all.put("tall", tall.toString());
    StringBuilder ring = new StringBuilder();
    for (int k = 0; k < 100_000; k++) {
      double a = 2e-5 * Math.PI * k;
      double b = 2e-5 * Math.PI * ((k + 1) % 100_000);
      line(
          ring, (float) Math.cos(a), (float) Math.sin(a), (float) Math.cos(b), (float) Math.sin(b));
    }
    all.put("ring", ring.toString());
    StringBuilder star = new StringBuilder();
    for (int k = 0; k < 60_000; k++) {
      line(star, 1e-7 * k, 1e-7 * (k % 7), 10 + k, k % 100);
    }
    all.put("star", star.toString());
    StringBuilder circles = new StringBuilder();
    for (int k = 0; k < 200_000; k++) {
      circles.append("0\nCIRCLE\n10\n").append(k).append("\n20\n0\n40\n0.3\n");
    }
    all.put("circles", circles.toString());
    all.replaceAll((name, text) -> "0\nSECTION\n2\nENTITIES\n" + text + "0\nENDSEC\n0\nEOF\n");
    return all;
  }

  private static String svg(String body) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 20 20\" width=\"20mm\">"
        + body
        + "</svg>";
  }

  private static Map<String, String> svg() {
    Map<String, String> all = new LinkedHashMap<>();
    String wave = "c1e6 9e8 -9e8 3e7 8e8 7e8 ";
    all.put("waves", svg("<path d=\"M0 0 " + wave.repeat(40_000) + "z\"/>"));
    all.put("paths", svg(("<path d=\"M0 0 " + wave + "z\"/>").repeat(20_000)));
    all.put("deep", svg("<g>".repeat(3_000_000)));
    all.put("groups", svg("<g>".repeat(90) + "<rect/>".repeat(1_000_000) + "</g>".repeat(90)));
    all.put("numbers", svg("<path d=\"M0 0 L" + "1 2 ".repeat(3_000_000) + "z\"/>"));
    StringBuilder entities = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 \"M0 0 L1 1 \">");
    for (int k = 1; k < 12; k++) {
      entities.append("<!ENTITY a" + k + " \"" + ("&a" + (k - 1) + ";").repeat(10) + "\">");
    }
    all.put("entities", entities + "]>" + svg("<path d=\"&a11;\"/>"));
    StringBuilder sound = new StringBuilder("M0 0 ");
    for (int k = 1; k < 1900; k++) {
      sound.append("L").append(k * 0.01).append(' ').append(k % 2 * 0.3).append(' ');
    }
    all.put("large", svg("<path d=\"" + sound + "L18.99 10 L0 10 z\"/>"));
    return all;
  }
}
