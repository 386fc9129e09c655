package hemline.viewer.report;

import hemline.validation.reference.ExpectedFigure;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.Measured;
import java.util.List;

/** Rows of a check as a table. */
public final class CheckCsv {
  private CheckCsv() {}

  /** The whole file. */
  public static String of(List<CaseResult> results) {
    CsvText out =
        new CsvText(
            "case,class,quantity,unit,computed,low,high,reference,referenceUncertainty,tolerance,"
                + "comparison,comparisonError,relativeError,validationUncertainty,"
                + "bandHoldsReference,verdict,grade,source,provenance,toleranceReason,knownLimit");
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        ExpectedFigure e = row.expected();
        Measured measured = row.measured();
        out.row(
            row.caseName(),
            result.one().flow().key(),
            e.quantity(),
            measured == null ? null : measured.unit(),
            CsvText.band(row.computed()),
            e.reference().value(),
            e.reference().uncertainty(),
            e.tolerance().largest(),
            e.tolerance().comparison().key(),
            row.comparisonError(),
            row.relativeError(),
            row.validationUncertainty(),
            row.calibrates() ? row.insideBand() : null,
            row.verdict().key(),
            e.evidence().grade().name(),
            e.evidence().source(),
            e.evidence().provenance(),
            e.tolerance().reason(),
            row.reason());
      }
    }
    return out.toString();
  }
}
