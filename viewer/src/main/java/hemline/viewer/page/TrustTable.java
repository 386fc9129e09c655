package hemline.viewer.page;

import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckRow.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What the cases of a check cover, part by part.
 *
 * @param parts by what they cover, in the order of the cases
 */
record TrustTable(List<Part> parts) {

  /**
   * Cases that stand for one part of a seal's life.
   *
   * @param covers the part
   * @param cases how many
   * @param rows how many
   * @param passed rows met
   * @param reynolds gap Reynolds numbers
   * @param ground ground speeds over mean speed in the gap
   * @param largestError largest relative error of a row with a band
   */
  record Part(
      String covers,
      int cases,
      int rows,
      int passed,
      Range reynolds,
      Range ground,
      double largestError) {}

  /**
   * A range; not numbers when it is empty.
   *
   * @param low least
   * @param high largest
   */
  record Range(double low, double high) {
    private static final Range EMPTY = new Range(Double.NaN, Double.NaN);

    private Range with(double value) {
      return Double.isNaN(low)
          ? new Range(value, value)
          : new Range(Math.min(low, value), Math.max(high, value));
    }

    private static Range of(List<CaseResult> results, Function<CaseResult, OptionalDouble> value) {
      Range range = EMPTY;
      for (CaseResult result : results) {
        OptionalDouble one = value.apply(result);
        range = one.isPresent() ? range.with(one.getAsDouble()) : range;
      }
      return range;
    }
  }

  TrustTable {
    parts = List.copyOf(parts);
  }

  static TrustTable of(List<CaseResult> results) {
    Map<String, List<CaseResult>> by = new LinkedHashMap<>();
    for (CaseResult result : results) {
      by.computeIfAbsent(result.one().purpose().covers(), key -> new ArrayList<>()).add(result);
    }
    List<Part> parts = new ArrayList<>();
    by.forEach((covers, some) -> parts.add(part(covers, some)));
    return new TrustTable(parts);
  }

  private static Part part(String covers, List<CaseResult> results) {
    int rows = 0;
    int passed = 0;
    double largest = 0;
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        rows++;
        passed += row.verdict() == Verdict.PASS ? 1 : 0;
        if (row.calibrates()) {
          largest = Math.max(largest, Math.abs(row.relativeError().orElse(0)));
        }
      }
    }
    return new Part(
        covers,
        results.size(),
        rows,
        passed,
        Range.of(results, CaseResult::gapReynolds),
        Range.of(results, CaseResult::groundRatio),
        largest);
  }

  /** Decades of the gap Reynolds number from 0.01 to 100 000 that no case lies in, by exponent. */
  static List<Integer> emptyDecades(List<CaseResult> results) {
    List<Integer> empty = new ArrayList<>();
    for (int k = -2; k < 5; k++) {
      int decade = k;
      boolean any =
          results.stream()
              .flatMapToDouble(r -> r.gapReynolds().stream())
              .anyMatch(re -> re > 0 && (int) Math.floor(Math.log10(re) + 1e-9) == decade);
      if (!any) {
        empty.add(k);
      }
    }
    return empty;
  }
}
