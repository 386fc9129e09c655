package hemline.viewer.app;

import hemline.shared.file.DxfFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.file.StlFile;
import hemline.shared.file.SvgFile;
import hemline.shared.file.TextFiles;
import hemline.shared.geometry.Outline;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import hemline.viewer.picture.SectionPicture;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Drawings in, drawings, coupons and pictures out. */
public final class Drawings {
  private Drawings() {}

  /** Kinds of a file by its ending. */
  static String ending(Path file) {
    String text = file.toString();
    return text.substring(text.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  /** True for a file that can be put on the bench. */
  public static boolean readable(Path file) {
    return List.of("json", "svg", "dxf").contains(ending(file));
  }

  /**
   * Reads a lip file or a drawing; a lip with faults comes too, so that they can be mended.
   *
   * @param notices takes what was passed over or taken for granted
   * @throws InputException when the file cannot be read at all
   */
  static LipDrawing read(Path file, List<Notice> notices) throws InputException {
    if (!LipImport.isDrawing(file)) {
      return LipFile.read(file);
    }
    LipImport.Imported imported = LipImport.read(file);
    notices.addAll(imported.notices());
    return imported.drawing();
  }

  /**
   * Writes the lip as a drawing (.svg, .dxf) or as a test coupon to print (.stl).
   *
   * @param coupon length of the test coupon, m
   * @throws InputException when the lip has faults or the file cannot be written
   */
  public static void export(Workbench bench, Path file, double coupon) throws InputException {
    LipProfile profile = bench.findings().get().orThrow();
    List<Outline> bodies = profile.bodies();
    switch (ending(file)) {
      case "svg" -> SvgFile.write(file, bodies, profile.name());
      case "dxf" -> DxfFile.write(file, bodies);
      case "stl" -> StlFile.write(file, profile, coupon);
      default -> throw kind(file, ".svg, .dxf or .stl");
    }
  }

  /**
   * Writes the picture of the flow on show (.png, .svg), as the command line writes it.
   *
   * @throws InputException when there is no flow or the file cannot be written
   */
  public static void savePicture(Workbench bench, Path file) throws InputException {
    Shown shown = bench.shown().get();
    if (shown == null) {
      throw new InputException(
          "picture.none", "picture", "there is no flow to draw yet; press Run first");
    }
    SectionPicture picture = SectionPicture.of(shown.section(), shown.result(), shown.field());
    try {
      switch (ending(file)) {
        case "png" -> TextFiles.write(file, picture.png());
        case "svg" -> TextFiles.write(file, picture.svg());
        default -> throw kind(file, ".png or .svg");
      }
    } catch (IOException e) {
      throw new InputException(
          List.of(
              new Problem(
                  "file.write",
                  file.toString(),
                  "the picture cannot be drawn (" + e.getMessage() + ")")));
    }
  }

  private static InputException kind(Path file, String wanted) {
    return new InputException(
        "file.kind", file.toString(), "the name of the file must end in " + wanted);
  }
}
