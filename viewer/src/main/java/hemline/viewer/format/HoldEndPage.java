package hemline.viewer.format;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Tolerances;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.HoldEnd;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.Manoeuvres;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What ends a hold, how the machine moves, and what all of it assumes. */
public final class HoldEndPage {
  /** Beside the time that is left once the fan stops. */
  private static final String STOP_CAUTION =
      "These times are far shorter than anyone needs to step aside or catch the machine. Do not rely"
          + " on them; rely on the tether.";

  private HoldEndPage() {}

  static BalancePage.Block ends(MachineBalance b) {
    Machine m = b.machine();
    List<List<String>> table = new ArrayList<>();
    if (!b.holdEnds().isEmpty()) {
      table.add(
          List.of(
              "",
              "least fan speed, rpm",
              "least battery, V",
              "gaps wider by, mm",
              "least friction",
              "payload, kg",
              "seconds, fan stops dead",
              "seconds, rotor runs down"));
    }
    for (HoldEnd e : b.holdEnds()) {
      table.add(
          List.of(
              e.place().equals("slope")
                  ? "slope " + Digits.plain(Math.toDegrees(e.tilt()), 3) + "\u00b0"
                  : e.place().equals("worst") ? "worst of all" : e.place(),
              Digits.plain(60 * e.fanSpeed(), 4),
              number(e.voltage(), 1),
              e.wider() == null ? "more than 5" : number(e.wider(), 1000),
              number(e.friction(), 1),
              Digits.plain(e.payload(), 3),
              Digits.plain(e.plenumTime(), 2),
              number(e.rotorTime(), 1)));
    }
    double off = Math.toDegrees(b.steepestWithoutFan());
    boolean parked = m.terms().parked() && m.running().axles().stream().anyMatch(Axle::braked);
    List<String> sentences = new ArrayList<>();
    if (table.isEmpty()) {
      sentences.add("None of the tilted cases holds as estimated.");
    } else {
      sentences.add(
          "One thing changed at a time until the least margin falls to "
              + Digits.plain(m.terms().safetyFactor(), 3)
              + ", leaks as estimated; the fan's speed goes with the voltage (common practice, no"
              + " source).");
      sentences.add(
          "Friction of rubber on concrete: dry 0.6 to 0.9, dusty 0.3 to 0.6, wet 0.4 to 0.7 (common"
              + " practice, no source). Measure it on the wall itself.");
    }
    sentences.add(
        parked
            ? "With the fan off the parked brakes hold it on slopes of up to "
                + Digits.plain(off, 3)
                + "\u00b0."
            : "With fan and power off nothing holds its wheels: no axle has a parked brake in the file.");
    return new BalancePage.Block(
        BalancePage.Topic.ENDS,
        "What ends the hold",
        table,
        sentences,
        table.isEmpty() ? List.of() : List.of(STOP_CAUTION));
  }

  private static String number(@Nullable Double value, double factor) {
    return value == null ? "-" : Digits.plain(value * factor, 3);
  }

  static BalancePage.@Nullable Block manoeuvres(MachineBalance b) {
    Manoeuvres v = b.manoeuvres();
    if (v == null) {
      return null;
    }
    List<List<String>> table = new ArrayList<>();
    table.add(List.of("", "", ""));
    String slope =
        "slope " + Digits.plain(Math.toDegrees(b.machine().slope()), 3) + "\u00b0, nose up";
    table.add(List.of(slope + ": grip over pull", BalancePage.margin(v.slopeGrip()), ""));
    table.add(List.of("\u00b7 speed the power allows", Digits.plain(v.slopeSpeed(), 3), "m/s"));
    table.add(List.of("wall, nose up: grip over pull", BalancePage.margin(v.wallGrip()), ""));
    table.add(List.of("\u00b7 speed the power allows", Digits.plain(v.wallSpeed(), 3), "m/s"));
    table.add(List.of("braking on level ground", BalancePage.margin(v.braking()), "m/s\u00b2"));
    table.add(
        List.of(
            "\u00b7 distance from "
                + BalanceWords.speed(b.machine().running().topSpeed())
                + ", without reaction",
            BalancePage.margin(v.brakingDistance()),
            "m"));
    table.add(List.of("braking down the slope", BalancePage.margin(v.slopeBraking()), "m/s\u00b2"));
    table.add(
        List.of(
            "turning on level ground, until " + v.turningEndsIn(),
            BalancePage.margin(v.turning()),
            "m/s\u00b2"));
    return new BalancePage.Block(
        BalancePage.Topic.MANOEUVRES,
        "Climbing, braking, turning, fan on",
        table,
        List.of(
            "Grip below 1: the driven wheels spin. Friction that brakes is not there to climb or to"
                + " turn: each figure takes all of it."),
        List.of());
  }

