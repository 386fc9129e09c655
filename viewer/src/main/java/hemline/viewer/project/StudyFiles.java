package hemline.viewer.project;

import hemline.solver.study.Ranking;
import hemline.viewer.page.PageHtml;
import hemline.viewer.picture.GapChart;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.RankingChart;
import hemline.viewer.picture.SweepChart;
import hemline.viewer.report.FiguresCsv;
import hemline.viewer.report.RankingDocument;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SectionFiles;
import hemline.viewer.report.SweepDocument;
import java.util.LinkedHashMap;
import java.util.Map;

/** Charts of a study and the files that the commands {@code sweep} and {@code rank} write of it. */
public final class StudyFiles {
  private StudyFiles() {}

  /** Charts by file name; empty where there is nothing to draw. */
  private static Map<String, Picture> charts(KeptStudy study) {
    Map<String, Picture> charts = new LinkedHashMap<>();
    Ranking ranking = study.ranking();
    var swept = study.question().swept();
    if (ranking != null && !ranking.rows().isEmpty()) {
      charts.put("ranking", RankingChart.of(ranking));
      if (ranking.gaps().size() > 1) {
        charts.put("gaps", GapChart.of(ranking));
      }
    } else if (swept != null && study.relative() != null && !study.results().isEmpty()) {
      charts.put("sweep", SweepChart.of(study.relative(), swept));
    } else if (swept != null && study.sweep() != null && !study.results().isEmpty()) {
      charts.put("sweep", SweepChart.of(study.sweep(), swept));
    }
    return charts;
  }

  /** Writes everything that is known of a study. */
  public static void write(ResultFolder folder, KeptStudy study) {
    if (study.ranking() != null) {
      folder.write(
          "ranking.json", RankingDocument.text(study.ranking(), study.complete(), study.seconds()));
      folder.write("ranking.csv", FiguresCsv.of(study.ranking()));
    } else if (study.relative() != null) {
      folder.write(
          "sweep.json", SweepDocument.text(study.relative(), study.complete(), study.seconds()));
    } else if (study.sweep() != null) {
      folder.write(
          "sweep.json", SweepDocument.text(study.sweep(), study.complete(), study.seconds()));
    }
    folder.write("figures.csv", FiguresCsv.of(study.results()));
    folder.write("report.html", () -> PageHtml.bytes(StudyPage.of(study)));
    for (Map.Entry<String, Picture> chart : charts(study).entrySet()) {
      SectionFiles.picture(folder, chart.getKey(), chart::getValue);
    }
  }
}
