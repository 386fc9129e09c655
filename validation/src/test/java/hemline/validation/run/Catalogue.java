package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.validation.reference.CitedRow;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceTables;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * What a run of the whole catalogue of cases gave, as a table to keep.
 *
 * @param rows in the order of the cases
 */
record Catalogue(List<Row> rows) {
  private static final MathContext DIGITS = new MathContext(5);
  private static final String HEAD =
      "case,class,quantity,grade,comparison,reference,computed,low,high,error,allowed,band,verdict";

  /**
   * A row of the catalogue; numbers as text with five digits, empty where there is none.
   *
   * @param error computed minus reference, relative as in tables
   * @param allowed largest error that passes, relative as well
   * @param band holds, misses, or nothing where a row has no band to judge
   */
  record Row(
      String name,
      String flow,
      String quantity,
      String grade,
      String comparison,
      String reference,
      String computed,
      String low,
      String high,
      String error,
      String allowed,
      String band,
      String verdict) {

    /** What identifies the row. */
    String key() {
      return name + ": " + quantity + " = " + reference;
    }

    String folder() {
      return name.substring(0, name.indexOf('/'));
    }
  }

  Catalogue {
    rows = List.copyOf(rows);
  }

  static Catalogue of(List<CaseResult> results) {
    List<Row> rows = new ArrayList<>();
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        rows.add(row(result, row));
      }
    }
    return new Catalogue(rows);
  }

  private static Row row(CaseResult result, CheckRow row) {
    ExpectedFigure e = row.expected();
    Estimate computed = row.computed();
    return new Row(
        row.caseName(),
        result.one().flow().key(),
        e.quantity(),
        e.evidence().grade().name(),
        e.comparison().key(),
        text(e.reference()),
        computed == null ? row.status().key() : text(computed.value()),
        computed == null ? "" : text(computed.low()),
        computed == null ? "" : text(computed.high()),
        row.relativeError().isEmpty() ? "" : text(row.relativeError().getAsDouble()),
        text(e.tolerance() / e.size()),
        row.calibrates() ? row.insideBand() ? "holds" : "misses" : "",
        row.verdict().key());
  }

  /** A number with five digits. */
  static String text(double value) {
    return value == 0
        ? "0"
        : BigDecimal.valueOf(value).round(DIGITS).stripTrailingZeros().toString();
  }

  String csv() {
    StringBuilder out = new StringBuilder(HEAD).append('\n');
    for (Row r : rows) {
      out.append(
              String.join(
                  ",",
                  r.name,
                  r.flow,
                  '"' + r.quantity + '"',
                  r.grade,
                  r.comparison,
                  r.reference,
                  r.computed,
                  r.low,
                  r.high,
                  r.error,
                  r.allowed,
                  r.band,
                  r.verdict))
          .append('\n');
    }
    return out.toString();
  }

  static Catalogue parse(String csv) {
    List<Row> rows = new ArrayList<>();
    for (CitedRow r : ReferenceTables.rows(csv, "catalogue")) {
      rows.add(
          new Row(
              r.text("case"),
              r.text("class"),
              r.text("quantity"),
              r.text("grade"),
              r.text("comparison"),
              r.text("reference"),
              r.text("computed"),
              r.text("low"),
              r.text("high"),
              r.text("error"),
              r.text("allowed"),
              r.text("band"),
              r.text("verdict")));
    }
    return new Catalogue(rows);
  }
}
