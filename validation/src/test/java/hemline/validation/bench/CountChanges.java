package hemline.validation.bench;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What has moved against a table of counts. */
final class CountChanges {
  /** Largest relative change of a count that is not reported. */
  static final double TOLERANCE = 0.1;

  private CountChanges() {}

  /**
   * Reads what {@link CountTable#text} wrote.
   *
   * @throws IllegalArgumentException when the text is no such table
   */
  static List<GridCount> parse(String text) {
    List<String> lines = text.lines().toList();
    if (lines.isEmpty() || !lines.get(0).equals(CountTable.HEAD)) {
      throw new IllegalArgumentException(
          "a table of counts begins with the line " + CountTable.HEAD);
    }
    List<GridCount> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cell = line.split(",", -1);
      if (cell.length != 10) {
        throw new IllegalArgumentException("a row of counts has 10 cells: " + line);
      }
      rows.add(
          new GridCount(
              new SolvedFlow(
                  cell[0],
                  Double.parseDouble(cell[1]),
                  Closure.valueOf(cell[2].toUpperCase(Locale.ROOT))),
              Integer.parseInt(cell[3]),
              new GridWork(
                  Integer.parseInt(cell[4]),
                  SolveStatus.valueOf(cell[5].toUpperCase(Locale.ROOT)),
                  Integer.parseInt(cell[6]),
                  Long.parseLong(cell[8])),
              Integer.parseInt(cell[7])));
    }
    return rows;
  }

  /**
   * What has moved by more than {@link #TOLERANCE}: cells, passes, linear iterations, work units,
   * status or flow model, in sentences.
   *
   * <p>Passes are whole numbers: one more or less is always allowed, or a Newton solve of 6 steps
   * could not change at all; its linear iterations likewise.
   *
   * @param kept rows to compare with; may hold more sections and grids than were counted
   * @param counted rows of now
   */
  static List<String> changes(List<GridCount> kept, List<GridCount> counted) {
    Map<String, GridCount> byName =
        kept.stream().collect(Collectors.toMap(GridCount::name, Function.identity()));
    List<String> changes = new ArrayList<>();
    for (GridCount now : counted) {
      GridCount before = byName.get(now.name());
      if (before == null) {
        changes.add(now.name() + " is not in the table");
        continue;
      }
      if (now.work().status() != before.work().status()
          || now.flow().closure() != before.flow().closure()) {
        changes.add(
            "%s ended %s with %s, the table has %s with %s"
                .formatted(
                    now.name(),
                    now.work().status(),
                    now.flow().closure().key(),
                    before.work().status(),
                    before.flow().closure().key()));
      }
      note(changes, now.name(), "cells", before.work().cells(), now.work().cells(), 0);
      note(changes, now.name(), "passes", before.work().passes(), now.work().passes(), 1);
      note(
          changes,
          now.name(),
          "linear iterations",
          before.linearIterations(),
          now.linearIterations(),
          Math.ceil((double) before.linearIterations() / Math.max(1, before.work().passes())));
      note(changes, now.name(), "work units", before.work().units(), now.work().units(), 1);
    }
    return changes;
  }

  private static void note(
      List<String> changes, String name, String what, double before, double now, double free) {
    double change = now - before;
    if (Math.abs(change) > Math.max(free, TOLERANCE * before)) {
      changes.add(
          String.format(
              Locale.ROOT,
              "%s: %s went from %s to %s (%+.0f %%)",
              name,
              what,
              brief(before),
              brief(now),
              100 * change / before));
    }
  }

  private static String brief(double count) {
    return String.format(Locale.ROOT, count == Math.rint(count) ? "%.0f" : "%.1f", count);
  }
}
