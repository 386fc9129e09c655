package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Estimate;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckSummary;
import hemline.validation.run.Measured;
import java.util.List;

/** JSON document of a check: schema {@code hemline.check/1}. */
public final class CheckDocument {
  private CheckDocument() {}

  /**
   * The document as text.
   *
   * @param complete false when the check was stopped before its end
   * @param seconds wall time of the check
   */
  public static String text(List<CaseResult> results, boolean complete, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.check/1");
    document.put("complete", complete);
    ArrayNode rows = document.putArray("rows");
    for (CaseResult result : results) {
      result.rows().forEach(row -> rows.add(row(result, row)));
    }
    CheckSummary summary = CheckSummary.of(results);
    ObjectNode counts = document.putObject("summary");
    counts.put("rows", summary.rows());
    counts.put("passed", summary.passed());
    counts.put("knownLimits", summary.knownLimits());
    counts.put("orientation", summary.orientation());
    counts.put("failed", summary.failed());
    ObjectNode coverage = counts.putObject("coverage");
    for (CheckSummary.Coverage one : summary.coverage()) {
      ObjectNode flow = coverage.putObject(one.flow().key());
      flow.put("bands", one.bands());
      flow.put("bandsThatHoldTheReference", one.covered());
    }
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  private static ObjectNode row(CaseResult result, CheckRow row) {
    ExpectedFigure expected = row.expected();
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("case", row.caseName());
    node.put("title", result.one().purpose().title());
    node.put("class", result.one().flow().key());
    node.put("quantity", expected.quantity());
    Estimate computed = row.computed();
    Measured measured = row.measured();
    if (computed == null || measured == null) {
      node.putNull("computed");
    } else {
      node.set("computed", JsonText.estimate(computed, measured.unit()));
    }
    JsonText.number(node, "reference", expected.reference().value());
    JsonText.number(node, "referenceUncertainty", expected.reference().uncertainty());
    JsonText.number(node, "tolerance", expected.tolerance().largest());
    node.put("comparison", expected.tolerance().comparison().key());
    JsonText.number(node, "scale", expected.tolerance().scale());
    node.put("toleranceReason", expected.tolerance().reason());
    node.put("source", expected.evidence().source());
    node.put("provenance", expected.evidence().provenance());
    node.put("grade", expected.evidence().grade().name());
    node.put("pass", row.pass());
    node.put("verdict", row.verdict().key().toLowerCase(java.util.Locale.ROOT));
    JsonText.number(node, "comparisonError", row.comparisonError().orElse(Double.NaN));
    JsonText.number(node, "relativeError", row.relativeError().orElse(Double.NaN));
    JsonText.number(node, "validationUncertainty", row.validationUncertainty().orElse(Double.NaN));
    if (row.calibrates()) {
      node.put("bandHoldsReference", row.insideBand());
    } else {
      node.putNull("bandHoldsReference");
    }
    if (expected.knownLimit() != null) {
      node.put("knownLimit", row.reason());
      node.put("limitError", expected.knownLimit().error());
    }
    node.put("status", row.status().key());
    node.put("closure", result.closure());
    ArrayNode grids = node.putArray("grids");
    for (Measured.GridPoint point : row.grids()) {
      ObjectNode grid = grids.addObject();
      grid.put("cells", point.cells());
      JsonText.number(grid, "value", point.value());
    }
    return node;
  }
}
