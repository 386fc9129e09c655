package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.Launch;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.OperatingPoint;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.RideHeight;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.Trade;
import hemline.solver.plenum.ValveSetting;
import hemline.viewer.format.Cautions;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** JSON document of a machine's balance: schema {@code hemline.balance/1}, SI. */
public final class BalanceDocument {
  private static final String PURE = "1";
  private static final String FLOW = "m3/s";

  private BalanceDocument() {}

  /**
   * The document as text.
   *
   * @param mesh level of the sections
   * @param seconds wall time of the run
   */
  public static String text(MachineBalance balance, String mesh, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.balance/1");
    machine(document.putObject("machine"), balance.machine());
    document.put("mesh", mesh);
    ArrayNode points = document.putArray("operatingPoints");
    balance.operation().points().forEach(p -> points.add(point(p)));
    settled(document, balance.operation().rest(), balance.machine());
    if (balance.operation().travelling() != null) {
      ObjectNode travelling = document.putObject("atTravelSpeed");
      JsonText.number(travelling, "speed", balance.machine().duty().travelSpeed());
      settled(travelling, balance.operation().travelling(), balance.machine());
    } else {
      document.putNull("atTravelSpeed");
    }
    margin(document, balance.drawDown().margin());
    valve(document, balance.drawDown().valve());
    ArrayNode holds = document.putArray("holds");
    for (Hold h : balance.holding().holds()) {
      if (h.place().name().equals("worst")) {
        document.set("worstHold", HoldNodes.hold(h, balance));
      } else {
        holds.add(HoldNodes.hold(h, balance));
      }
    }
    HoldNodes.overTilt(document.putArray("holdOverTilt"), balance.holding().overTilt());
    HoldNodes.ends(document, balance);
    launch(document, balance.driving().launch());
    HoldNodes.steps(document, balance.driving().steps());
    ArrayNode trades = document.putArray("trades");
    balance.changes().trades().forEach(t -> trades.add(trade(t)));
    ArrayNode lips = document.putArray("lips");
    for (RankedLip lip : balance.changes().lips()) {
      ObjectNode node = trade(lip.trade());
      node.put("rank", lip.rank());
      put(node, "relativeDownforce", lip.relative(), PURE);
      ArrayNode tied = node.putArray("tiedWith");
      lip.tiedWith().forEach(tied::add);
      lips.add(node);
    }
    document.set("warnings", ResultDocument.warnings(balance.notices()));
    ArrayNode cautions = document.putArray("cautions");
    Cautions.all().forEach(cautions::add);
    document.put("sections", balance.leakPoints().size());
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }

  private static void machine(ObjectNode node, Machine machine) {
    node.put("name", machine.description().name());
    node.put("notes", machine.description().notes());
    node.put("invented", machine.description().invented());
    JsonText.number(node, "mass", machine.load().mass());
    JsonText.number(node, "floorArea", machine.floor().area());
    JsonText.number(node, "sealLength", machine.floor().perimeter());
    JsonText.number(node, "airDensity", machine.duty().air().air().density());
    JsonText.number(node, "airPressure", machine.duty().air().pressure());
  }

  private static ObjectNode point(OperatingPoint p) {
    ObjectNode node = JsonText.NODES.objectNode();
    put(node, "suction", p.suction(), "Pa");
    put(node, "fanFlow", p.flows().fan(), FLOW);
    put(node, "leakFlow", p.flows().leak(), FLOW);
    put(node, "valveFlow", p.flows().valve(), FLOW);
    put(node, "otherFlow", p.flows().other(), FLOW);
    node.put("stable", p.stable());
    node.put("stallSide", p.stallSide());
    node.put("touching", p.touching());
    node.put("settled", p.settled());
    return node;
  }

  private static void settled(ObjectNode node, @Nullable SettledFigures f, Machine machine) {
    if (f == null) {
      for (MachineFigure figure : MachineFigure.values()) {
        node.putNull(figure.place().replaceFirst("/.*", ""));
      }
      node.putArray("axleLoads");
      return;
    }
    f.figures().forEach((figure, e) -> put(node, figure.place(), e, figure.unit()));
    ArrayNode axles = node.putArray("axleLoads");
    List<Axle> all = machine.running().axles();
    for (int i = 0; i < all.size(); i++) {
      ObjectNode axle = axles.addObject();
      axle.put("axle", all.get(i).name());
      put(axle, "load", f.axleLoads().get(i), "N");
    }
    ObjectNode gap = node.withObject("/gapUnderLoad");
    gap.put("leastEdge", f.leastEdge());
    ArrayNode edges = gap.putArray("edges");
    f.edgeGaps().forEach(g -> edges.add(JsonText.estimate(g, "m")));
    ArrayNode leaks = gap.putArray("edgeLeaks");
    f.edgeLeaks().forEach(q -> leaks.add(JsonText.estimate(q, FLOW)));
  }

