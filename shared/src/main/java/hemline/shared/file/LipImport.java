package hemline.shared.file;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.MountEdge;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * Makes a lip of an imported drawing: the outline that reaches highest is the lip, its longest
 * level edge at the top the mount edge, the others detached bodies.
 */
public final class LipImport {
  private LipImport() {}

  /**
   * A lip taken from a drawing.
   *
   * @param drawing not yet judged
   * @param notices what was passed over or taken for granted
   */
  public record Imported(LipDrawing drawing, List<Notice> notices) {
    public Imported {
      notices = List.copyOf(notices);
    }
  }

  /**
   * Reads a lip from an SVG or DXF file; its name is that of the file.
   *
   * @throws InputException if the drawing cannot be read or has no level edge at the top
   */
  public static Imported read(Path file) throws InputException {
    Path last = file.getFileName();
    String fileName = last == null ? "" : last.toString();
    String lower = fileName.toLowerCase(Locale.ROOT);
    ImportedOutlines found;
    if (lower.endsWith(".svg")) {
      found = SvgFile.read(file);
    } else if (lower.endsWith(".dxf")) {
      found = DxfFile.read(file);
    } else {
      throw new InputException(
          "drawing.kind", file.toString(), "a drawing to import must end in .svg or .dxf");
    }
    String name = fileName.substring(0, fileName.length() - 4);
    return new Imported(
        drawing(name, "imported from " + fileName, found.outlines(), file.toString()),
        found.notices());
  }

  /**
   * A lip of outlines.
   *
   * @param source where they come from
   * @param place for messages
   */
  static LipDrawing drawing(String name, String source, List<Outline> outlines, String place)
      throws InputException {
    int main = 0;
    for (int i = 1; i < outlines.size(); i++) {
      main = isBefore(outlines.get(i), outlines.get(main)) ? i : main;
    }
    List<Vertex> body = outlines.get(main).vertices();
    OptionalInt mountEdge = MountEdge.findAtTop(body);
    if (mountEdge.isEmpty()) {
      throw new InputException(
          "lip.mountEdge",
          place,
          "the lip has no straight level edge at its top to be fixed by; draw one, with the ground"
              + " below the drawing");
    }
    List<DrawnOutline> detached = new ArrayList<>();
    for (int i = 0; i < outlines.size(); i++) {
      if (i != main) {
        detached.add(new DrawnOutline(outlines.get(i).vertices()));
      }
    }
    return new LipDrawing(
        name, "", "", false, source, new DrawnOutline(body), mountEdge.getAsInt(), detached);
  }

  /** True if a reaches higher than b, or as high and is larger. */
  private static boolean isBefore(Outline a, Outline b) {
    double difference = top(a) - top(b);
    double size = Math.abs(Polygons.signedArea(a.vertices()));
    double other = Math.abs(Polygons.signedArea(b.vertices()));
    return Math.abs(difference) > 1e-8 ? difference > 0 : size > other;
  }

  private static double top(Outline outline) {
    return outline.vertices().stream().mapToDouble(Vertex::y).max().orElseThrow();
  }
}
