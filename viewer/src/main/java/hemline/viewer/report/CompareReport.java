package hemline.viewer.report;

import hemline.solver.rig.Comparison;
import hemline.viewer.format.ComparePage;
import hemline.viewer.format.CompareWords;
import hemline.viewer.picture.CompareChart;
import java.util.List;

/** A measurement beside its prediction as one HTML page with its chart inside. */
final class CompareReport {
  private CompareReport() {}

  static String html(String title, List<ComparePage.Part> parts, Comparison comparison) {
    HtmlText page = new HtmlText(title).title(title).lead(CompareWords.overall(comparison));
    page.picture(
        CompareChart.of(title, comparison),
        "Measured and predicted discharge coefficients with their error bars by gap");
    for (ComparePage.Part part : parts) {
      page.heading(part.title());
      if (!part.table().isEmpty()) {
        page.table(part.table().get(0).toArray(String[]::new));
        for (List<String> row : part.table().subList(1, part.table().size())) {
          page.row("", row.toArray(String[]::new));
        }
        page.endTable();
      }
      part.sentences().forEach(page::text);
    }
    page.heading("At the rig");
    page.list(CompareWords.CAUTIONS, true);
    return page.end(
        "Hemline: figures of air, not of safety; local codes and licensed practice decide.");
  }
}
