package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.solver.rig.PlannedPoint;
import java.util.List;

/** JSON document of a plan for a test: schema {@code hemline.testplan/1}. */
public final class PlanDocument {
  private PlanDocument() {}

  /**
   * The document as text.
   *
   * @param repeats readings of each lip at each point
   * @param scatter of single readings as a share
   * @param seconds wall time
   */
  public static String text(
      String lip,
      String other,
      List<PlannedPoint> points,
      int repeats,
      double scatter,
      double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.testplan/1");
    document.put("lip", lip);
    document.put("against", other);
    document.put("repeats", repeats);
    JsonText.number(document, "scatter", scatter);
    ArrayNode nodes = document.putArray("points");
    for (PlannedPoint p : points) {
      ObjectNode node = nodes.addObject();
      JsonText.number(node, "gap", p.gap());
      JsonText.number(node, "suction", p.suction());
      node.set("leakRatio", JsonText.estimate(p.predicted(), "1"));
      JsonText.number(node, "measuredUncertainty", p.uncertainty());
      node.put("tells", p.tells().key());
      node.put("repeatsNeeded", p.repeats());
    }
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }
}
