package hemline.viewer.page;

import hemline.shared.result.Estimate;
import hemline.solver.improve.Evaluation;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.LeakGoal;
import hemline.solver.improve.NamedLength;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.Trade;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.ImproveChart;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What a search for a better lip found. */
public final class ImprovePage {
  private ImprovePage() {}

  public static Page of(Improvement found) {
    Page page = new Page("Better than " + found.asked().start().name());
    page.text(verdict(found), Tone.FINDING);
    proof(found, page);
    page.heading("The search").texts(search(found), Tone.PLAIN);
    page.details();
    page.plot(
        () -> ImproveChart.of(found), "figure of each lip that was tried over that of the start");
    page.everywhere();
    if (found.proof().toStart() != null) {
      page.notices(found.proof().toStart().ranking().notices());
    }
    if (found.proof().balance() != null) {
      page.notices(found.proof().balance().notices());
    }
    return page.heading("Before you build").text(Cautions.SHORT, Tone.CAUTION);
  }

  private static void proof(Improvement found, Page page) {
    MachineBalance balance = found.proof().balance();
    if (found.proof().toStart() != null && found.asked().goal() instanceof LeakGoal goal) {
      page.quiet(Wording.conditions(found.proof().toStart().ranking(), goal.speeds()));
      page.table(lips(found));
      page.quiet(
          "Leak over that of the start and of the flat lip as wide, solved anew on finer grids,"
              + " with bands; leak in the search over coarse grids, which picks lucky errors too.");
    } else if (balance != null) {
      page.quiet(balance.machine().description().name() + " at rest, each lip all round in turn");
      page.table(forces(found, balance));
      page.quiet(
          "Downforce over that with the start, from the whole balance with leaks solved anew on"
              + " finer grids, with bands; start over lip in the search, from few coarse"
              + " sections.");
    }
  }

  /** What was found, in one sentence. */
  public static String verdict(Improvement found) {
    Improvement.Found best = found.best();
    boolean leak = found.asked().goal() instanceof LeakGoal;
    if (best == null) {
      return found.proof().lips().isEmpty()
          ? "No lip can be compared: the start or all that were tried have no usable flow."
          : leak ? "The proof has no usable flow." : "With none of the lips the machine settles.";
    }
    Estimate ratio = Objects.requireNonNull(found.relative(best.profile().name()));
    String share = Digits.value(ratio, 1) + " (" + Digits.range(ratio, 1) + ")";
    String told =
        best.profile().name()
            + (leak
                ? (found.proven() ? " leaks " : ", leaks ")
                : (found.proven() ? " gives " : ", gives "))
            + share
            + (leak ? " of " : " of the downforce of ")
            + found.asked().start().name();
    return found.proven()
        ? told + ": proven better."
        : "No gain was found beyond the band in "
            + found.history().size()
            + " evaluations: the best, "
            + told
            + ".";
  }

  private static PageTable forces(Improvement found, MachineBalance balance) {
    List<String> head =
        new ArrayList<>(
            List.of(
                "lip",
                "to start",
                "downforce, N",
                "N per electrical W",
                "least gap, " + LengthUnit.unit()));
    head.add("in the search");
    found.asked().space().lengths().forEach(l -> head.add(l.name() + ", " + LengthUnit.unit()));
    PageTable table = PageTable.of(head).folds();
    for (RankedLip one : balance.changes().lips()) {
      Trade trade = one.trade();
      List<String> cells = new ArrayList<>();
      cells.add(one.name());
      cells.add(told(one.relative(), 1));
      cells.add(told(trade.downforce(), 1));
      cells.add(told(trade.perWatt(), 1));
      cells.add(told(trade.leastGap(), LengthUnit.factor()));
      Improvement.Found lip =
          found.proof().lips().stream()
              .filter(l -> l.profile().name().equals(one.name()))
              .findFirst()
              .orElse(null);
      cells.add(lip == null ? "-" : Digits.plain(lip.evaluation().score(), 3));
      for (int k = 0; k < found.asked().space().lengths().size(); k++) {
        cells.add(lip == null ? "-" : LengthUnit.bare(lip.evaluation().lengths().get(k), 3));
      }
      table.row(cells, false);
    }
    return table;
  }

  private static String told(@Nullable Estimate estimate, double scale) {
    return estimate == null ? "-" : Digits.withBand(estimate, scale);
  }

  private static PageTable lips(Improvement found) {
    List<String> head =
        new ArrayList<>(List.of("lip", "leak to start", "band", "leaks less", "leak to flat"));
    head.add("in the search");
    found.asked().space().lengths().forEach(l -> head.add(l.name() + ", " + LengthUnit.unit()));
    PageTable table = PageTable.of(head).folds();
    for (Ranking.Row row :
        found.proof().toStart() == null
            ? List.<Ranking.Row>of()
            : found.proof().toStart().ranking().rows()) {
      found.proof().lips().stream()
          .filter(l -> l.profile().name().equals(row.profile()))
          .findFirst()
          .ifPresent(lip -> table.row(cells(found, row, lip), false));
    }
    return table;
  }

  private static List<String> cells(Improvement found, Ranking.Row row, Improvement.Found lip) {
    Ranking.Row flat = Improvement.row(found.proof().toFlat(), row.profile());
    List<String> cells = new ArrayList<>();
    cells.add(row.profile());
    cells.add(Digits.value(row.relativeLeak(), 1));
    cells.add(Digits.range(row.relativeLeak(), 1));
    cells.add(Wording.probability(row.placement().probabilityLess()));
    cells.add(flat == null ? "-" : Digits.withBand(flat.relativeLeak(), 1));
    cells.add(Digits.plain(lip.evaluation().score(), 3));
    lip.evaluation().lengths().forEach(v -> cells.add(LengthUnit.bare(v, 3)));
    return cells;
  }

  private static List<String> search(Improvement found) {
    List<String> told = new ArrayList<>();
    List<String> lengths = new ArrayList<>();
    for (NamedLength l : found.asked().space().lengths()) {
      lengths.add(
          l.name() + " " + LengthUnit.bare(l.low(), 3) + " to " + LengthUnit.bare(l.high(), 3));
    }
    told.add(
        found.history().size()
            + " lips were tried; "
            + LengthUnit.unit()
            + ": "
            + String.join(", ", lengths)
            + ".");
    long doubtful = found.history().stream().filter(e -> e.doubt() != null).count();
    if (doubtful > 0) {
      Evaluation first =
          found.history().stream().filter(e -> e.doubt() != null).findFirst().orElseThrow();
      told.add(
          (doubtful == 1 ? "One of them has" : doubtful + " of them have")
              + " a doubtful flow and counted as 5 % worse, such as number "
              + first.number()
              + ": "
              + NoticeWords.of(first.doubt()));
    }
    if (!found.refusal().isEmpty()) {
      told.add("Others could not be built, most often because " + found.refusal() + ".");
    }
    return told;
  }
}
