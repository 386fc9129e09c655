package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.solver.study.SweepResult;

/** JSON document of a sweep: schema {@code hemline.sweep/1}. */
public final class SweepDocument {
  private SweepDocument() {}

  /**
   * The document as text.
   *
   * @param complete false when the sweep was stopped before its end
   * @param seconds wall time of the sweep
   */
  public static String text(SweepResult sweep, boolean complete, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.sweep/1");
    document.put("complete", complete);
    ArrayNode points = document.putArray("points");
    sweep.points().forEach(point -> points.add(ResultDocument.node(point, false)));
    if (sweep.gapExponent() == null) {
      document.putNull("gapExponent");
    } else {
      document.set("gapExponent", JsonText.estimate(sweep.gapExponent(), "1"));
    }
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }
}
