package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.validation.reference.CitedRow;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceTables;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What a run of the whole catalogue of cases gave, as a table to keep.
 *
 * @param rows in the order of the cases
 */
record Catalogue(List<Row> rows) {
  private static final MathContext DIGITS = new MathContext(5);
  private static final String HEAD =
      "case,class,closure,quantity,grade,comparison,reference,uncertainty,scale,computed,grid,second,"
          + "low,high,error,allowed,band,verdict";

  /**
   * A row of the catalogue; numbers as text with five digits, empty where there is none.
   *
   * @param closure flow model
   * @param uncertainty half-width of the reference
   * @param scale natural size where the reference is no measure of it
   * @param grid half-width of the computed value from grid and iteration
   * @param second the value under the second turbulence model
   * @param error computed minus reference, relative as in tables
   * @param allowed largest error that passes, relative as well
   * @param band holds, misses, or nothing where a row has no band to judge
   */
  record Row(
      String name,
      String flow,
      String closure,
      String quantity,
      String grade,
      String comparison,
      String reference,
      String uncertainty,
      String scale,
      String computed,
      String grid,
      String second,
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
    Measured measured = row.measured();
    return new Row(
        row.caseName(),
        result.one().flow().key(),
        result.closure(),
        e.quantity(),
        e.evidence().grade().name(),
        e.tolerance().comparison().key(),
        text(e.reference().value()),
        text(e.reference().uncertainty()),
        e.natural(0) > 0 ? text(e.natural(0)) : "",
        computed == null ? row.status().key() : text(computed.value()),
        computed == null ? "" : text(computed.grid()),
        measured == null || !Double.isFinite(measured.second()) ? "" : text(measured.second()),
        computed == null ? "" : text(computed.low()),
        computed == null ? "" : text(computed.high()),
        row.relativeError().isEmpty() ? "" : text(row.relativeError().getAsDouble()),
        text(e.tolerance().largest() / e.size()),
        row.calibrates() ? row.insideBand() ? "holds" : "misses" : "",
        row.verdict().key());
  }

  /** A number with five digits. */
  static String text(double value) {
    return value == 0
        ? "0"
        : BigDecimal.valueOf(value).round(DIGITS).stripTrailingZeros().toString();
  }

  /** The same with the rows of other cases in the place of those of equal name. */
  Catalogue renewed(Catalogue solved, List<String> order) {
    Map<String, List<Row>> all = new HashMap<>();
    rows.forEach(r -> all.computeIfAbsent(r.name, n -> new ArrayList<>()).add(r));
    solved.rows.forEach(r -> all.remove(r.name));
    solved.rows.forEach(r -> all.computeIfAbsent(r.name, n -> new ArrayList<>()).add(r));
    return new Catalogue(
        order.stream().flatMap(n -> all.getOrDefault(n, List.of()).stream()).toList());
  }

  String csv() {
    StringBuilder out = new StringBuilder(HEAD).append('\n');
    for (Row r : rows) {
      out.append(
              String.join(
                  ",",
                  r.name,
                  r.flow,
                  r.closure,
                  '"' + r.quantity + '"',
                  r.grade,
                  r.comparison,
                  r.reference,
                  r.uncertainty,
                  r.scale,
                  r.computed,
                  r.grid,
                  r.second,
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
              r.text("closure"),
              r.text("quantity"),
              r.text("grade"),
              r.text("comparison"),
              r.text("reference"),
              r.text("uncertainty"),
              r.text("scale"),
              r.text("computed"),
              r.text("grid"),
              r.text("second"),
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
