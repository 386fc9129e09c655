package hemline.shared.file;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.OutlineChecks;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.PlainText;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
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
    String name = PlainText.asName(fileName.substring(0, fileName.length() - 4));
    return new Imported(
        drawing(
            name, "imported from " + PlainText.shown(fileName), found.outlines(), file.toString()),
        found.notices());
  }

  /**
   * Reads and resolves a lip from an SVG or DXF file.
   *
   * @return with notices of the drawing before those of the lip
   * @throws InputException with every problem found in the drawing or the lip
   */
  public static LoadedLip load(Path file) throws InputException {
    Imported imported = read(file);
    LipFindings findings = LipResolver.check(imported.drawing());
    if (findings.profile() == null) {
      throw new InputException(
          findings.problems().stream()
              .map(p -> new Problem(p.code(), file + ", " + p.place(), p.text()))
              .toList());
    }
    List<Notice> notices = new ArrayList<>(imported.notices());
    notices.addAll(findings.notices());
    return new LoadedLip(imported.drawing(), findings.profile(), notices);
  }

  /**
   * The drawing of an imported lip moved to the origin, as a lip file wants it: counter-clockwise,
   * lowest point on the ground line, ambient edge at x = 0.
   *
   * @param lip from {@link #load}
   */
  public static LipDrawing atOrigin(LoadedLip lip) {
    LipProfile profile = lip.profile();
    // moving leaves rounding errors in the last digits, which nobody wants to read in a file
    List<DrawnOutline> drawn =
        Alignment.align(profile.bodies()).stream()
            .map(o -> new DrawnOutline(o.vertices()))
            .toList();
    LipDrawing d = lip.drawing();
    return d.shaped(drawn.get(0), profile.mountEdge(), drawn.subList(1, drawn.size()));
  }

  /** True if the name of a file says that it is a drawing to import. */
  public static boolean isDrawing(Path file) {
    String lower = file.toString().toLowerCase(Locale.ROOT);
    return lower.endsWith(".svg") || lower.endsWith(".dxf");
  }

  /**
   * A lip of outlines.
   *
   * @param source where they come from
   * @param place for messages
   */
  static LipDrawing drawing(String name, String source, List<Outline> outlines, String place)
      throws InputException {
    if (outlines.size() > LipResolver.MOST_PARTS + 1) {
      throw new InputException(
          "drawing.size",
          place,
          "the drawing has "
              + outlines.size()
              + " outlines; a lip has at most "
              + (LipResolver.MOST_PARTS + 1)
              + ": leave out what does not belong to it");
    }
    int main = 0;
    for (int i = 1; i < outlines.size(); i++) {
      main = isBefore(outlines.get(i), outlines.get(main)) ? i : main;
    }
    for (Outline outline : outlines) {
      if (outline.vertices().size() > OutlineChecks.MOST_VERTICES) {
        throw new InputException(
            "outline.vertices",
            place,
            "an outline has "
                + outline.vertices().size()
                + " corners; at most "
                + OutlineChecks.MOST_VERTICES
                + " are possible: draw curves as arcs");
      }
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
