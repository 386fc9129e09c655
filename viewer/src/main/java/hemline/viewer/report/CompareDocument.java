package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.rig.Rig;
import hemline.solver.rig.ComparedPoint;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.DecayLeak;
import hemline.solver.rig.Diagnosis;
import hemline.solver.rig.FaultFit;
import hemline.viewer.format.NoticeWords;
import org.jspecify.annotations.Nullable;

/** JSON document of a measurement beside its prediction: schema {@code hemline.comparison/1}. */
public final class CompareDocument {
  private CompareDocument() {}

  /**
   * The document as text.
   *
   * @param lip name
   * @param learnt calibration that the comparison teaches; null for none
   * @param seconds wall time
   */
  public static String text(
      String lip, Rig rig, Comparison comparison, @Nullable Calibration learnt, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.comparison/1");
    document.put("lip", lip);
    document.put("rig", rig.name());
    document.put("invented", rig.invented());
    document.put("verdict", comparison.mean().verdict().key());
    JsonText.number(document, "matters", comparison.finer().matters());
    JsonText.number(document, "meanRelativeError", comparison.mean().error());
    JsonText.number(document, "meanUncertainty", comparison.mean().uncertainty());
    JsonText.number(document, "chiSquare", comparison.mean().chiSquare());
    JsonText.number(document, "scatter", comparison.scatter());
    ArrayNode points = document.putArray("points");
    comparison.points().forEach(p -> points.add(point(p)));
    ArrayNode deciders = document.putArray("deciders");
    for (Comparison.Decider d : comparison.finer().decisive()) {
      ObjectNode node = deciders.addObject();
      node.put("source", d.source().key());
      JsonText.number(node, "share", d.share());
      JsonText.number(node, "timesBetter", d.better());
    }
    JsonText.number(document, "monteCarloDifference", comparison.drawn());
    document.set("diagnosis", diagnosis(comparison.diagnosis()));
    document.put("relative", comparison.relative());
    ArrayNode decays = document.putArray("decays");
    for (DecayLeak d : comparison.decays()) {
      ObjectNode one = decays.addObject();
      JsonText.number(one, "gap", d.gap());
      JsonText.number(one, "effectiveArea", d.area());
      JsonText.number(one, "effectiveAreaUncertainty", d.uncertainty());
    }
    document.set("calibration", learnt == null ? null : calibration(learnt));
    ArrayNode notices = document.putArray("notices");
    rig.notices()
        .forEach(n -> notices.addObject().put("code", n.code()).put("text", NoticeWords.of(n)));
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  private static ObjectNode calibration(Calibration c) {
    ObjectNode node = JsonText.NODES.objectNode();
    JsonText.number(node, "factor", c.line().factor());
    JsonText.number(node, "factorStandardUncertainty", c.line().factorUncertainty());
    JsonText.number(node, "offset", c.line().offset());
    JsonText.number(node, "offsetStandardUncertainty", c.line().offsetUncertainty());
    JsonText.number(node, "correlation", c.line().correlation());
    JsonText.number(node, "rest", c.line().rest());
    return node;
  }

  private static ObjectNode diagnosis(Diagnosis d) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("finding", d.finding().key());
    ArrayNode named = node.putArray("named");
    for (FaultFit fit : d.named()) {
      ObjectNode one = named.addObject();
      one.put("fault", fit.fault().key());
      JsonText.number(one, "size", fit.size());
      JsonText.number(one, "sizeUncertainty", fit.uncertainty());
      one.put("unit", fit.fault().unit());
    }
    ArrayNode alike = node.putArray("alike");
    d.alike().forEach(fit -> alike.add(fit.fault().key()));
    node.put("leftOver", d.leftOver());
    JsonText.number(node, "chiSquareWithout", d.chiSquareWithout());
    JsonText.number(node, "likelihoodWithout", d.weightWithout());
    ArrayNode fits = node.putArray("faults");
    for (FaultFit fit : d.fits()) {
      ObjectNode one = fits.addObject();
      one.put("fault", fit.fault().key());
      JsonText.number(one, "size", fit.size());
      JsonText.number(one, "sizeUncertainty", fit.uncertainty());
      one.put("unit", fit.fault().unit());
      JsonText.number(one, "chiSquare", fit.chiSquare());
      JsonText.number(one, "likelihood", fit.weight());
    }
    return node;
  }

  private static ObjectNode point(ComparedPoint p) {
    ObjectNode node = JsonText.NODES.objectNode();
    JsonText.number(node, "gap", p.gap());
    JsonText.number(node, "suction", p.suction());
    node.put("readings", p.readings());
    JsonText.number(node, "measured", p.measured().value());
    JsonText.number(node, "measuredUncertainty", p.measured().halfWidth());
    Estimate predicted = p.predicted();
    if (predicted == null) {
      node.putNull("predicted");
    } else {
      node.set("predicted", JsonText.estimate(predicted, "1"));
    }
    JsonText.number(node, "error", p.error().value());
    JsonText.number(node, "errorUncertainty", p.error().halfWidth());
    node.put("verdict", p.verdict().key());
    node.put("largestSource", p.largest().key());
    return node;
  }
}
