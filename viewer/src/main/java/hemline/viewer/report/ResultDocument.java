package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.solver.improve.CornerEffect;
import hemline.viewer.format.NoticeWords;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** JSON document of one section: schema {@code hemline.result/1}. */
public final class ResultDocument {
  private static final String PURE = "1";

  private ResultDocument() {}

  /**
   * The document as text.
   *
   * @param relativeLeak leak over that of the plain flat lip as wide as this one; null when not
   *     asked for or not to be had
   * @param duct true for a duct section
   * @param seconds wall time of the run
   */
  public static String text(
      SectionResult result, @Nullable Estimate relativeLeak, boolean duct, double seconds) {
    return text(result, relativeLeak, List.of(), duct, seconds);
  }

  /**
   * The same with what moving the corners of the lip does.
   *
   * @param effects empty where nobody asked
   */
  public static String text(
      SectionResult result,
      @Nullable Estimate relativeLeak,
      List<CornerEffect> effects,
      boolean duct,
      double seconds) {
    ObjectNode document = node(result, duct);
    if (relativeLeak != null) {
      ((ObjectNode) document.get("figures"))
          .set("relativeLeak", JsonText.estimate(relativeLeak, PURE));
    }
    if (!effects.isEmpty()) {
      ArrayNode corners = document.putArray("sensitivities");
      effects.forEach(e -> corners.add(effect(e)));
    }
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  /** Change of the leak in per cent for 0.1 mm. */
  private static ObjectNode effect(CornerEffect e) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("vertex", e.corner());
    JsonText.number(node, "x", e.x());
    JsonText.number(node, "y", e.y());
    Estimate dx = e.dx();
    Estimate dy = e.dy();
    node.set("dx", dx == null ? null : JsonText.estimate(dx.times(100), "%"));
    node.set("dy", dy == null ? null : JsonText.estimate(dy.times(100), "%"));
    node.put("onlyUpwards", e.lowest());
    return node;
  }

  static ObjectNode node(SectionResult result, boolean duct) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.result/1");
    ObjectNode section = document.putObject("section");
    section.put("kind", duct ? "duct" : "lip");
    section.put("profile", result.name());
    JsonText.number(section, "gap", result.conditions().gap());
    JsonText.number(section, "suction", result.conditions().suction());
    JsonText.number(section, "groundSpeed", result.conditions().groundSpeed());
    JsonText.number(section, "spanwiseSpeed", result.conditions().spanwiseSpeed());
    document.put("status", result.status().key());
    document.put("regime", result.regime().key());
    document.put("closure", result.closure());
    document.set("figures", figures(result));
    document.set("warnings", warnings(result.notices()));
    ArrayNode grids = document.putArray("grids");
    int iterations = 0;
    for (GridRun run : result.grids()) {
      grids.add(grid(run));
      iterations += run.iterations();
    }
    document.put("iterations", iterations);
    if (result.grids().isEmpty()) {
      document.putNull("massResidual");
    } else {
      GridRun finest = result.grids().get(result.grids().size() - 1);
      JsonText.number(document, "massResidual", finest.massResidual());
    }
    return document;
  }

  static ArrayNode warnings(List<Notice> notices) {
    ArrayNode warnings = JsonText.NODES.arrayNode();
    NoticeWords.of(notices).forEach(warnings::add);
    return warnings;
  }

  private static ObjectNode figures(SectionResult result) {
    ObjectNode figures = JsonText.NODES.objectNode();
    for (Figure figure : Figure.values()) {
      Estimate estimate = result.figures().get(figure);
      if (estimate != null) {
        figures.set(figure.key(), JsonText.estimate(estimate, figure.unit()));
      }
    }
    ArrayNode shares = figures.putArray("stageShares");
    result.figures().stageShares().forEach(share -> shares.add(JsonText.estimate(share, PURE)));
    ArrayNode carried = figures.putArray("carryOver");
    result.figures().carryOver().forEach(share -> carried.add(JsonText.estimate(share, PURE)));
    ArrayNode vortices = figures.putArray("trappedVortices");
    for (SectionFigures.TrappedVortex vortex : result.figures().trappedVortices()) {
      ObjectNode node = vortices.addObject();
      node.set("strength", JsonText.estimate(vortex.strength(), PURE));
      JsonText.number(node, "x", vortex.x());
      JsonText.number(node, "y", vortex.y());
    }
    return figures;
  }

  private static ObjectNode grid(GridRun run) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("cells", run.cells());
    node.put("iterations", run.iterations());
    node.put("status", run.status().key());
    node.put("attempt", run.termination().attempt().key());
    node.put("ending", run.termination().reason().key());
    if (run.termination().cycle() > 0) {
      node.put("passesPerCycle", run.termination().cycle());
    }
    JsonText.number(node, "massResidual", run.massResidual());
    JsonText.number(node, "momentumResidual", run.momentumResidual());
    JsonText.number(node, "leakSpread", run.leakSpread());
    ObjectNode figures = node.putObject("figures");
    for (Figure figure : Figure.values()) {
      Map<Figure, Double> scalars = run.figures().scalars();
      Double value = scalars.get(figure);
      if (value != null) {
        JsonText.number(figures, figure.key(), value);
      }
    }
    return node;
  }
}