  /** What the figures assume, by what it is about. */
  public static Map<String, String> assumptions(Machine m) {
    HoldTerms terms = m.terms();
    Tolerances t = terms.tolerances();
    Map<String, String> a = new LinkedHashMap<>();
    a.put(
        "friction",
        Digits.plain(m.running().peakFriction(), 3)
            + " before slip, "
            + Digits.plain(m.running().slidingFriction(), 3)
            + " after, "
            + share(t.friction())
            + "; the same on all wheels, which reach it together");
    a.put(
        "wheels that hold along",
        names(m, true) + (terms.parked() ? ", brakes parked" : ", only while there is power"));
    a.put("wheels that roll", names(m, false));
    a.put("fan pressure", "by the curve and the fan laws, " + share(t.fanPressure()));
    a.put(
        "mass",
        Digits.plain(m.load().mass(), 4)
            + " kg "
            + Digits.plain(1000 * m.load().height(), 3)
            + " mm above the ground, "
            + share(t.mass()));
    a.put(
        "gap",
        "static gaps of the file, "
            + (t.gap() > 0 ? "\u00b1 " + Digits.plain(1000 * t.gap(), 2) + " mm" : "taken as exact")
            + "; leaks solved down to "
            + Digits.plain(1000 * terms.contactAllowance(), 2)
            + " mm");
    a.put("ground", "even, stiff and airtight but for the dips and ledges asked");
    a.put("springs", "linear tyres that press and do not pull, a frame of given stiffness");
    a.put(
        "corners and arcs",
        "one gap more of seal for each right angle of a corner; band from none to two and the outer"
            + " edge of the lip");
    a.put("valve's jet", "half of it strikes the ground; band from none to all");
    a.put("air", "of one density, at rest in the plenum");
    a.put(
        "safety factor",
        terms.safetyFactor() > 1 ? Digits.plain(terms.safetyFactor(), 3) : "none asked");
    return a;
  }

  private static String share(double tolerance) {
    return tolerance > 0 ? "\u00b1 " + Digits.plain(100 * tolerance, 2) + " %" : "taken as exact";
  }

  private static String names(Machine m, boolean held) {
    String names =
        m.running().axles().stream()
            .filter(a -> a.holdsAlong() == held)
            .map(Axle::name)
            .collect(Collectors.joining(", "));
    return names.isEmpty() ? "none" : names;
  }

  static BalancePage.Block assumptions(MachineBalance b) {
    List<List<String>> table = new ArrayList<>();
    table.add(List.of("", "taken as"));
    assumptions(b.machine()).forEach((k, v) -> table.add(List.of(k, v)));
    List<String> sentences = new ArrayList<>();
    for (Hold h : b.holds()) {
      if (!h.sensitiveTo().isEmpty()) {
        sentences.add(
            "\u201c"
                + HoldPage.place(h)
                + "\u201d depends most on: "
                + h.sensitiveTo()
                + " (a tenth of it changes the least margin more than a tenth of the others).");
      }
    }
    return new BalancePage.Block(
        BalancePage.Topic.ASSUMPTIONS, "What the figures assume", table, sentences, List.of());
  }
}
