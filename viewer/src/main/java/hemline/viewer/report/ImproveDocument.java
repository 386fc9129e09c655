package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Estimate;
import hemline.solver.improve.DownforceGoal;
import hemline.solver.improve.Evaluation;
import hemline.solver.improve.Goal;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.LeakGoal;
import hemline.solver.improve.NamedLength;
import hemline.solver.plenum.RankedLip;
import hemline.solver.study.Ranking;
import hemline.viewer.format.NoticeWords;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** JSON document of a search for a better lip: schema {@code hemline.improvement/1}. */
public final class ImproveDocument {
  private ImproveDocument() {}

  /**
   * The document as text.
   *
   * @param seconds wall time
   */
  public static String text(Improvement found, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.improvement/1");
    document.put("start", found.asked().start().name());
    document.put("proven", found.proven());
    Improvement.Found best = found.best();
    document.put("best", best == null ? null : best.profile().name());
    goal(document, found.asked().goal());
    ArrayNode lengths = document.putArray("lengths");
    for (NamedLength l : found.asked().space().lengths()) {
      ObjectNode length = lengths.addObject();
      length.put("name", l.name());
      JsonText.number(length, "low", l.low());
      JsonText.number(length, "high", l.high());
    }
    ArrayNode lips = document.putArray("lips");
    List<String> files =
        ResultFolder.fileNames(found.proof().lips().stream().map(l -> l.profile().name()).toList());
    for (int k = 0; k < found.proof().lips().size(); k++) {
      lips.add(lip(found, found.proof().lips().get(k), files.get(k) + ".json"));
    }
    ArrayNode history = document.putArray("history");
    found.history().forEach(e -> history.add(evaluation(e)));
    document.put("refusal", found.refusal());
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  private static void goal(ObjectNode document, Goal goal) {
    ArrayNode gaps = JsonText.NODES.arrayNode();
    ArrayNode speeds = JsonText.NODES.arrayNode();
    if (goal instanceof LeakGoal leak) {
      document.put("goal", "leak");
      document.putNull("machine");
      JsonText.number(document, "suction", leak.conditions().suction());
      JsonText.number(document, "spanwiseSpeed", leak.conditions().ground().spanwiseSpeed());
      weighted(gaps, "gap", leak.ground().gaps(), leak.ground().weights());
      weighted(speeds, "groundSpeed", leak.speeds().speeds(), leak.speeds().weights());
    } else if (goal instanceof DownforceGoal downforce) {
      document.put("goal", "downforce");
      document.put("machine", downforce.machine().description().name());
      document.putNull("suction");
      document.putNull("spanwiseSpeed");
    }
    document.set("gaps", gaps);
    document.set("groundSpeeds", speeds);
  }

  private static void weighted(
      ArrayNode to, String key, List<Double> values, List<Double> weights) {
    for (int k = 0; k < values.size(); k++) {
      ObjectNode one = to.addObject();
      JsonText.number(one, key, values.get(k));
      JsonText.number(one, "weight", weights.get(k));
    }
  }

  private static ObjectNode lip(Improvement found, Improvement.Found lip, String file) {
    ObjectNode node = JsonText.NODES.objectNode();
    String name = lip.profile().name();
    node.put("profile", name);
    node.put("file", file);
    node.put("evaluation", lip.evaluation().number());
    ratio(node, "relativeLeak", Improvement.row(found.proof().toStart(), name));
    ratio(node, "relativeToFlat", Improvement.row(found.proof().toFlat(), name));
    Ranking.Row row = Improvement.row(found.proof().toStart(), name);
    node.put("group", row == null ? null : row.placement().group().key());
    JsonText.number(
        node, "probabilityLess", row == null ? Double.NaN : row.placement().probabilityLess());
    ArrayNode perGap = node.putArray("perGap");
    if (row != null) {
      for (Ranking.GapRatio ratio : row.perGap()) {
        ObjectNode one = perGap.addObject();
        JsonText.number(one, "gap", ratio.gap());
        one.set("relativeLeak", JsonText.estimate(ratio.relativeLeak(), "1"));
      }
    }
    RankedLip force = found.ranked(name);
    estimate(node, "relativeDownforce", force == null ? null : force.relative(), "1");
    estimate(node, "downforce", force == null ? null : force.trade().downforce(), "N");
    return node;
  }

  private static void ratio(ObjectNode node, String key, Ranking.@Nullable Row row) {
    estimate(node, key, row == null ? null : row.relativeLeak(), "1");
  }

  private static void estimate(
      ObjectNode node, String key, @Nullable Estimate estimate, String unit) {
    node.set(key, estimate == null ? null : JsonText.estimate(estimate, unit));
  }

  private static ObjectNode evaluation(Evaluation e) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("number", e.number());
    ArrayNode lengths = node.putArray("lengths");
    e.lengths().forEach(lengths::add);
    JsonText.number(node, "score", e.score());
    node.put("doubt", NoticeWords.of(e.doubt()));
    return node;
  }
}
