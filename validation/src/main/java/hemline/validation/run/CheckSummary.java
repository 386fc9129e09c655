package hemline.validation.run;

import hemline.validation.reference.FlowClass;
import hemline.validation.run.CheckRow.Verdict;
import java.util.ArrayList;
import java.util.List;

/**
 * Counts over the rows of a check.
 *
 * @param rows all of them
 * @param passed within tolerance
 * @param knownLimits not met for a written reason, and no worse than then
 * @param orientation compared with references good for orientation only, and off
 * @param failed not met
 * @param coverage how often bands hold the reference, by class of flow and never over several
 */
public record CheckSummary(
    int rows, int passed, int knownLimits, int orientation, int failed, List<Coverage> coverage) {

  /**
   * How often bands hold the reference in one class of flows.
   *
   * @param flow the class
   * @param bands rows that tell whether our bands are honest, 1 or more
   * @param covered of those, rows whose band holds the reference
   */
  public record Coverage(FlowClass flow, int bands, int covered) {}

  public CheckSummary {
    coverage = List.copyOf(coverage);
  }

  /** Counts the rows of some cases. */
  public static CheckSummary of(List<CaseResult> results) {
    List<CheckRow> rows = results.stream().flatMap(r -> r.rows().stream()).toList();
    List<Coverage> coverage = new ArrayList<>();
    for (FlowClass flow : FlowClass.values()) {
      List<CheckRow> telling =
          results.stream()
              .filter(r -> r.one().flow() == flow)
              .flatMap(r -> r.rows().stream())
              .filter(CheckRow::calibrates)
              .toList();
      if (!telling.isEmpty()) {
        int covered = (int) telling.stream().filter(CheckRow::insideBand).count();
        coverage.add(new Coverage(flow, telling.size(), covered));
      }
    }
    return new CheckSummary(
        rows.size(),
        count(rows, Verdict.PASS),
        count(rows, Verdict.KNOWN_LIMIT),
        count(rows, Verdict.ORIENTATION),
        count(rows, Verdict.FAIL),
        coverage);
  }

  private static int count(List<CheckRow> rows, Verdict verdict) {
    return (int) rows.stream().filter(row -> row.verdict() == verdict).count();
  }
}
