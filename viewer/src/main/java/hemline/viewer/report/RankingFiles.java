package hemline.viewer.report;

import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.GapChart;
import hemline.viewer.picture.RankingChart;
import hemline.viewer.picture.SectionPicture;
import java.util.List;

/** The files of a ranking. */
public final class RankingFiles {
  private RankingFiles() {}

  /**
   * Writes {@code ranking.json}, {@code ranking.csv}, {@code figures.csv}, the charts {@code
   * ranking} and (for several gaps) {@code gaps}, and into {@code streamlines} a picture of every
   * lip.
   *
   * @param profiles in the order of the answer
   * @param conditions what the sections share
   * @param everyGap true for pictures and fields at all gaps, false for pictures at the middle gap
   */
  public static void write(
      ResultFolder folder,
      String document,
      RankingAnswer answer,
      List<LipProfile> profiles,
      SealSection conditions,
      boolean everyGap)
      throws InputException {
    Ranking ranking = answer.ranking();
    folder.write("ranking.json", document);
    folder.write("ranking.csv", FiguresCsv.of(ranking));
    folder.write(
        "figures.csv",
        FiguresCsv.of(answer.answers().stream().map(SectionAnswer::result).toList()));
    if (!ranking.rows().isEmpty()) {
      SectionFiles.picture(folder, "ranking", RankingChart.of(ranking));
      if (ranking.gaps().size() > 1) {
        SectionFiles.picture(folder, "gaps", GapChart.of(ranking));
      }
    }
    int gaps = ranking.gaps().size();
    int middle = (gaps - 1) / 2;
    for (int lip = 0; lip < profiles.size(); lip++) {
      for (int g = 0; g < gaps; g++) {
        if (everyGap || g == middle) {
          SealSection section =
              conditions.withProfile(profiles.get(lip)).withGap(ranking.gaps().get(g));
          section(folder, section, answer.answers().get(lip * gaps + g), everyGap);
        }
      }
    }
  }

  /** Writes {@code figures.csv} of the sections solved before a ranking was stopped. */
  public static void writePartial(ResultFolder folder, List<SectionResult> done)
      throws InputException {
    folder.write("figures.csv", FiguresCsv.of(done));
  }

  private static void section(
      ResultFolder folder, SealSection section, SectionAnswer answer, boolean withFields)
      throws InputException {
    FlowField field = answer.field();
    if (field == null) {
      return;
    }
    String name =
        ResultFolder.fileName(section.profile().name())
            + "-"
            + Digits.plain(1000 * section.gap(), 4)
            + "mm";
    SectionFiles.picture(
        folder, "streamlines/" + name, SectionPicture.of(section, answer.result(), field));
    if (withFields) {
      folder.write("fields/" + name + ".vtr", FieldFile.text(field));
    }
  }
}
