package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.Measured;
import java.util.List;

/** Rows of a check as comma-separated values, SI, one row a line (RFC 4180). */
public final class CheckCsv {
  private static final String END = "\r\n";

  private CheckCsv() {}

  /** The whole file. */
  public static String of(List<CaseResult> results) {
    StringBuilder out = new StringBuilder();
    out.append(
            "case,class,quantity,unit,computed,low,high,reference,referenceUncertainty,tolerance,")
        .append(
            "comparison,comparisonError,relativeError,validationUncertainty,bandHoldsReference,verdict,")
        .append("grade,source,provenance,toleranceReason,knownLimit")
        .append(END);
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        out.append(line(result.one().flow().key(), row)).append(END);
      }
    }
    return out.toString();
  }

  private static String line(String flow, CheckRow row) {
    ExpectedFigure e = row.expected();
    Measured measured = row.measured();
    Estimate computed = row.computed();
    return String.join(
        ",",
        CsvText.cell(row.caseName()),
        flow,
        CsvText.cell(e.quantity()),
        measured == null ? "" : measured.unit(),
        computed == null ? "" : Double.toString(computed.value()),
        computed == null ? "" : Double.toString(Math.min(computed.low(), computed.value())),
        computed == null ? "" : Double.toString(Math.max(computed.high(), computed.value())),
        Double.toString(e.reference()),
        Double.toString(e.referenceUncertainty()),
        Double.toString(e.tolerance()),
        e.comparison().key(),
        number(row.comparisonError()),
        number(row.relativeError()),
        number(row.validationUncertainty()),
        row.calibrates() ? Boolean.toString(row.insideBand()) : "",
        row.verdict().key(),
        e.evidence().grade().name(),
        CsvText.cell(e.evidence().source()),
        CsvText.cell(e.evidence().provenance()),
        CsvText.cell(e.reason()),
        CsvText.cell(row.reason()));
  }

  private static String number(java.util.OptionalDouble value) {
    return value.isPresent() ? Double.toString(value.getAsDouble()) : "";
  }
}