  private static void margin(ObjectNode document, @Nullable RideHeight r) {
    ObjectNode node = document.putObject("suckDownMargin");
    if (r == null) {
      return;
    }
    put(node, "force", r.bears().force(), "N");
    put(node, "forceAtGravity", r.bears().atGravity(), "N");
    put(node, "forceAtCorner", r.bears().atCorner(), "N");
    node.put("corner", r.bears().corner());
    put(node, "gap", r.gap(), "m");
    put(node, "requiredStiffness", r.heave().required(), "N/m");
    put(node, "factor", r.heave().factor(), PURE);
    JsonText.number(node, "stiffness", r.heave().stiffness());
    node.put("endsIn", r.ending().key());
    node.put("edge", r.edge());
  }

  private static void valve(ObjectNode document, @Nullable ValveSetting v) {
    if (v == null) {
      document.putNull("valveSetting");
      return;
    }
    ObjectNode node = document.putObject("valveSetting");
    JsonText.number(node, "factor", v.factor());
    node.put("needed", v.needed());
    put(node, "largestSuction", v.capSuction(), "Pa");
    put(node, "flowToPass", v.flowAtCap(), FLOW);
    ValveSetting.Setting s = v.setting();
    if (s == null) {
      node.putNull("setting");
      return;
    }
    ObjectNode set = node.putObject("setting");
    set.put("fits", s.seat().fits());
    JsonText.number(set, "preload", s.spring().preload());
    JsonText.number(set, "openingSuction", s.spring().openingSuction());
    JsonText.number(set, "lift", s.seat().lift());
    JsonText.number(set, "largestFlow", s.seat().largestFlow());
    JsonText.number(set, "seatAreaNeeded", s.seat().areaNeeded());
    JsonText.number(set, "softSpring", s.spring().softRate());
    put(set, "suction", s.settled().suction(), "Pa");
    put(set, "downforce", s.settled().downforce(), "N");
    ObjectNode chatter = node.putObject("chatter");
    chatter.put("open", s.chatter().open());
    chatter.put("warns", s.chatter().warns());
    JsonText.number(chatter, "dampingNeeded", s.chatter().dampingNeeded());
    JsonText.number(chatter, "damping", s.chatter().damping());
    JsonText.number(chatter, "naturalFrequency", s.chatter().naturalFrequency());
    JsonText.number(chatter, "slopes", s.chatter().slopes());
  }

  private static void launch(ObjectNode document, @Nullable Launch l) {
    if (l == null) {
      document.putNull("launch");
      return;
    }
    ObjectNode node = document.putObject("launch");
    put(node, "acceleration", l.gripAcceleration(), "m/s2");
    node.put("axleLiftsFirst", l.liftsFirst());
    put(node, "gripLimitedUpTo", l.gripUntil(), "m/s");
    JsonText.number(node, "speed", l.speed());
    put(node, "time", l.time(), "s");
    put(node, "distance", l.distance(), "m");
    JsonText.number(node, "accelerationWithoutSuction", l.withoutSuction());
  }

  private static ObjectNode trade(Trade t) {
    ObjectNode node = JsonText.NODES.objectNode();
    node.put("change", t.kind().key());
    node.put("name", t.name());
    JsonText.number(node, "factor", t.factor());
    put(node, "downforce", t.downforce(), "N");
    put(node, "shaftPower", t.shaftPower(), "W");
    put(node, "perWatt", t.perWatt(), "N/W");
    put(node, "leastGap", t.leastGap(), "m");
    node.put("beyondSolved", t.beyond());
    return node;
  }

  /**
   * Puts an estimate, or null for none.
   *
   * @param place its name, after those of the groups it lies in with slashes between
   */
  static void put(ObjectNode node, String place, @Nullable Estimate e, String unit) {
    int slash = place.indexOf('/');
    if (slash > 0) {
      ObjectNode group = node.withObject("/" + place.substring(0, slash));
      put(group, place.substring(slash + 1), e, unit);
    } else if (e == null) {
      node.putNull(place);
    } else {
      node.set(place, JsonText.estimate(e, unit));
    }
  }
}
