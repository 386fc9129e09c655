package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Cautions;
import java.util.List;

/** JSON document of a ranking: schema {@code hemline.ranking/1}. */
public final class RankingDocument {
  private RankingDocument() {}

  /**
   * The document as text.
   *
   * @param complete false when the ranking was stopped before its end
   * @param seconds wall time of the ranking
   */
  public static String text(Ranking ranking, boolean complete, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.ranking/1");
    document.put("complete", complete);
    document.put("baseline", ranking.baseline());
    JsonText.number(document, "suction", ranking.suction());
    ArrayNode gaps = document.putArray("gaps");
    ranking.gaps().forEach(gaps::add);
    ArrayNode weights = document.putArray("gapWeights");
    ranking.ground().weights().forEach(weights::add);
    ArrayNode rows = document.putArray("rows");
    ranking.rows().forEach(row -> rows.add(row(row)));
    crossings(document.putArray("crossings"), ranking.crossings());
    crossings(document.putArray("possibleCrossings"), ranking.possibleCrossings());
    document.set("warnings", ResultDocument.warnings(ranking.notices()));
    document.putArray("cautions").add(Cautions.SHORT);
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  private static ObjectNode row(Ranking.Row row) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("profile", row.profile());
    node.put("rank", row.rank());
    ArrayNode tied = node.putArray("tiedWith");
    row.tiedWith().forEach(tied::add);
    Placement placement = row.placement();
    node.put("group", placement.group().key());
    JsonText.number(node, "probabilityLess", placement.probabilityLess());
    node.put("decider", placement.decider().key());
    JsonText.number(node, "bestShare", row.bestShare());
    node.set("relativeLeak", JsonText.estimate(row.relativeLeak(), "1"));
    ArrayNode perGap = node.putArray("perGap");
    for (Ranking.GapRatio ratio : row.perGap()) {
      ObjectNode entry = perGap.addObject();
      JsonText.number(entry, "gap", ratio.gap());
      entry.set("relativeLeak", JsonText.estimate(ratio.relativeLeak(), "1"));
      for (SectionResult result : row.results()) {
        if (result.conditions().gap() == ratio.gap()) {
          addResult(entry, result);
        }
      }
    }
    return node;
  }

  private static void crossings(ArrayNode list, List<Ranking.Crossing> crossings) {
    for (Ranking.Crossing crossing : crossings) {
      ObjectNode node = list.addObject();
      node.putArray("profiles").add(crossing.first()).add(crossing.second());
      JsonText.number(node, "gap", crossing.gap());
    }
  }

  private static void addResult(ObjectNode entry, SectionResult result) {
    entry.put("status", result.status().key());
    entry.put("regime", result.regime().key());
    entry.put("closure", result.closure());
    for (Figure figure : new Figure[] {Figure.LEAK_FLOW, Figure.DISCHARGE_COEFFICIENT}) {
      Estimate estimate = result.figures().get(figure);
      if (estimate != null) {
        entry.set(figure.key(), JsonText.estimate(estimate, figure.unit()));
      }
    }
    entry.set("warnings", ResultDocument.warnings(result.notices()));
  }
}
