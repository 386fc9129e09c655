package hemline.viewer.format;

import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.Trade;
import java.util.ArrayList;
import java.util.List;

/** Tables of changes and of other lips. */
final class TradeTables {
  private TradeTables() {}

  static List<List<String>> lips(List<RankedLip> lips) {
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "lip",
            "rank",
            "over as it is",
            "downforce, N",
            "N per electrical W",
            "gap, mm",
            "ties with",
            ""));
    for (RankedLip lip : lips) {
      Trade t = lip.trade();
      table.add(
          List.of(
              lip.name(),
              String.valueOf(lip.rank()),
              BalancePage.margin(lip.relative()),
              BalancePage.margin(t.downforce()),
              BalancePage.margin(t.perWatt()),
              t.leastGap() == null ? "-" : BalanceWords.figure(t.leastGap(), 1000),
              BalanceWords.ties(lip, lips),
              remark(t)));
    }
    return table;
  }

  private static String remark(Trade t) {
    return t.downforce() == null
        ? "does not settle"
        : t.beyond() ? "beyond the solved sections" : "";
  }

  static List<List<String>> trades(List<Trade> trades) {
    List<List<String>> table = new ArrayList<>();
    table.add(List.of("change", "downforce, N", "shaft, W", "N per electrical W", "gap, mm", ""));
    for (Trade t : trades) {
      table.add(
          List.of(
              BalanceWords.change(t),
              t.downforce() == null ? "-" : BalanceWords.figure(t.downforce(), 1),
              t.shaftPower() == null ? "-" : BalanceWords.figure(t.shaftPower(), 1),
              t.perWatt() == null ? "-" : BalanceWords.figure(t.perWatt(), 1),
              t.leastGap() == null ? "-" : BalanceWords.figure(t.leastGap(), 1000),
              remark(t)));
    }
    return table;
  }
}
