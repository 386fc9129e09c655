package hemline.viewer.project;

import hemline.solver.study.Ranking;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.page.Page;
import hemline.viewer.page.PageHtml;
import hemline.viewer.report.FiguresCsv;
import hemline.viewer.report.RankingDocument;
import hemline.viewer.report.RankingFiles;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.report.SweepDocument;
import hemline.viewer.report.SweepFiles;

/** The files that the commands {@code sweep} and {@code rank} write of a study. */
public final class StudyFiles {
  private StudyFiles() {}

  /** Writes everything that is known of a study. */
  public static void write(ResultFolder folder, KeptStudy study) {
    Page page = StudyPage.of(study);
    Ranking ranking = study.ranking();
    Swept swept = study.question().swept();
    SweepResult sweep = study.swept();
    if (ranking != null) {
      String document = RankingDocument.text(ranking, study.complete(), study.run().seconds());
      RankingFiles.write(folder, document, ranking, study.results(), page);
    } else if (swept != null && sweep != null) {
      String document =
          SweepDocument.text(sweep, study.relative(), study.complete(), study.run().seconds());
      SweepFiles.write(folder, document, sweep, study.relative(), swept, page);
    } else {
      folder.write("figures.csv", FiguresCsv.of(study.results()));
      folder.write("report.html", () -> PageHtml.bytes(page));
    }
  }
}
