package hemline.viewer.report;

import hemline.shared.result.SectionResult;
import hemline.shared.section.Section;
import hemline.solver.flow.FlowField;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.SectionPicture;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The files of a result folder. */
public final class SectionFiles {
  private SectionFiles() {}

  /**
   * Writes {@code result.json}, {@code figures.csv} and, where there is a flow, {@code
   * streamlines.png}, {@code streamlines.svg} and {@code fields.vtr}.
   *
   * @param field its flow; null where there is none
   */
  public static void write(
      ResultFolder folder,
      String document,
      Section section,
      SectionResult result,
      @Nullable FlowField field) {
    folder.write("result.json", document);
    folder.write("figures.csv", FiguresCsv.of(List.of(result)));
    if (field != null) {
      picture(folder, "streamlines", () -> SectionPicture.of(section, result, field));
      folder.write("fields.vtr", FieldFile.text(field));
    }
  }

  /** Writes a picture as PNG and as SVG. */
  public static void picture(
      ResultFolder folder, String name, Supplier<? extends Picture> picture) {
    Supplier<Picture> drawn = new Drawn(picture);
    folder.write(name + ".png", () -> drawn.get().png());
    folder.write(name + ".svg", () -> drawn.get().svg().getBytes(StandardCharsets.UTF_8));
  }

  /** Draws once, when first asked. */
  private static final class Drawn implements Supplier<Picture> {
    private final Supplier<? extends Picture> picture;
    private @Nullable Picture drawn;

    Drawn(Supplier<? extends Picture> picture) {
      this.picture = picture;
    }

    @Override
    public Picture get() {
      if (drawn == null) {
        drawn = picture.get();
      }
      return drawn;
    }
  }
}
