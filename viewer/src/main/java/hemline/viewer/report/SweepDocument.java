package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Estimate;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import org.jspecify.annotations.Nullable;

/** JSON document of a sweep: schema {@code hemline.sweep/1}. */
public final class SweepDocument {
  private SweepDocument() {}

  /**
   * The document as text.
   *
   * @param relative the same against a baseline, whose points tell the relative leak too; null for
   *     none
   * @param complete false when the sweep was stopped before its end
   * @param seconds wall time of the sweep
   */
  public static String text(
      SweepResult sweep, @Nullable RelativeSweep relative, boolean complete, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.sweep/1");
    document.put("complete", complete);
    ArrayNode points = document.putArray("points");
    for (int k = 0; k < sweep.points().size(); k++) {
      ObjectNode point = ResultDocument.node(sweep.points().get(k), false);
      Estimate ratio = relative == null ? null : relative.relativeLeak().get(k);
      if (ratio != null && point.get("figures") instanceof ObjectNode figures) {
        figures.set("relativeLeak", JsonText.estimate(ratio, "1"));
      }
      points.add(point);
    }
    if (relative != null) {
      document.put("baseline", relative.baseline().points().get(0).name());
    }
    if (sweep.gapExponent() == null) {
      document.putNull("gapExponent");
    } else {
      document.set("gapExponent", JsonText.estimate(sweep.gapExponent(), "1"));
    }
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }
}
