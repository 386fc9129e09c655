package hemline.viewer.cli;

import hemline.shared.result.Estimate;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckSummary;
import hemline.viewer.format.CheckWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import java.util.ArrayList;
import java.util.List;

/** A check for people: the comparison table, what is not met and why, and the counts. */
final class CheckText {
  private static final String INDENT = "  ";

  private CheckText() {}

  /** Cases and what each proves for a seal. */
  static List<String> list(List<ReferenceCase> cases) {
    TextTable table = new TextTable(Lean.LEFT, Lean.LEFT, Lean.LEFT);
    for (ReferenceCase one : cases) {
      table.row(one.name(), one.fast() ? "fast" : "", one.proves());
    }
    return table.lines("");
  }

  /** Lines of text. */
  static List<String> lines(List<CaseResult> results, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add("Computed against known answers");
    lines.add("");
    TextTable table =
        new TextTable(
            Lean.LEFT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.LEFT);
    table.row("case", "computed", "reference", "E", "u_val", "allowed", "");
    for (CaseResult result : results) {
      table.row(result.one().name());
      for (CheckRow row : result.rows()) {
        table.row(
            INDENT + row.expected().quantity(),
            computed(row),
            CheckWords.number(row.expected().reference()),
            CheckWords.error(row),
            CheckWords.uncertainty(row),
            CheckWords.tolerance(row.expected()),
            row.verdict().key() + (row.calibrates() && !row.insideBand() ? " (outside band)" : ""));
      }
    }
    lines.addAll(table.lines(""));
    lines.add("");
    lines.add("E: computed minus reference; u_val: half our band and the error of the reference");
    lines.add("together. All as share of the reference, or of a natural scale where that is zero.");
    misses(results, lines);
    lines.add("");
    lines.addAll(
        TextTable.wrapped(
            CheckWords.counts(CheckSummary.of(results)) + " " + Digits.plain(seconds, 2) + " s.",
            "",
            "",
            ResultText.WIDTH));
    return lines;
  }

  private static String computed(CheckRow row) {
    Estimate computed = row.computed();
    return computed == null ? "(" + row.status().key() + ")" : CheckWords.value(computed);
  }

  private static void misses(List<CaseResult> results, List<String> lines) {
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        if (row.verdict() == CheckRow.Verdict.KNOWN_LIMIT) {
          lines.add("");
          lines.addAll(
              TextTable.wrapped(
                  "Known limit, "
                      + row.caseName()
                      + ", "
                      + row.expected().quantity()
                      + ": "
                      + row.reason(),
                  "",
                  INDENT,
                  ResultText.WIDTH));
        }
      }
    }
  }
}
