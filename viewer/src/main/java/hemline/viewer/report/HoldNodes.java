package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.HoldEnd;
import hemline.solver.plenum.HoldPoint;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.Manoeuvres;
import hemline.solver.plenum.Sensitivity;
import hemline.solver.plenum.StepCrossing;
import hemline.solver.plenum.SurfaceGrip;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.page.SensitivityBlocks;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The hold of a machine in its JSON document. */
final class HoldNodes {
  private static final String PURE = "1";

  private HoldNodes() {}

  static ObjectNode hold(Hold h) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("case", h.place().name());
    JsonText.number(node, "angle", h.place().angle());
    node.put("heading", h.place().heading());
    JsonText.number(node, "noseAngle", h.place().noseAngle());
    node.put("holds", h.holds());
    node.put("verdict", h.judgement().verdict().key());
    ArrayNode reasons = node.putArray("notShown");
    h.judgement().reasons().forEach(r -> reasons.add(NoticeWords.reason(r)));
    node.put("limitedBy", h.judgement().limitedBy());
    BalanceDocument.put(node, "margin", h.margins().least(), PURE);
    BalanceDocument.put(node, "marginWithTolerances", h.margins().total(), PURE);
    BalanceDocument.put(node, "slip", h.margins().slip(), PURE);
    BalanceDocument.put(node, "sliding", h.margins().sliding(), PURE);
    BalanceDocument.put(node, "tip", h.margins().tip(), PURE);
    BalanceDocument.put(node, "axleLift", h.margins().axleLift(), PURE);
    BalanceDocument.put(node, "peelOff", h.margins().peelOff(), PURE);
    ObjectNode headings = node.putObject("headings");
    headings.put("slip", h.headings().slip());
    headings.put("tip", h.headings().tip());
    headings.put("axleLift", h.headings().axleLift());
    headings.put("peelOff", h.headings().peelOff());
    ArrayNode axles = node.putArray("axleLoads");
    h.axleLoads().forEach(a -> axles.add(JsonText.estimate(a, "N")));
    ArrayNode free = node.putArray("freeWheels");
    h.freeWheels().forEach(free::add);
    return node;
  }

  /** A hold with the seal whole, and what it hangs on most. */
  static ObjectNode hold(Hold h, MachineBalance b) {
    ObjectNode node = hold(h);
    node.put(
        "sensitiveTo",
        b.holding().sensitivities().stream()
            .filter(s -> s.over().isEmpty() && s.place().equals(h.place().name()))
            .findFirst()
            .flatMap(Sensitivity::most)
            .map(Sensitivity.Effect::input)
            .orElse(""));
    return node;
  }

  static void overTilt(ArrayNode array, List<HoldPoint> points) {
    for (HoldPoint p : points) {
      ObjectNode node = array.addObject();
      JsonText.number(node, "tilt", p.tilt());
      node.put("heading", p.heading());
      node.put("limitedBy", p.limitedBy());
      BalanceDocument.put(node, "margin", p.margin(), PURE);
    }
  }

  /** What ends the holds, how it moves, and what is assumed. */
  static void ends(ObjectNode document, MachineBalance b) {
    ArrayNode ends = document.putArray("holdEnds");
    for (HoldEnd e : b.holding().ends()) {
      ObjectNode node = ends.addObject();
      node.put("case", e.place());
      JsonText.number(node, "tilt", e.tilt());
      JsonText.number(node, "leastFanSpeed", e.fan().speed());
      number(node, "leastVoltage", e.fan().voltage());
      number(node, "gapsWider", e.wider());
      number(node, "leastFriction", e.grip().friction());
      ArrayNode surfaces = node.putArray("surfaces");
      for (SurfaceGrip g : e.grip().surfaces()) {
        ObjectNode one = surfaces.addObject();
        one.put("surface", g.surface());
        JsonText.number(one, "low", g.low());
        JsonText.number(one, "high", g.high());
        JsonText.number(one, "least", g.least());
        JsonText.number(one, "most", g.most());
      }
      JsonText.number(node, "payload", e.payload());
      JsonText.number(node, "plenumTime", e.times().plenum());
      number(node, "rotorTime", e.times().rotor());
    }
    sensitivities(document, b);
    JsonText.number(document, "steepestWithoutFan", b.holding().steepestWithoutFan());
    Manoeuvres v = b.driving().manoeuvres();
    if (v == null) {
      document.putNull("manoeuvres");
    } else {
      ObjectNode node = document.putObject("manoeuvres");
      BalanceDocument.put(node, "slopeGrip", v.slope().grip(), PURE);
      JsonText.number(node, "slopeSpeed", v.slope().speed());
      BalanceDocument.put(node, "wallGrip", v.wall().grip(), PURE);
      JsonText.number(node, "wallSpeed", v.wall().speed());
      BalanceDocument.put(node, "braking", v.braking().level(), "m/s2");
      BalanceDocument.put(node, "brakingDistance", v.braking().distance(), "m");
      BalanceDocument.put(node, "slopeBraking", v.braking().slope(), "m/s2");
      BalanceDocument.put(node, "turning", v.turning().acceleration(), "m/s2");
      node.put("turningEndsIn", v.turning().endsIn());
    }
    ArrayNode assumptions = document.putArray("assumptions");
    SensitivityBlocks.assumptions(b.machine())
        .forEach(
            (about, taken) -> {
              ObjectNode node = assumptions.addObject();
              node.put("about", about);
              node.put("taken", taken);
            });
  }

  private static void sensitivities(ObjectNode document, MachineBalance b) {
    ArrayNode all = document.putArray("sensitivities");
    for (Sensitivity s : b.holding().sensitivities()) {
      ObjectNode node = all.addObject();
      node.put("case", s.place());
      node.put("over", s.over());
      node.put("sensitiveTo", s.most().map(Sensitivity.Effect::input).orElse(""));
      node.put("assumption", s.mostAssumed().map(Sensitivity.Effect::input).orElse(""));
      ArrayNode effects = node.putArray("effects");
      for (Sensitivity.Effect e : s.effects()) {
        ObjectNode one = effects.addObject();
        one.put("input", e.input());
        one.put("unit", e.unit());
        one.put("assumed", e.assumed());
        JsonText.number(one, "step", e.step());
        JsonText.number(one, "derivative", e.derivative());
        JsonText.number(one, "fall", e.fall());
      }
    }
  }

  private static void number(ObjectNode node, String key, @Nullable Double value) {
    if (value == null) {
      node.putNull(key);
    } else {
      JsonText.number(node, key, value);
    }
  }

  /** Dips under one edge as they always were, and every crossing with its holds. */
  static void steps(ObjectNode document, List<StepCrossing> steps) {
    ArrayNode dips = document.putArray("groundStep");
    ArrayNode all = document.putArray("crossings");
    for (StepCrossing s : steps) {
      if (s.kind() == StepCrossing.Kind.DIP) {
        Hold wall = s.hold("wall");
        ObjectNode node = dips.addObject();
        node.put("edge", s.edges().get(0));
        figures(node, s);
        node.put("holdsOnWall", wall != null && wall.holds());
      }
      ObjectNode node = all.addObject();
      node.put("kind", s.kind().key());
      ArrayNode edges = node.putArray("edges");
      s.edges().forEach(edges::add);
      node.put("strikes", s.strikes() != StepCrossing.Strike.NOTHING);
      node.put("strikesFloor", s.strikes() == StepCrossing.Strike.FLOOR);
      figures(node, s);
      ArrayNode holds = node.putArray("holds");
      s.holds().forEach(h -> holds.add(hold(h)));
    }
  }

  private static void figures(ObjectNode node, StepCrossing s) {
    BalanceDocument.put(node, "suction", s.suction(), "Pa");
    BalanceDocument.put(node, "downforce", s.downforce(), "N");
    BalanceDocument.put(node, "kept", s.kept(), PURE);
  }
}
