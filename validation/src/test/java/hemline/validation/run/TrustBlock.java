package hemline.validation.run;

import hemline.validation.reference.CitedRow;
import hemline.validation.reference.FlowClass;
import hemline.validation.reference.ReferenceTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The part of a guide that tells how far to trust the figures, made from the catalogue. */
final class TrustBlock {
  static final String BEGIN = "<!-- trust: written from validation/catalogue.csv -->";
  static final String END = "<!-- trust: end -->";

  private TrustBlock() {}

  /**
   * A guide with its block renewed.
   *
   * @param misses true for the block that names each row that is not met
   */
  static String renewed(String guide, Catalogue catalogue, boolean misses) {
    int from = guide.indexOf(BEGIN);
    int to = guide.indexOf(END);
    if (from < 0 || to < from) {
      throw new IllegalArgumentException("the guide has no lines " + BEGIN + " and " + END);
    }
    return guide.substring(0, from) + text(catalogue, misses) + guide.substring(to + END.length());
  }

  /** The block of a guide, marks included. */
  static String of(String guide) {
    return guide.substring(guide.indexOf(BEGIN), guide.indexOf(END) + END.length());
  }

  /** The block, marks included. */
  static String text(Catalogue catalogue, boolean misses) {
    List<String> lines = new ArrayList<>();
    lines.add(BEGIN);
    lines.add(counts(catalogue.rows()));
    lines.add("");
    lines.add(
        "| check | rows met | their error: median, largest |"
            + (misses ? " against | not met |" : ""));
    lines.add("| --- | --- | --- |" + (misses ? " --- | --- |" : ""));
    for (Map.Entry<String, CitedRow> folder : ReferenceTables.folders().entrySet()) {
      List<Catalogue.Row> rows =
          catalogue.rows().stream().filter(r -> r.folder().equals(folder.getKey())).toList();
      if (!rows.isEmpty()) {
        lines.add(line(folder.getValue(), rows, misses));
      }
    }
    if (misses) {
      lines.add("");
      lines.add(
          "Errors are relative to the reference (to a natural scale where that is zero); limit: not"
              + " met for a reason that is written down");
      lines.add("with the row, orients: the reference is good for orientation only.");
    }
    lines.add(END);
    return String.join("\n", lines);
  }

  private static String counts(List<Catalogue.Row> rows) {
    StringBuilder text = new StringBuilder();
    text.append(rows.size()).append(" rows: ").append(count(rows, CheckRow.Verdict.PASS));
    text.append(" met, ").append(count(rows, CheckRow.Verdict.KNOWN_LIMIT));
    text.append(" known limits, ").append(count(rows, CheckRow.Verdict.ORIENTATION));
    text.append(" off but only orient, ").append(count(rows, CheckRow.Verdict.FAIL));
    text.append(" failed. Our bands hold the reference, of the rows that have one: ");
    List<String> parts = new ArrayList<>();
    for (FlowClass flow : FlowClass.values()) {
      List<Catalogue.Row> telling =
          rows.stream().filter(r -> r.flow().equals(flow.key()) && !r.band().isEmpty()).toList();
      long holds = telling.stream().filter(r -> r.band().equals("holds")).count();
      if (!telling.isEmpty()) {
        parts.add(flow.key() + " " + holds + " of " + telling.size());
      }
    }
    return text.append(String.join(", ", parts)).append('.').toString();
  }

  private static long count(List<Catalogue.Row> rows, CheckRow.Verdict verdict) {
    return rows.stream().filter(r -> r.verdict().equals(verdict.key())).count();
  }

  private static String line(CitedRow folder, List<Catalogue.Row> rows, boolean misses) {
    List<Catalogue.Row> met =
        rows.stream().filter(r -> r.verdict().equals(CheckRow.Verdict.PASS.key())).toList();
    double[] errors =
        met.stream()
            .filter(r -> r.comparison().equals("within") && !r.error().isEmpty())
            .mapToDouble(r -> Math.abs(Double.parseDouble(r.error())))
            .sorted()
            .toArray();
    String missed =
        rows.stream()
            .filter(r -> !r.verdict().equals(CheckRow.Verdict.PASS.key()))
            .map(TrustBlock::miss)
            .collect(Collectors.joining("; "));
    return "| "
        + String.join(
            " | ",
            folder.text("title"),
            met.size() + " of " + rows.size(),
            errors.length == 0
                ? ""
                : percent(errors[errors.length / 2]) + ", " + percent(errors[errors.length - 1]))
        + (misses ? " | " + folder.text("against") + " | " + missed + " |" : " |");
  }

  private static String miss(Catalogue.Row row) {
    String name = row.name().substring(row.name().indexOf('/') + 1);
    String error =
        row.error().isEmpty()
            ? row.computed()
            : (Double.parseDouble(row.error()) > 0 ? "+" : "\u2212")
                + percent(Math.abs(Double.parseDouble(row.error())));
    String what =
        row.verdict().equals(CheckRow.Verdict.KNOWN_LIMIT.key())
            ? "limit"
            : row.verdict().equals(CheckRow.Verdict.ORIENTATION.key()) ? "orients" : "failed";
    return name + ", " + row.quantity() + " " + error + " (" + what + ")";
  }

  private static String percent(double share) {
    double percent = 100 * share;
    return String.format(Locale.ROOT, percent < 9.95 ? "%.1f" : "%.0f", percent) + " %";
  }
}
