package hemline.viewer.page;

import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckRow.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
   * @param reynoldsLow least gap Reynolds number, not a number when none has one
   * @param reynoldsHigh largest
   * @param groundLow least ground speed over mean speed in the gap, not a number when none has one
   * @param groundHigh largest
   * @param largestError largest relative error of a row with a band
   */
  record Part(
      String covers,
      int cases,
      int rows,
      int passed,
      double reynoldsLow,
      double reynoldsHigh,
      double groundLow,
      double groundHigh,
      double largestError) {}

  TrustTable {
    parts = List.copyOf(parts);
  }

  static TrustTable of(List<CaseResult> results) {
    Map<String, List<CaseResult>> by = new LinkedHashMap<>();
    for (CaseResult result : results) {
      by.computeIfAbsent(result.one().covers(), key -> new ArrayList<>()).add(result);
    }
    List<Part> parts = new ArrayList<>();
    by.forEach((covers, some) -> parts.add(part(covers, some)));
    return new TrustTable(parts);
  }

  private static Part part(String covers, List<CaseResult> results) {
    double[] reynolds = {Double.NaN, Double.NaN};
    double[] ground = {Double.NaN, Double.NaN};
    int rows = 0;
    int passed = 0;
    double largest = 0;
    for (CaseResult result : results) {
      result.gapReynolds().ifPresent(re -> widen(reynolds, re));
      result.groundRatio().ifPresent(ratio -> widen(ground, ratio));
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
        reynolds[0],
        reynolds[1],
        ground[0],
        ground[1],
        largest);
  }

  private static void widen(double[] range, double value) {
    range[0] = Double.isNaN(range[0]) ? value : Math.min(range[0], value);
    range[1] = Double.isNaN(range[1]) ? value : Math.max(range[1], value);
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
