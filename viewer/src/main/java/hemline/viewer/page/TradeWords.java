package hemline.viewer.page;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.Trade;
import hemline.viewer.format.BalanceWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Sentences on what changes and other lips buy. */
final class TradeWords {
  private TradeWords() {}

  /** The change of about a tenth that gives the most downforce per watt. */
  static Optional<String> best(List<Trade> trades) {
    List<Trade> tenths =
        trades.stream()
            .filter(t -> t.perWatt() != null && t.factor() > 0.84 && t.factor() < 1.16)
            .toList();
    Optional<Trade> first =
        tenths.stream()
            .filter(t -> perWatt(t).value() > 0)
            .max(Comparator.comparingDouble(t -> perWatt(t).value()));
    return first.map(
        best -> {
          List<String> near =
              tenths.stream()
                  .filter(t -> t != best && perWatt(t).high() >= perWatt(best).low())
                  .map(BalanceWords::change)
                  .toList();
          String said =
              best.kind() == Trade.Kind.AS_IT_IS
                  ? "No change of a tenth gives more downforce per watt than the machine as it is"
                  : "Of the changes of about a tenth, %s gives the most downforce per watt"
                      .formatted(BalanceWords.change(best));
          return near.isEmpty()
              ? said + "."
              : said + "; the bands do not tell it from " + String.join(", ", near) + ".";
        });
  }

  private static Estimate perWatt(Trade t) {
    Estimate perWatt = t.perWatt();
    if (perWatt == null) {
      throw new IllegalArgumentException("a machine that does not settle gives nothing per watt");
    }
    return perWatt;
  }

  /** The lip that ties with one; their number where they are more. */
  static String ties(RankedLip lip, List<RankedLip> all) {
    int n = lip.tiedWith().size();
    return n == 0
        ? "-"
        : n == 1 ? lip.tiedWith().get(0) : n == all.size() - 1 ? "all others" : n + " lips";
  }

  /** What the ranking of lips tells. */
  static List<String> lipRanks(List<RankedLip> lips) {
    RankedLip first = lips.get(0);
    if (first.trade().downforce() == null) {
      return List.of("With none of them the machine settles.");
    }
    List<String> s = new ArrayList<>();
    s.add(
        "Over as it is: downforce over that of the machine with its own lips. Two lips are compared"
            + " by such a ratio, which has its own band, because errors common to both cancel; they"
            + " tie as long as it holds 1.");
    if (!first.tiedWith().isEmpty()) {
      s.add(
          "%s gives most, but is not told from %s."
              .formatted(first.name(), String.join(", ", first.tiedWith())));
    }
    return s;
  }
}
