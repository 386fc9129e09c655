package hemline.viewer.report;

import hemline.shared.problem.InputException;
import hemline.shared.result.SectionResult;
import hemline.solver.flow.FlowField;
import hemline.solver.study.Ranking;
import hemline.viewer.picture.Picture;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The files of a result folder. */
public final class SectionFiles {
  private SectionFiles() {}

  /**
   * Writes {@code result.json}, {@code figures.csv} and, where there is a flow, {@code
   * streamlines.png}, {@code streamlines.svg} and {@code fields.vtr}.
   */
  public static void write(
      ResultFolder folder,
      String document,
      SectionResult result,
      @Nullable FlowField field,
      @Nullable Picture picture)
      throws InputException {
    folder.write("result.json", document);
    folder.write("figures.csv", FiguresCsv.of(List.of(result)));
    if (picture != null) {
      picture(folder, "streamlines", picture);
    }
    if (field != null) {
      folder.write("fields.vtr", FieldFile.text(field));
    }
  }

  /** Writes a picture as PNG and as SVG. */
  public static void picture(ResultFolder folder, String name, Picture picture)
      throws InputException {
    try {
      folder.write(name + ".png", picture.png());
    } catch (IOException e) {
      throw new InputException(
          "out.png",
          folder.path().resolve(name + ".png").toString(),
          "the picture cannot be drawn (" + e.getMessage() + "); install a full Java runtime");
    }
    folder.write(name + ".svg", picture.svg());
  }

  /** Results of a ranking in the order of its rows. */
  public static List<SectionResult> results(Ranking ranking) {
    return ranking.rows().stream().flatMap(row -> row.results().stream()).toList();
  }
}
