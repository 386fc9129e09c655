package hemline.shared.file;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * Outlines from and to DXF, plain text.
 *
 * <p>Read are LINE, ARC, CIRCLE, LWPOLYLINE and POLYLINE with bulges in the model space; loose ends
 * within 0.01 mm are joined. The unit is that of $INSUNITS, mm where it is absent. Written are
 * closed POLYLINEs with bulges, in mm.
 */
public final class DxfFile {
  private DxfFile() {}

  /**
   * Reads the closed outlines of a drawing.
   *
   * @throws InputException if the file is no plain-text DXF, an outline is open, or there is none
   */
  public static ImportedOutlines read(Path file) throws InputException {
    // geometry is plain ASCII whatever the code page of the names
    String text = new String(TextFiles.readBytes(file), StandardCharsets.ISO_8859_1);
    return parse(text, file.toString());
  }

  /** Reads the text of a drawing; the file name serves the messages. */
  public static ImportedOutlines parse(String text, String file) throws InputException {
    return new DxfReader(text, file).read();
  }

  /**
   * Writes outlines in one step.
   *
   * @throws InputException if the file cannot be written
   */
  public static void write(Path file, List<Outline> outlines) throws InputException {
    TextFiles.write(file, text(outlines));
  }

  /** Text of a drawing of outlines. */
  public static String text(List<Outline> outlines) {
    StringBuilder out = new StringBuilder();
    pairs(out, "0", "SECTION", "2", "HEADER", "9", "$INSUNITS", "70", "4", "0", "ENDSEC");
    pairs(out, "0", "SECTION", "2", "ENTITIES");
    for (Outline outline : outlines) {
      pairs(out, "0", "POLYLINE", "8", "0", "66", "1", "10", "0", "20", "0", "30", "0", "70", "1");
      for (Vertex v : outline.vertices()) {
        pairs(out, "0", "VERTEX", "8", "0", "10", mm(v.x()), "20", mm(v.y()), "30", "0");
        if (v.bulge() != 0) {
          pairs(out, "42", FileUnit.decimal(v.bulge()).toPlainString());
        }
      }
      pairs(out, "0", "SEQEND", "8", "0");
    }
    pairs(out, "0", "ENDSEC", "0", "EOF");
    return out.toString();
  }

  private static String mm(double metres) {
    return FileUnit.MM.fromMetres(metres).toPlainString();
  }

  private static void pairs(StringBuilder out, String... codesAndValues) {
    for (int i = 0; i < codesAndValues.length; i += 2) {
      out.append("   ".substring(codesAndValues[i].length())).append(codesAndValues[i]);
      out.append('\n').append(codesAndValues[i + 1]).append('\n');
    }
  }
}
