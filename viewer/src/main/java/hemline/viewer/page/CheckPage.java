package hemline.viewer.page;

import hemline.shared.result.Estimate;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckRow.Verdict;
import hemline.validation.run.CheckSummary;
import hemline.validation.run.ProfileCurve;
import hemline.viewer.format.CheckWords;
import hemline.viewer.format.Digits;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.CheckPlot;
import hemline.viewer.picture.TrustChart;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A check: counts, how far to trust the figures, what is not met and why, and case by case. */
public final class CheckPage {
  private final List<CaseResult> results;
  private final Page page = new Page("Computed against known answers");

  private CheckPage(List<CaseResult> results) {
    this.results = results;
  }

  /** Cases and what each proves for a seal. */
  public static PageTable list(List<ReferenceCase> cases) {
    PageTable table = PageTable.of("case", "", "what it proves").bare();
    cases.forEach(one -> table.row(one.name(), one.fast() ? "fast" : "", one.purpose().proves()));
    return table;
  }

  public static Page of(List<CaseResult> results) {
    CheckPage p = new CheckPage(results);
    p.page.plain(CheckWords.counts(CheckSummary.of(results))).details();
    p.trust();
    p.page.everywhere();
    p.misses();
    p.page.heading("Case by case");
    p.page.quiet(
        """
        E: computed minus reference; u_val: half our band and the uncertainty of the reference \
        together (square root of the sum of squares, after ASME V&V 20-2009, from memory); an \
        error below it is no evidence against the method. All as share of the reference, or of a \
        natural scale where that is zero. Grade: A narrow, B wide tolerance, C orientation only.\
        """);
    PageTable all = table();
    for (CaseResult result : results) {
      all.group(result.one().name());
      result.rows().forEach(row -> add(all, row));
    }
    p.page.table(all).details();
    results.forEach(p::oneCase);
    return p.page;
  }

  private void trust() {
    page.heading("How far to trust it");
    page.plot(
        () -> TrustChart.of(results), "true errors over the stated bands, and conditions covered");
    PageTable table =
        PageTable.of(
            "what the cases stand for",
            "cases",
            "rows met",
            "largest error",
            "gap Reynolds number",
            "ground over mean speed");
    for (TrustTable.Part part : TrustTable.of(results).parts()) {
      double error = part.largestError();
      table.row(
          part.covers(),
          String.valueOf(part.cases()),
          part.passed() + " of " + part.rows(),
          error == 0 ? "" : Digits.plain(100 * error, 2) + " %",
          range(part.reynolds().low(), part.reynolds().high()),
          range(part.ground().low(), part.ground().high()));
    }
    page.table(table);
    page.quiet(
        "Largest error: of the rows with a band, as share of the reference, or of a natural scale"
            + " where that is zero.");
    String empty =
        TrustTable.emptyDecades(results).stream()
            .map(k -> decade(k) + " to " + decade(k + 1))
            .collect(Collectors.joining(", "));
    page.plain(
        """
        Not covered by any case here: %sends and corners of a skirt (the section is plane), lips \
        that bend, rough ground, flows that never settle, and jets fast enough for the air to \
        expand (the result then says so). Nearest neighbours in the charts tell how far a question \
        lies from what was checked.\
        """
            .formatted(empty.isEmpty() ? "" : "gap Reynolds numbers " + empty + "; "));
  }

  private static String decade(int k) {
    return Digits.fixed(Math.pow(10, k), Math.max(0, -k));
  }

  private static String range(double low, double high) {
    if (Double.isNaN(low)) {
      return "";
    }
    String a = Digits.plain(low, 2);
    String b = Digits.plain(high, 2);
    return a.equals(b) ? a : a + " to " + b;
  }

  private void misses() {
    List<String> misses = new ArrayList<>();
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        if (row.verdict() == Verdict.KNOWN_LIMIT || row.verdict() == Verdict.FAIL) {
          String why = row.reason().isEmpty() ? "No reason is known." : row.reason();
          misses.add(
              "%s, %s (%s): E %s. %s"
                  .formatted(
                      row.caseName(),
                      row.expected().quantity(),
                      row.verdict().key(),
                      CheckWords.error(row),
                      why));
        }
      }
    }
    if (!misses.isEmpty()) {
      page.heading("Not met").texts(misses, Tone.NOTICE);
    }
  }

  private void oneCase(CaseResult result) {
    page.heading(result.one().purpose().title());
    page.plain(result.one().purpose().proves());
    String closure = result.closure();
    page.quiet(result.one().name() + (closure.isEmpty() ? "" : ", flow model " + closure));
    PageTable table = table();
    result.rows().forEach(row -> add(table, row));
    page.table(table);
    for (ProfileCurve curve : result.profiles()) {
      if (!curve.computed().isEmpty()) {
        page.plot(() -> CheckPlot.profile(curve), curve.reference().line());
      }
    }
    if (CheckPlot.hasErrors(result)) {
      page.plot(() -> CheckPlot.errors(result), "distance to the reference by grid");
    }
    result.rows().stream().map(CheckPage::origin).distinct().forEach(page::quiet);
  }

  private static String origin(CheckRow row) {
    return "%s (%s) Tolerance: %s"
        .formatted(
            row.source(),
            row.expected().evidence().provenance(),
            row.expected().tolerance().reason());
  }

  private static PageTable table() {
    return PageTable.of(
        "quantity", "computed", "reference", "E", "u_val", "allowed", "grade", "verdict");
  }

  private static void add(PageTable table, CheckRow row) {
    Estimate computed = row.computed();
    String unit = row.measured() == null ? "1" : row.measured().unit();
    table.row(
        List.of(
            row.expected().quantity()
                + (unit.equals("1") ? "" : ", " + unit.replace("m2", "m\u00b2")),
            computed == null ? "(" + row.status().key() + ")" : CheckWords.value(computed),
            CheckWords.number(row.expected().reference().value()),
            CheckWords.error(row),
            CheckWords.uncertainty(row),
            CheckWords.tolerance(row.expected()),
            row.expected().evidence().grade().name(),
            row.verdict().key() + (row.calibrates() && !row.insideBand() ? " (outside band)" : "")),
        row.verdict() != Verdict.PASS);
  }
}
