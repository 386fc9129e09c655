package hemline.viewer.cli;

import hemline.solver.plenum.MachineBalance;
import hemline.viewer.format.BalancePage;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A machine's balance for people, with each caution beside the figures it belongs to. */
final class BalanceText {
  private static final String INDENT = "  ";

  private BalanceText() {}

  /** Lines of text. */
  static List<String> lines(MachineBalance balance, String mesh, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add(BalancePage.title(balance.machine()));
    lines.add(BalanceWords.conditions(balance.machine()));
    for (BalancePage.Block block : BalancePage.of(balance)) {
      lines.add("");
      lines.add(block.title());
      lines.addAll(table(block.table()));
      for (String sentence : block.sentences()) {
        lines.addAll(TextTable.wrapped(sentence, INDENT, INDENT + INDENT, ResultText.WIDTH));
      }
      for (String caution : block.cautions()) {
        lines.addAll(TextTable.wrapped("! " + caution, INDENT, INDENT + INDENT, ResultText.WIDTH));
      }
    }
    lines.add("");
    lines.add(
        balance.leakPoints().size()
            + " sections on "
            + mesh
            + " grids, "
            + Digits.plain(seconds, 2)
            + " s.");
    return lines;
  }

  static List<String> table(List<List<String>> rows) {
    if (rows.isEmpty()) {
      return List.of();
    }
    Lean[] columns = new Lean[rows.get(0).size()];
    Arrays.fill(columns, Lean.LEFT);
    TextTable table = new TextTable(columns);
    rows.forEach(row -> table.row(row.toArray(String[]::new)));
    return table.lines(INDENT);
  }
}
