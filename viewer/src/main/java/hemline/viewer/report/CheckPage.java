package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckRow.Verdict;
import hemline.validation.run.CheckSummary;
import hemline.validation.run.ProfileCurve;
import hemline.viewer.format.CheckWords;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.CheckPlot;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.TrustChart;
import java.util.List;
import java.util.stream.Collectors;

/** A check as one page of HTML with its plots inside; it needs no other file. */
public final class CheckPage {
  private static final String STYLE =
      """
      body { font-family: "DejaVu Sans", Verdana, sans-serif; color: #1d2433; background: #fff;
        max-width: 920px; margin: 2em auto; padding: 0 1em; line-height: 1.45; font-size: 15px; }
      h1 { font-size: 1.7em; margin-bottom: .2em; } h2 { font-size: 1.25em; margin-top: 2em;
        border-bottom: 1px solid #d5d8de; padding-bottom: .2em; }
      h3 { font-size: 1.05em; margin: 1.8em 0 .2em; }
      table { border-collapse: collapse; font-size: 13px; margin: .6em 0; width: 100%; }
      th { text-align: left; font-weight: bold; border-bottom: 1px solid #888e9c; }
      td, th { padding: .25em .6em .25em 0; vertical-align: top; }
      td.n, th.n { text-align: right; white-space: nowrap; }
      tr + tr td { border-top: 1px solid #eceef1; }
      .off { color: #b8431f; font-weight: bold; } .quiet { color: #666e7d; font-size: 13px; }
      .plots { display: flex; flex-wrap: wrap; gap: 8px 16px; } svg { max-width: 100%; height: auto; }
      @media print { body { margin: 0; } h3 { break-after: avoid; } }
      """;

  private final StringBuilder out = new StringBuilder();

  private CheckPage() {}

  /** The page as text; the same results give the same text. */
  public static String of(List<CaseResult> results) {
    return new CheckPage().page(results);
  }

  private String page(List<CaseResult> results) {
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.append("<title>Hemline against known answers</title>\n<style>\n").append(STYLE);
    out.append("</style>\n</head>\n<body>\n<h1>Hemline against known answers</h1>\n");
    paragraph(CheckWords.counts(CheckSummary.of(results)));
    trust(results);
    misses(results);
    out.append("<h2>Case by case</h2>\n");
    out.append(
        "<p class=\"quiet\">E: computed minus reference. u<sub>val</sub>: half our band and the"
            + " uncertainty of the reference together (square root of the sum of squares, after"
            + " ASME V&amp;V 20-2009, from memory); an error below it is no evidence against the"
            + " method. All as share of the reference, or of a natural scale where the reference"
            + " is zero. Grade: A narrow, B wide tolerance, C orientation only.</p>\n");
    results.forEach(this::oneCase);
    out.append("</body>\n</html>\n");
    return out.toString();
  }

  private void trust(List<CaseResult> results) {
    out.append("<h2>How far to trust it</h2>\n");
    figure(TrustChart.of(results), "true errors over the stated bands, and conditions covered");
    out.append("<table>\n<tr><th>what the cases stand for</th><th class=\"n\">cases</th>");
    out.append("<th class=\"n\">rows met</th><th class=\"n\">largest error</th>");
    out.append("<th class=\"n\">gap Reynolds number</th>");
    out.append("<th class=\"n\">ground over mean speed</th></tr>\n");
    for (TrustTable.Part part : TrustTable.of(results).parts()) {
      out.append("<tr><td>").append(escaped(part.covers())).append("</td>");
      number(String.valueOf(part.cases()));
      number(part.passed() + " of " + part.rows());
      number(part.largestError() == 0 ? "" : Digits.plain(100 * part.largestError(), 2) + " %");
      number(range(part.reynoldsLow(), part.reynoldsHigh()));
      number(range(part.groundLow(), part.groundHigh()));
      out.append("</tr>\n");
    }
    out.append("</table>\n");
    out.append(
        "<p>Largest error: of the rows with a band, as share of the reference, or of a"
            + " natural scale where that is zero.</p>\n<p><b>Not covered by any case here:</b> ");
    List<Integer> empty = TrustTable.emptyDecades(results);
    if (!empty.isEmpty()) {
      out.append("gap Reynolds numbers ")
          .append(
              empty.stream()
                  .map(k -> decade(k) + " to " + decade(k + 1))
                  .collect(Collectors.joining(", ")))
          .append("; ");
    }
    out.append(
        "ends and corners of a skirt (the section is plane), lips that bend, rough ground, flows"
            + " that never settle, and jets fast enough for the air to expand (the result then says"
            + " so). Nearest neighbours in the charts tell how far a question lies from what was"
            + " checked.</p>\n");
  }

