package hemline.viewer.report;

import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.page.Page;
import hemline.viewer.page.PageHtml;
import hemline.viewer.picture.SweepChart;
import org.jspecify.annotations.Nullable;

/** The files of a sweep. */
public final class SweepFiles {
  private SweepFiles() {}

  /**
   * Writes {@code sweep.json}, {@code figures.csv}, {@code report.html} and the chart {@code
   * sweep}.
   *
   * @param sweep one point at least
   * @param relative the same against a baseline; null for none
   * @param page what it says
   */
  public static void write(
      ResultFolder folder,
      String document,
      SweepResult sweep,
      @Nullable RelativeSweep relative,
      Swept swept,
      Page page) {
    folder.write("sweep.json", document);
    folder.write("figures.csv", FiguresCsv.of(sweep.points()));
    folder.write("report.html", () -> PageHtml.bytes(page));
    SectionFiles.picture(
        folder,
        "sweep",
        () -> relative == null ? SweepChart.of(sweep, swept) : SweepChart.of(relative, swept));
  }
}
