package hemline.viewer.report;

import hemline.shared.problem.InputException;
import hemline.solver.plenum.MachineBalance;
import hemline.viewer.picture.DownforceChart;
import hemline.viewer.picture.FanChart;
import hemline.viewer.picture.HoldChart;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.TradeChart;
import java.util.LinkedHashMap;
import java.util.Map;

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
      ResultFolder folder, MachineBalance balance, String document, String mesh)
      throws InputException {
    folder.write("balance.json", document);
    folder.write("figures.csv", BalanceCsv.figures(balance));
    folder.write("trades.csv", BalanceCsv.trades(balance));
    folder.write("curves.csv", BalanceCsv.curves(balance));
    folder.write("sections.csv", BalanceCsv.sections(balance));
    Map<String, Picture> pictures = new LinkedHashMap<>();
    pictures.put("fan-and-leaks", FanChart.of(balance));
    pictures.put("downforce", DownforceChart.of(balance));
    pictures.put("hold", HoldChart.of(balance));
    pictures.put("trades", TradeChart.of(balance));
    for (Map.Entry<String, Picture> p : pictures.entrySet()) {
      SectionFiles.picture(folder, p.getKey(), p.getValue());
    }
    folder.write("report.html", BalanceReport.html(balance, mesh));
  }
}