  private static String decade(int k) {
    return k < 0 ? Digits.fixed(Math.pow(10, k), -k) : Digits.fixed(Math.pow(10, k), 0);
  }

  private static String range(double low, double high) {
    if (Double.isNaN(low)) {
      return "";
    }
    String a = Digits.plain(low, 2);
    String b = Digits.plain(high, 2);
    return a.equals(b) ? a : a + " to " + b;
  }

  private void misses(List<CaseResult> results) {
    List<CheckRow> rows =
        results.stream()
            .flatMap(r -> r.rows().stream())
            .filter(r -> r.verdict() == Verdict.KNOWN_LIMIT || r.verdict() == Verdict.FAIL)
            .toList();
    if (rows.isEmpty()) {
      return;
    }
    out.append("<h2>Not met</h2>\n<ul>\n");
    for (CheckRow row : rows) {
      out.append("<li><b>").append(escaped(row.caseName())).append(", ");
      out.append(escaped(row.expected().quantity())).append("</b> (");
      out.append(row.verdict().key()).append("): E ").append(CheckWords.error(row));
      String why = row.reason();
      out.append(why.isEmpty() ? ", and no reason is known" : ". " + escaped(why))
          .append("</li>\n");
    }
    out.append("</ul>\n");
  }

  private void oneCase(CaseResult result) {
    out.append("<h3 id=\"").append(escaped(result.one().name())).append("\">");
    out.append(escaped(result.one().title())).append("</h3>\n");
    out.append("<p>").append(escaped(result.one().proves())).append(" <span class=\"quiet\">");
    out.append(escaped(result.one().name()));
    out.append(result.closure().isEmpty() ? "" : ", flow model " + escaped(result.closure()));
    out.append("</span></p>\n<table>\n<tr><th>quantity</th><th class=\"n\">computed</th>");
    out.append("<th class=\"n\">reference</th><th class=\"n\">E</th>");
    out.append("<th class=\"n\">u<sub>val</sub></th><th class=\"n\">allowed</th>");
    out.append("<th>grade</th><th></th></tr>\n");
    result.rows().forEach(this::row);
    out.append("</table>\n<div class=\"plots\">\n");
    for (ProfileCurve curve : result.profiles()) {
      if (!curve.computed().isEmpty()) {
        figure(CheckPlot.profile(curve), curve.reference().line());
      }
    }
    if (CheckPlot.hasErrors(result)) {
      figure(CheckPlot.errors(result), "distance to the reference by grid");
    }
    out.append("</div>\n");
    result.rows().stream()
        .map(CheckPage::origin)
        .distinct()
        .forEach(line -> out.append("<p class=\"quiet\">").append(line).append("</p>\n"));
  }

  private static String origin(CheckRow row) {
    return escaped(row.source())
        + " <i>("
        + escaped(row.expected().evidence().provenance())
        + ")</i> Tolerance: "
        + escaped(row.expected().reason());
  }

  private void row(CheckRow row) {
    Estimate computed = row.computed();
    out.append("<tr><td>").append(escaped(row.expected().quantity()));
    String unit = row.measured() == null ? "1" : row.measured().unit();
    out.append(unit.equals("1") ? "" : ", " + escaped(unit.replace("m2", "m\u00b2")));
    out.append("</td>");
    number(computed == null ? row.status().key() : CheckWords.value(computed));
    number(CheckWords.number(row.expected().reference()));
    number(CheckWords.error(row));
    number(CheckWords.uncertainty(row));
    number(CheckWords.tolerance(row.expected()));
    out.append("<td>").append(row.expected().evidence().grade()).append("</td><td");
    out.append(row.verdict() == Verdict.PASS ? "" : " class=\"off\"").append('>');
    out.append(row.verdict().key());
    out.append(row.calibrates() && !row.insideBand() ? ", outside our band" : "");
    out.append("</td></tr>\n");
  }

  private void number(String text) {
    out.append("<td class=\"n\">").append(escaped(text)).append("</td>");
  }

  private void paragraph(String text) {
    out.append("<p>").append(escaped(text)).append("</p>\n");
  }

  /** A picture without its file header, named for those who cannot see it. */
  private void figure(Picture picture, String name) {
    String svg = picture.svg();
    int start = svg.indexOf("<svg");
    out.append("<svg role=\"img\" aria-label=\"").append(escaped(name)).append('"');
    out.append(svg, start + "<svg".length(), svg.length());
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
