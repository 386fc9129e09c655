package hemline.shared.file;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Box;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.PlainText;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * Outlines from and to SVG.
 *
 * <p>Read are path, polygon, polyline, line, rect, circle and ellipse with their transforms; size
 * and unit come from width, height and viewBox, 96 pixels to the inch; y is turned up. Circular
 * arcs stay exact; other curves become arcs within {@link #TOLERANCE}. Written is one path per
 * outline at true scale in mm.
 */
public final class SvgFile {
  /** Largest distance of an imported curve from the drawn one, m. */
  public static final double TOLERANCE = 1e-6;

  private static final int DECIMALS = 9;

  private SvgFile() {}

  /**
   * Reads the closed outlines of a drawing.
   *
   * @throws InputException if the file is no sound SVG, an outline is open, or there is none
   */
  public static ImportedOutlines read(Path file) throws InputException {
    return SvgReader.read(TextFiles.readBytes(file), file.toString());
  }

  /** Reads the text of a drawing; the file name serves the messages. */
  public static ImportedOutlines parse(String text, String file) throws InputException {
    return SvgReader.read(text.getBytes(StandardCharsets.UTF_8), file);
  }

  /**
   * Writes outlines in one step.
   *
   * @param title of the drawing
   * @throws InputException if the file cannot be written
   */
  public static void write(Path file, List<Outline> outlines, String title) throws InputException {
    TextFiles.write(file, text(outlines, title));
  }

  /** Text of a drawing of at least one outline, with a margin of 1 mm. */
  public static String text(List<Outline> outlines, String title) {
    Box box = Box.around(outlines);
    double margin = 1e-3;
    String width = mm(box.width() + 2 * margin);
    String height = mm(box.height() + 2 * margin);
    StringBuilder out = new StringBuilder();
    out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
        .append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width + "mm\" height=\"")
        .append(
            height
                + "mm\" viewBox=\""
                + mm(box.left() - margin)
                + " "
                + mm(-box.top() - margin)
                + " ")
        .append(width + " " + height + "\">\n")
        .append("  <title>" + escaped(title) + "</title>\n");
    for (Outline outline : outlines) {
      out.append("  <path fill=\"#c8c8c8\" stroke=\"#202020\" stroke-width=\"0.1\" d=\"")
          .append(path(outline))
          .append("\"/>\n");
    }
    return out.append("</svg>\n").toString();
  }

  /** Path data of an outline in mm, y down. */
  public static String path(Outline outline) {
    List<Vertex> v = outline.vertices();
    StringBuilder out = new StringBuilder("M " + mm(v.get(0).x()) + " " + mm(-v.get(0).y()));
    for (int i = 0; i < v.size(); i++) {
      Vertex a = v.get(i);
      Vertex b = v.get((i + 1) % v.size());
      if (a.bulge() != 0) {
        Arc arc = Arc.of(a, b);
        String radius = mm(arc.radius());
        // turning left with y up is turning left on the page, which SVG calls negative
        out.append(" A " + radius + " " + radius + " 0 ")
            .append(Math.abs(arc.sweep()) > Math.PI ? 1 : 0)
            .append(arc.sweep() > 0 ? " 0 " : " 1 ")
            .append(mm(b.x()) + " " + mm(-b.y()));
      } else if (i + 1 < v.size()) {
        out.append(" L " + mm(b.x()) + " " + mm(-b.y()));
      }
    }
    return out.append(" Z").toString();
  }

  private static String mm(double metres) {
    BigDecimal value = FileUnit.MM.fromMetres(metres).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }

  private static String escaped(String text) {
    return PlainText.shown(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
