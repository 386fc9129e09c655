package hemline.viewer.page;

import hemline.solver.improve.Evaluation;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.NamedLength;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.ImproveChart;
import java.util.ArrayList;
import java.util.List;

/** What a search for a better lip found. */
public final class ImprovePage {
  private ImprovePage() {}

  public static Page of(Improvement found) {
    Page page = new Page("Better than " + found.start().name());
    page.text(verdict(found), Tone.FINDING);
    if (found.toStart() != null) {
      Ranking proof = found.toStart().ranking();
      page.quiet(Wording.conditions(proof));
      page.table(lips(found));
      page.quiet(
          "Leak over that of the start and of the flat lip as wide, solved anew on finer grids,"
              + " with bands; leak in the search over coarse grids, which picks lucky errors too.");
    }
    page.heading("The search").texts(search(found), Tone.PLAIN);
    page.details();
    page.plot(
        () -> ImproveChart.of(found), "leak of each lip that was tried over that of the start");
    page.everywhere();
    if (found.toStart() != null) {
      page.notices(found.toStart().ranking().notices());
    }
    return page.heading("Before you build").text(Cautions.SHORT, Tone.CAUTION);
  }

  /** What was found, in one sentence. */
  public static String verdict(Improvement found) {
    Improvement.Found best = found.best();
    if (best == null) {
      return "None of the lips tried has a usable flow.";
    }
    Ranking.Row row = Improvement.row(found.toStart(), best.profile().name());
    if (row == null) {
      return "The proof has no usable flow.";
    }
    String leak =
        Digits.value(row.relativeLeak(), 1) + " (" + Digits.range(row.relativeLeak(), 1) + ")";
    return found.proven()
        ? best.profile().name()
            + " leaks "
            + leak
            + " of "
            + found.start().name()
            + ": proven better."
        : "No gain was found beyond the band in "
            + found.history().size()
            + " evaluations: the best, "
            + best.profile().name()
            + ", leaks "
            + leak
            + " of "
            + found.start().name()
            + ".";
  }

  private static PageTable lips(Improvement found) {
    List<String> head =
        new ArrayList<>(List.of("lip", "leak to start", "band", "leaks less", "leak to flat"));
    head.add("in the search");
    found.lengths().forEach(l -> head.add(l.name() + ", mm"));
    PageTable table = PageTable.of(head).folds();
    for (Ranking.Row row :
        found.toStart() == null ? List.<Ranking.Row>of() : found.toStart().ranking().rows()) {
      found.lips().stream()
          .filter(l -> l.profile().name().equals(row.profile()))
          .findFirst()
          .ifPresent(lip -> table.row(cells(found, row, lip), false));
    }
    return table;
  }

  private static List<String> cells(Improvement found, Ranking.Row row, Improvement.Found lip) {
    Ranking.Row flat = Improvement.row(found.toFlat(), row.profile());
    List<String> cells = new ArrayList<>();
    cells.add(row.profile());
    cells.add(Digits.value(row.relativeLeak(), 1));
    cells.add(Digits.range(row.relativeLeak(), 1));
    cells.add(Wording.probability(row.placement().probabilityLess()));
    cells.add(flat == null ? "-" : Digits.withBand(flat.relativeLeak(), 1));
    cells.add(Digits.plain(lip.evaluation().score(), 3));
    lip.evaluation().lengths().forEach(v -> cells.add(Digits.plain(1000 * v, 3)));
    return cells;
  }

  private static List<String> search(Improvement found) {
    List<String> told = new ArrayList<>();
    List<String> lengths = new ArrayList<>();
    for (NamedLength l : found.lengths()) {
      lengths.add(
          l.name()
              + " "
              + Digits.plain(1000 * l.low(), 3)
              + " to "
              + Digits.plain(1000 * l.high(), 3));
    }
    told.add(found.history().size() + " lips were tried; mm: " + String.join(", ", lengths) + ".");
    long doubtful = found.history().stream().filter(e -> !e.doubt().isEmpty()).count();
    if (doubtful > 0) {
      Evaluation first =
          found.history().stream().filter(e -> !e.doubt().isEmpty()).findFirst().orElseThrow();
      told.add(
          doubtful
              + " of them have a doubtful flow and counted as 5 % worse, such as number "
              + first.number()
              + ": "
              + first.doubt());
    }
    if (!found.refusal().isEmpty()) {
      told.add("Others could not be built, most often because " + found.refusal() + ".");
    }
    return told;
  }
}
