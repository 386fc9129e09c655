package hemline.viewer.report;

import hemline.shared.result.Calibration;
import hemline.shared.rig.Rig;
import hemline.solver.rig.Comparison;
import hemline.viewer.page.ComparePage;
import hemline.viewer.page.PageHtml;
import hemline.viewer.picture.CompareChart;
import org.jspecify.annotations.Nullable;

/** Files of a measurement beside its prediction: JSON, table, chart and a page. */
public final class CompareFiles {
  private CompareFiles() {}

  /**
   * Writes all files.
   *
   * @param lip name
   * @param learnt calibration that the comparison teaches; null for none
   * @param document JSON of the comparison
   */
  public static void write(
      ResultFolder folder,
      String lip,
      Rig rig,
      Comparison comparison,
      @Nullable Calibration learnt,
      String document) {
    String title = ComparePage.title(lip, rig);
    folder.write("comparison.json", document);
    folder.write("comparison.csv", CompareCsv.of(comparison));
    SectionFiles.picture(folder, "comparison", () -> CompareChart.of(title, comparison));
    folder.write("report.html", () -> PageHtml.bytes(ComparePage.of(lip, rig, comparison, learnt)));
  }
}
