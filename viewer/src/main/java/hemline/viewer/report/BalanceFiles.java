package hemline.viewer.report;

import hemline.solver.plenum.MachineBalance;
import hemline.viewer.page.BalancePage;
import hemline.viewer.page.PageHtml;
import hemline.viewer.picture.DownforceChart;
import hemline.viewer.picture.FanChart;
import hemline.viewer.picture.HoldChart;
import hemline.viewer.picture.TradeChart;

/** Files of a machine's balance: JSON, tables, plots and a report that needs no other file. */
public final class BalanceFiles {
  private BalanceFiles() {}

  /**
   * Writes all files.
   *
   * @param document JSON of the balance
   * @param mesh level of the sections
   */
  public static void write(
      ResultFolder folder, MachineBalance balance, String document, String mesh) {
    folder.write("balance.json", document);
    folder.write("figures.csv", BalanceCsv.figures(balance));
    folder.write("trades.csv", BalanceCsv.trades(balance));
    folder.write("curves.csv", BalanceCsv.curves(balance));
    folder.write("sections.csv", BalanceCsv.sections(balance));
    SectionFiles.picture(folder, "fan-and-leaks", () -> FanChart.of(balance));
    SectionFiles.picture(folder, "downforce", () -> DownforceChart.of(balance));
    SectionFiles.picture(folder, "hold", () -> HoldChart.of(balance));
    SectionFiles.picture(folder, "trades", () -> TradeChart.of(balance));
    folder.write("report.html", () -> PageHtml.bytes(BalancePage.of(balance, mesh)));
  }
}
