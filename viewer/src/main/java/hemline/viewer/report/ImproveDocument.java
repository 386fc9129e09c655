package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.section.SealSection;
import hemline.solver.improve.Evaluation;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.NamedLength;
import hemline.solver.study.Ranking;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** JSON document of a search for a better lip: schema {@code hemline.improvement/1}. */
public final class ImproveDocument {
  private ImproveDocument() {}

  /**
   * The document as text.
   *
   * @param conditions of all sections; its profile and gap do not count
   * @param seconds wall time
   */
  public static String text(Improvement found, SealSection conditions, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.improvement/1");
    document.put("start", found.start().name());
    document.put("proven", found.proven());
    Improvement.Found best = found.best();
    document.put("best", best == null ? null : best.profile().name());
    JsonText.number(document, "suction", conditions.suction());
    JsonText.number(document, "groundSpeed", conditions.ground().speed());
    JsonText.number(document, "spanwiseSpeed", conditions.ground().spanwiseSpeed());
    ArrayNode gaps = document.putArray("gaps");
    if (found.toStart() != null) {
      Ranking proof = found.toStart().ranking();
      for (int g = 0; g < proof.gaps().size(); g++) {
        ObjectNode gap = gaps.addObject();
        JsonText.number(gap, "gap", proof.gaps().get(g));
        JsonText.number(gap, "weight", proof.ground().weights().get(g));
      }
    }
    ArrayNode lengths = document.putArray("lengths");
    for (NamedLength l : found.lengths()) {
      ObjectNode length = lengths.addObject();
      length.put("name", l.name());
      JsonText.number(length, "low", l.low());
      JsonText.number(length, "high", l.high());
    }
    ArrayNode lips = document.putArray("lips");
    List<String> files =
        ResultFolder.fileNames(found.lips().stream().map(l -> l.profile().name()).toList());
    for (int k = 0; k < found.lips().size(); k++) {
      lips.add(lip(found, found.lips().get(k), files.get(k) + ".json"));
    }
    ArrayNode history = document.putArray("history");
    found.history().forEach(e -> history.add(evaluation(e)));
    document.put("refusal", found.refusal());
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  private static ObjectNode lip(Improvement found, Improvement.Found lip, String file) {
    ObjectNode node = JsonText.NODES.objectNode();
    String name = lip.profile().name();
    node.put("profile", name);
    node.put("file", file);
    node.put("evaluation", lip.evaluation().number());
    ratio(node, "relativeLeak", Improvement.row(found.toStart(), name));
    ratio(node, "relativeToFlat", Improvement.row(found.toFlat(), name));
    Ranking.Row row = Improvement.row(found.toStart(), name);
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
    return node;
  }

  private static void ratio(ObjectNode node, String key, Ranking.@Nullable Row row) {
    node.set(key, row == null ? null : JsonText.estimate(row.relativeLeak(), "1"));
  }

  private static ObjectNode evaluation(Evaluation e) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("number", e.number());
    ArrayNode lengths = node.putArray("lengths");
    e.lengths().forEach(lengths::add);
    JsonText.number(node, "relativeLeak", e.score());
    node.put("doubt", e.doubt());
    return node;
  }
}
