package hemline.validation.run;

import hemline.solver.flow.Closure;
import hemline.validation.run.CheckRow.Verdict;
import java.util.List;

/**
 * Counts over the rows of a check.
 *
 * @param rows all of them
 * @param passed within tolerance
 * @param knownLimits not met for a written reason
 * @param orientation compared with references good for orientation only, and off
 * @param failed not met
 * @param bands rows that tell whether our bands are honest
 * @param covered of those, rows whose band holds the reference
 * @param turbulentBands of the rows that tell, those of turbulent flows, where the flow model adds
 *     an error of its own that a band from grids does not hold
 * @param turbulentCovered of those, rows whose band holds the reference
 */
public record CheckSummary(
    int rows,
    int passed,
    int knownLimits,
    int orientation,
    int failed,
    int bands,
    int covered,
    int turbulentBands,
    int turbulentCovered) {

  /** Counts the rows of some cases. */
  public static CheckSummary of(List<CaseResult> results) {
    List<CheckRow> rows = results.stream().flatMap(r -> r.rows().stream()).toList();
    List<CheckRow> turbulent =
        results.stream()
            .filter(r -> !r.closure().isEmpty() && !r.closure().equals(Closure.LAMINAR.key()))
            .flatMap(r -> r.rows().stream())
            .toList();
    return new CheckSummary(
        rows.size(),
        count(rows, Verdict.PASS),
        count(rows, Verdict.KNOWN_LIMIT),
        count(rows, Verdict.ORIENTATION),
        count(rows, Verdict.FAIL),
        bands(rows),
        covered(rows),
        bands(turbulent),
        covered(turbulent));
  }

  private static int bands(List<CheckRow> rows) {
    return (int) rows.stream().filter(CheckRow::calibrates).count();
  }

  private static int covered(List<CheckRow> rows) {
    return (int) rows.stream().filter(row -> row.calibrates() && row.insideBand()).count();
  }

  private static int count(List<CheckRow> rows, Verdict verdict) {
    return (int) rows.stream().filter(row -> row.verdict() == verdict).count();
  }

  /** Share of honest bands, 0 to 1; 1 when no row tells. */
  public double coverage() {
    return bands == 0 ? 1 : (double) covered / bands;
  }
}
